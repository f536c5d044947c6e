#include "adapters/out/calendar/day_entry.hpp"

#include <fmt/format.h>

#include "adapters/out/calendar/reminders.hpp"
#include "engine/river/place_text.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

// Each kind of block as plain lines; a calendar wraps them itself and draws no table, figure or pencil box.
struct PlainLines {
  std::string text;

  void add(const std::string& line) { text += line + "\n"; }
  void operator()(const Heading& heading) {
    add(heading.right.empty() ? heading.left : heading.left + "  " + heading.right);
  }
  void operator()(const Lines& block) {
    if (!block.label.empty()) add("\n" + block.label);
    for (const std::string& line : block.lines) add(line);
  }
  void operator()(const Rods& block) {
    add("\n" + block.title);
    for (const RodLine& rod : block.rods) {
      add(fmt::format("{}{}: {}", rod.letter, rod.mark.empty() ? "" : " (" + rod.mark + ")",
                      fmt::join(rod.lines, "; ")));
    }
    for (const std::string& item : block.bag) add("bag: " + item);
  }
  void operator()(const PageTable&) {}
  void operator()(const Figure&) {}
  void operator()(const PencilBoxes&) {}
};

std::string name_and_place(const Told& told, const std::string& name, const std::string& id, RiverPlace place) {
  return fmt::format("{} ({})", typed(name.empty() ? id : name), place_text(told.in.river, place));
}
std::string put_in(const Told& told) {
  return name_and_place(told, told.floated->from_name, told.floated->from, told.floated->from_place);
}
std::string take_out(const Told& told) {
  return name_and_place(told, told.floated->to_name, told.floated->to, told.floated->to_place);
}

std::string with_phone(const std::string& name, const std::string& phone, const char* unnamed) {
  const std::string who = name.empty() ? unnamed : typed(name);
  return phone.empty() ? who : who + ", " + typed(phone);
}

void add_stops(Page& page, const Told& told) {
  Lines stops{{}, "STOPS"};
  for (const Reminder& reminder : reminders(told))
    if (!reminder.is_caution) stops.lines.push_back(reminder.text);
  page.blocks.push_back(std::move(stops));
}

// For the person who waits: who is out, in what, from where to where, and when to begin to worry.
void add_left_ashore(Page& page, const Told& told) {
  const Settings& settings = told.in.settings;
  const std::size_t anglers = settings.preferences.anglers.size();
  std::string aboard = "Aboard: " + with_phone(settings.who, settings.phone, "the rower");
  if (anglers > 0) aboard += fmt::format("; {} angler{}", anglers, anglers == 1 ? "" : "s");
  if (!settings.boat.empty()) aboard += ". Boat: " + typed(settings.boat);
  const std::string off_by = told.clock.ten_minutes(told.floated->off_by);
  Lines ashore{{aboard + ".",
                fmt::format("Put in {} at {}, out at {}, off the water by {}.", told.clock.ten_minutes(told.floated->launch),
                            put_in(told), take_out(told), off_by),
                fmt::format("{}: not heard from them by {}? Call {}, then help.",
                            with_phone(settings.ashore_contact, settings.ashore_phone, "You who wait"), off_by,
                            with_phone(settings.who, settings.phone, "them"))},
               "LEFT ASHORE"};
  page.blocks.push_back(std::move(ashore));
}

Page float_page(const Told& told) {
  Page page;
  add_head(page, told);
  add_rods(page, told);
  add_stops(page, told);
  add_changes(page, told);
  add_care(page, told);
  add_left_ashore(page, told);
  add_foot(page, told);
  return page;
}

Page no_plan_page(const Told& told) {
  Page page;
  add_no_plan_head(page, told);
  add_ruled_out(page, told);
  add_care(page, told);
  add_foot(page, told);
  return page;
}

std::string plain_text(const Page& page, const Told& told) {
  PlainLines lines;
  for (const Block& block : page.blocks) std::visit(lines, block);
  lines.add("Made " + told.clock.minute_seen_from(told.plan.made_at, told.plan.day) + ".");
  lines.text.pop_back();
  return lines.text;
}

}  // namespace

DayEntry day_entry(const Told& told) {
  const std::string river = typed(told.in.river.name);
  if (told.floated == nullptr) return {"NO PLAN: " + river, "", plain_text(no_plan_page(told), told)};
  const std::string doubt = told.plan.stale ? "OLD READINGS: " : "";
  return {doubt + river + ": " + say_range(told, *told.floated), put_in(told) + " to " + take_out(told),
          plain_text(float_page(told), told)};
}

}  // namespace floatwright
