#include "adapters/cli/log_notes.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <istream>
#include <ostream>

#include "adapters/cli/rod_of_letter.hpp"
#include "adapters/in/files/calendar_text.hpp"
#include "adapters/in/files/log_file.hpp"
#include "adapters/in/files/nearest.hpp"
#include "adapters/in/files/quantities.hpp"
#include "adapters/in/files/whole_text.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "engine/sinking/still_water.hpp"
#include "engine/trip/local_time.hpp"

namespace floatwright {
namespace {

constexpr double kCountedScatter = 0.20;  // sd of ln of a depth counted down; judgement, as in engine/learning
const char* const kHowToWrite = "Mill run bank  hour 10:10  depth 3 1/2 ft  bottom N  rod six  water 52 F";

Failure refused(const std::string& what) { return {what, kExitBadData}; }

// By its id, else the shape on its butt, which twins may share; none: no rod is called so.
Result<std::optional<std::string>> rod_named(const Tackle& tackle, const std::string& typed) {
  std::vector<std::string> marked;
  for (const Rod& rod : tackle.rods) {
    if (lower_case(rod.id) == lower_case(typed)) return rod.id;
    if (lower_case(rod.mark) == lower_case(typed)) marked.push_back(rod.id);
  }
  if (marked.empty()) return std::nullopt;
  if (marked.size() == 1) return marked.front();
  return tl::unexpected(refused(fmt::format("rod: {} rods of tackle.json have the mark \"{}\": give the id of one, {}",
                                            marked.size(), printable(typed), fmt::join(marked, ", "))));
}

Failure no_such_rod(const Tackle& tackle, const std::string& typed) {
  std::vector<std::string> known;
  for (const Rod& rod : tackle.rods) known.push_back(rod.id);
  return refused(fmt::format("rod: \"{}\" is no rod of tackle.json; the nearest is \"{}\"; its mark or its letter on the day's "
                             "sheet will do too",
                             printable(typed), nearest_word(typed, known)));
}

Result<std::string> access_named(const River& river, const std::string& typed) {
  std::vector<std::string> known;
  for (const Access& access : river.accesses) {
    if (lower_case(access.id) == lower_case(typed) || lower_case(access.name) == lower_case(typed)) return access.id;
    known.push_back(access.name);
  }
  return tl::unexpected(
      refused(fmt::format("\"{}\" is no access of river.json; the nearest is \"{}\"", printable(typed), nearest_word(typed, known))));
}

class NoteMaker {
 public:
  explicit NoteMaker(const NotesAsked& asked) : asked_(asked), day_(asked.day) {}
  void set_day(std::chrono::year_month_day day) { day_ = day; }

  // One note of a JSON file; its problems are told there.
  [[nodiscard]] std::optional<LogEntry> entry_of(TypedObject& in) const {
    const std::size_t before = in.reading().problems.size();
    LogEntry entry;
    const auto hour = read_time_of_day(in, "hour", Need::Required);
    entry.at = at(hour.value_or(Duration{}));
    if (in.has("put_in"))
      read_float(in, entry);
    else
      read_water_met(in, entry);
    in.finish();
    if (in.reading().problems.size() > before) return std::nullopt;
    auto complete = entry.trip ? with_accesses(std::move(entry)) : with_rod(std::move(entry), "");
    if (complete) return std::move(*complete);
    in.tell("", complete.error().what, "what river.json and tackle.json have", "Mend the note.");
    return std::nullopt;
  }
  [[nodiscard]] Result<LogEntry> entry_of(const std::string& line) const {
    const auto note = pencil_note(line, asked_.configuration.settings.units == UnitSystem::Metric);
    if (!note) return tl::unexpected(note.error());
    return note->trip ? of_float(*note) : of_water(*note);
  }

 private:
  [[nodiscard]] Instant at(Duration hour) const { return at_local(day_, hour, asked_.configuration.river.time_zone); }

  void read_float(TypedObject& in, LogEntry& entry) const {
    FloatMet trip;
    trip.from = in.text("put_in", Need::Required);
    trip.to = in.text("take_out", Need::Required);
    trip.taken_out = at(read_time_of_day(in, "take_out_hour", Need::Required).value_or(Duration{}));
    const auto stopped = read_duration(in, "stopped", {Duration{}, hours(24.0)}, Need::Optional);
    trip.stopped = stopped.value_or(Duration{});
    trip.stopped_noted = stopped.has_value();
    trip.boat = in.text("boat", Need::Optional);
    if (trip.taken_out <= entry.at) in.tell("take_out_hour", "an hour not after the put-in's", "a later one", "Write two notes where it ran over midnight.");
    entry.trip = std::move(trip);
  }

  [[nodiscard]] Result<LogEntry> of_float(const PencilNote& note) const {
    LogEntry entry;
    entry.typed = note.typed;
    entry.at = at(note.trip->put_in);
    entry.trip = FloatMet{.from = note.trip->from,
                          .to = note.trip->to,
                          .taken_out = at(note.trip->taken_out),
                          .stopped = note.trip->stopped.value_or(Duration{}),
                          .stopped_noted = note.trip->stopped.has_value(),
                          .boat = note.trip->boat};
    return with_accesses(std::move(entry));
  }
  [[nodiscard]] Result<LogEntry> with_accesses(LogEntry entry) const {
    FloatMet& trip = *entry.trip;
    for (std::string* end : {&trip.from, &trip.to}) {
      const auto id = access_named(asked_.configuration.river, *end);
      if (!id) return tl::unexpected(id.error());
      *end = *id;
    }
    if (trip.boat.empty()) trip.boat = asked_.configuration.settings.boat;
    return entry;
  }

  [[nodiscard]] Result<LogEntry> of_water(const PencilNote& note) const {
    LogEntry entry;
    entry.typed = note.typed;
    entry.at = at(*note.hour);
    entry.where = note.where;
    entry.depth = note.depth;
    entry.by_count = note.by_count;
    entry.surface_speed = note.surface_speed;
    entry.bottom = note.bottom;
    if (note.fly) entry.fly = FlyReach{*note.fly};
    entry.rod = note.rod;
    entry.count = note.count;
    entry.temperature = note.temperature;
    return with_rod(std::move(entry), note.boat);
  }
  [[nodiscard]] Result<LogEntry> with_rod(LogEntry entry, const std::string& boat) const {
    const auto rod = rod_meant(entry.rod, boat);
    if (!rod) return tl::unexpected(rod.error());
    entry.rod = *rod;
    if (entry.count && !entry.depth) return counted(std::move(entry));
    if (entry.count) entry.by_count = true;
    return entry;
  }

  // The id; nothing for nothing. A letter is the day's own.
  [[nodiscard]] Result<std::string> rod_meant(const std::string& typed, const std::string& boat) const {
    if (typed.empty()) return typed;
    const auto named = rod_named(asked_.configuration.tackle, typed);
    if (!named) return tl::unexpected(named.error());
    if (*named) return **named;
    if (!is_rod_letter(typed)) return tl::unexpected(no_such_rod(asked_.configuration.tackle, typed));
    const char letter = static_cast<char>(lower_case(typed).front() - 'a' + 'A');
    auto rod = rod_of_letter({letter, day_, boat}, asked_.configuration);
    if (!rod || rod_named(asked_.configuration.tackle, *rod).value_or(std::nullopt)) return rod;
    return tl::unexpected(no_such_rod(asked_.configuration.tackle, *rod));
  }

  // A sinking line counted down says how deep its lower end was: the bed, or not yet the bed.
  [[nodiscard]] Result<LogEntry> counted(LogEntry entry) const {
    const Tackle& tackle = asked_.configuration.tackle;
    if (entry.rod.empty() || !entry.bottom)
      return tl::unexpected(refused("count: name the rod that was counted down, and say whether it touched: \"count 12 rod seven bottom Y\""));
    for (std::size_t line = 0; line < tackle.lines.size(); ++line) {
      if (tackle.lines[line].on_rod != entry.rod || tackle.lines[line].spare_spool) continue;
      const Length depth = counted_depth(sinking_part(tackle, Rig{line, {}, 0, {}}), *entry.count);
      if (!(depth > Length{})) break;
      if (*entry.bottom) entry.depth = depth;
      if (!*entry.bottom) entry.fly = FlyReach{depth, kCountedScatter};
      entry.by_count = *entry.bottom;
      return entry;
    }
    return tl::unexpected(refused(fmt::format("count: the line on the main spool of rod {} does not sink", printable(entry.rod))));
  }

  const NotesAsked& asked_;
  std::chrono::year_month_day day_;
};

Problem problem_at(const std::string& file, int line, const Failure& failure) {
  return {file, line, "", failure.what, fmt::format("a note such as \"{}\"", kHowToWrite),
          "Mend the line and log the file again: what stands already is not logged twice."};
}

NotesRead notes_in_json(const std::string& file, const std::string& text, const NotesAsked& asked) {
  NotesRead notes;
  ParsedJson parsed = parse_located_json(file, text);
  FileReading reading{file, std::move(parsed.problems), {}};
  if (parsed.root) {
    if (auto root = versioned_root(*parsed.root, reading)) {
      NoteMaker maker(asked);
      if (const auto day = read_date(*root, "date", Need::Optional)) maker.set_day(*day);
      for (TypedObject& note : root->objects("notes", Need::Required))
        if (auto entry = maker.entry_of(note)) notes.entries.push_back(std::move(*entry));
      root->finish();
    }
  }
  notes.problems = std::move(reading.problems);
  return notes;
}

std::string asked_once(std::istream& answers, std::ostream& questions, const std::string& question) {
  questions << question << ' ' << std::flush;
  std::string answer;
  if (!std::getline(answers, answer)) return "";
  return std::string(trimmed(answer));
}

}  // namespace

NotesRead notes_in_lines(const std::string& name, std::string_view text, const NotesAsked& asked) {
  NotesRead notes;
  NoteMaker maker(asked);
  for (int line = 1; !text.empty(); ++line) {
    const auto end = std::min(text.find('\n'), text.size());
    const std::string words{trimmed(text.substr(0, end))};
    text.remove_prefix(std::min(end + 1, text.size()));
    if (words.empty() || words.starts_with('#')) continue;
    if (const auto day = day_alone(words)) {
      maker.set_day(*day);
      continue;
    }
    auto entry = maker.entry_of(words);
    if (entry) notes.entries.push_back(std::move(*entry));
    if (!entry) notes.problems.push_back(problem_at(name, line, entry.error()));
  }
  return notes;
}

Result<NotesRead> notes_in(const std::filesystem::path& file, const NotesAsked& asked) {
  const auto text = read_whole_text(file);
  if (!text) return tl::unexpected(text.error());
  if (file.extension() == ".json") return notes_in_json(file.string(), *text, asked);
  return notes_in_lines(file.string(), *text, asked);
}

NotesRead notes_asked_for(std::istream& answers, std::ostream& questions, const NotesAsked& asked) {
  NotesRead notes;
  const NoteMaker maker(asked);
  for (;;) {
    const std::string where = asked_once(answers, questions, "where (empty: done)");
    if (where.empty()) return notes;
    std::string line = "where " + where;
    for (const char* field : {"hour", "depth", "speed", "bottom", "rod", "count", "water"})
      if (const std::string answer = asked_once(answers, questions, field); !answer.empty())
        line += fmt::format("  {} {}", field, answer);
    auto entry = maker.entry_of(line);
    if (entry) notes.entries.push_back(std::move(*entry));
    if (!entry) questions << entry.error().what << "; once more\n";
  }
}

}  // namespace floatwright
