#include "adapters/out/calendar/day_entry.hpp"

#include <fmt/format.h>

#include "adapters/out/calendar/reminders.hpp"
#include "engine/river/place_text.hpp"
#include "engine/wording/left_ashore.hpp"
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
    if (block.label.empty() && block.lines.empty()) add("");
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

void add_stops(Page& page, const Told& told) {
  Lines stops{{}, "STOPS"};
  for (const Reminder& reminder : reminders(told))
    if (!reminder.is_caution) stops.lines.push_back(reminder.text);
  page.blocks.push_back(std::move(stops));
}

// The page left ashore as it stands, so that nobody is told two hours at which to call for help.
void add_left_ashore(Page& page, const Told& told) {
  page.blocks.push_back(Lines{{}, ""});
  for (Block& block : left_ashore(told.plan, told.in).blocks) page.blocks.push_back(std::move(block));
}

Page float_page(const Told& told) {
  Page page;
  add_head(page, told);
  add_rods(page, told);
  if (at_spot(told)) add_stretches(page, told);
  add_stops(page, told);
  add_changes(page, told);
  add_care(page, told);
  page.blocks.push_back(Lines{{kFoot}, ""});
  add_left_ashore(page, told);
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
  const std::string boat = typed(told.in.settings.boat_of_several);
  const std::string whose = boat.empty() ? "" : boat + ", ";
  if (told.floated == nullptr) return {"NO PLAN: " + whose + river, "", plain_text(no_plan_page(told), told)};
  const std::string doubt = told.plan.stale ? "OLD READINGS: " : "";
  return {doubt + whose + river + ": " + say_range(told, *told.floated),
          at_spot(told) ? put_in(told) : put_in(told) + " to " + take_out(told),
          plain_text(float_page(told), told)};
}

}  // namespace floatwright
