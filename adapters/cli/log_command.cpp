// floatwright log: what was met on the water goes into log.jsonl, which is only ever added to; --show says what it taught.
#include <fmt/format.h>
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <iostream>
#include <memory>

#include "adapters/cli/believed_then.hpp"
#include "adapters/cli/commands.hpp"
#include "adapters/cli/hand_out.hpp"
#include "adapters/cli/lock.hpp"
#include "adapters/cli/log_notes.hpp"
#include "adapters/in/files/log_file.hpp"
#include "adapters/in/files/nearest.hpp"
#include "adapters/out/json/log_json.hpp"
#include "adapters/out/text/print_text.hpp"
#include "engine/trip/local_time.hpp"

namespace floatwright {
namespace {

struct LogOptions : CommonOptions {
  std::string file, as = "text", retract;
  std::string where, hour, depth, speed, bottom, fly, rod, count, water;
  bool show = false;

  // The words of the pencil row and what was typed for them.
  [[nodiscard]] std::vector<std::pair<const char*, const std::string*>> fields() const {
    return {{"where", &where}, {"hour", &hour}, {"depth", &depth}, {"speed", &speed}, {"bottom", &bottom},
            {"fly", &fly},     {"rod", &rod},   {"count", &count}, {"water", &water}};
  }
  [[nodiscard]] std::string as_a_line() const {
    std::string line;
    for (const auto& [word, typed] : fields())
      if (!typed->empty()) line += fmt::format("{}{} {}", line.empty() ? "" : "  ", word, *typed);
    return line;
  }
};

constexpr Period kStillLookedFor = std::chrono::days{30};  // a flow that was not known when its entry was logged

Failure used_wrongly(const std::string& what) { return {what, kExitUsage}; }

void say_problems(const Problems& problems) {
  for (const Problem& problem : problems) fmt::print(stderr, "{}\n", say(problem));
}

// The last day on the river that has begun, or the one named, which may lie in the past.
Result<std::chrono::year_month_day> day_of_notes(const LogOptions& options, const Configuration& configuration, Instant now) {
  const auto today = local_date(now, configuration.river.time_zone);
  if (options.date.empty() || options.date == "today") return today;
  if (options.date == "yesterday") return std::chrono::year_month_day{std::chrono::sys_days{today} - std::chrono::days{1}};
  if (const auto day = day_alone(options.date)) return *day;
  return tl::unexpected(used_wrongly(fmt::format("--date: found \"{}\"; give today, yesterday or a date as YYYY-MM-DD", options.date)));
}

Result<NotesRead> notes_given(const LogOptions& options, const NotesAsked& asked) {
  const std::string line = options.as_a_line();
  if (!options.file.empty() && !line.empty())
    return tl::unexpected(used_wrongly("a file and a note among the options: give one of the two"));
  if (!options.file.empty() && options.file != "-") return notes_in(options.file, asked);
  if (!line.empty()) {
    NotesRead notes = notes_in_lines("the options", line, asked);
    if (notes.problems.empty()) return notes;
    return tl::unexpected(used_wrongly(notes.problems.front().found));
  }
  if (options.file.empty() && ::isatty(STDIN_FILENO) != 0) return notes_asked_for(std::cin, std::cerr, asked);
  if (options.file.empty())
    return tl::unexpected(used_wrongly("what was met? Name a file of notes (- for standard input), give --where with --hour and "
                                "--depth, or run it on a terminal to be asked"));
  const std::string text{std::istreambuf_iterator<char>(std::cin), {}};
  return notes_in_lines("standard input", text, asked);
}

// One run of the command: the log as it stands, and what is added to it.
class Logging {
 public:
  Logging(const LogOptions& options, const Configuration& configuration, Instant now)
      : options_(options), configuration_(configuration), now_(now), file_(configuration.directory / kLogFile),
        log_(read_log(configuration.directory)), clock_(configuration.river.time_zone) {
    if (!options.quiet) say_problems(log_.problems);
  }

  Result<Written> add(std::vector<LogEntry> entries) {
    std::vector<LogEntry> fresh;
    for (LogEntry& entry : entries) {
      entry.id = id_of(entry);
      entry.logged_at = now_;
      if (!stands_in(log_.entries, entry) && !stands_in(fresh, entry)) fresh.push_back(std::move(entry));
    }
    entries = std::move(fresh);
    const std::vector<LogEntry> known_now = complete(entries);
    std::string lines = log_.ends_open ? "\n" : "";
    for (const LogEntry& entry : entries) lines += entry_line(entry, now_);
    for (const LogEntry& entry : known_now) lines += flow_line(entry, now_);
    if (!entries.empty() || !known_now.empty())
      if (const auto done = add_to_file(file_, lines); !done) return done;
    first_new_ = log_.entries.size();
    std::ranges::move(entries, std::back_inserter(log_.entries));
    return Written{};
  }

  Result<Written> take_back(const std::string& id) {
    const auto entry = std::ranges::find(log_.entries, id, &LogEntry::id);
    if (entry == log_.entries.end()) return tl::unexpected(no_such_entry(id));
    const auto done = add_to_file(file_, (log_.ends_open ? "\n" : "") + retract_line(id, now_));
    if (done) say(fmt::format("taken back: {}", floatwright::say(*entry, units(), clock_)));
    return done;
  }

  // What was logged, entry by entry, and what it teaches.
  void tell_what_was_added() const {
    const Learned taught = learned(configuration_.river, river_graph(configuration_.river), log_.entries);
    for (std::size_t i = first_new_; i < log_.entries.size(); ++i) {
      std::string sentence = "logged " + log_.entries[i].id + ": " + floatwright::say(log_.entries[i], units(), clock_);
      for (const LogDoubt& doubt : taught.idle)
        if (doubt.entry == i) sentence += fmt::format("; kept, but it teaches nothing: {}{}", doubt.why, nearest_to(log_.entries[i], doubt));
      say(sentence);
    }
    for (const Contradiction& pair : taught.contradictions)
      if (std::max(pair.entry, pair.other) >= first_new_) say(floatwright::say(pair, log_.entries));
  }

  Result<Written> show() const {
    const Learned taught = learned(configuration_.river, river_graph(configuration_.river), log_.entries);
    const LogTold told{configuration_.river, log_.entries, log_.retracted, taught, units(), clock_};
    return print_out(options_.as == "json" ? log_document(told) : as_text(log_page(told)));
  }

 private:
  [[nodiscard]] UnitSystem units() const {
    if (options_.units.empty()) return configuration_.settings.units;
    return options_.units == "us" ? UnitSystem::Us : UnitSystem::Metric;
  }
  void say(const std::string& sentence) const {
    if (!options_.quiet) say_beside(sentence);
  }

  bool stands_in(const std::vector<LogEntry>& log, const LogEntry& entry) const {
    if (std::ranges::find(log, entry.id, &LogEntry::id) == log.end()) return false;
    say(fmt::format("logged before as {}, not again: {}", entry.id, floatwright::say(entry, units(), clock_)));
    return true;
  }

  // Flows are looked up for what is new, and again for what had none; the answer is those older ones that now have one.
  std::vector<LogEntry> complete(std::vector<LogEntry>& entries) {
    std::vector<LogEntry*> open;
    for (LogEntry& entry : entries) open.push_back(&entry);
    for (LogEntry& entry : log_.entries)
      if (!entry.flow && now_ - entry.at < kStillLookedFor) open.push_back(&entry);
    if (open.empty()) return {};
    const LogEntry* const first = *std::ranges::min_element(open, {}, [](const LogEntry* e) { return e->at; });
    BelievedThen then(options_, configuration_, first->at, now_);
    std::vector<LogEntry> known_now;
    for (LogEntry* entry : open) {
      then.complete(*entry);
      const bool older = std::ranges::find(log_.entries, entry->id, &LogEntry::id) != log_.entries.end();
      if (older && entry->flow) known_now.push_back(*entry);
    }
    return known_now;
  }

  [[nodiscard]] std::string nearest_to(const LogEntry& entry, const LogDoubt& doubt) const {
    if (entry.trip || !doubt.why.starts_with("no water here")) return "";
    return fmt::format("; the nearest is \"{}\"", nearest_word(entry.where, names_of_waters(configuration_.river)));
  }

  [[nodiscard]] Failure no_such_entry(const std::string& id) const {
    std::vector<std::string> known;
    for (const LogEntry& entry : log_.entries) known.push_back(entry.id);
    const bool back = std::ranges::find(log_.retracted, id, &LogEntry::id) != log_.retracted.end();
    if (back) return used_wrongly(fmt::format("--retract: {} was taken back before", id));
    return used_wrongly(fmt::format("--retract: no entry has the id \"{}\"{}; floatwright log --show lists them", id,
                             known.empty() ? "" : fmt::format("; the nearest is \"{}\"", nearest_word(id, known))));
  }

  const LogOptions& options_;
  const Configuration& configuration_;
  Instant now_;
  std::filesystem::path file_;
  LogFile log_;
  LocalClock clock_;
  std::size_t first_new_ = 0;
};

int add_notes(const LogOptions& options, const Configuration& configuration, Instant now, Logging& logging) {
  const auto day = day_of_notes(options, configuration, now);
  if (!day) return tell(day.error());
  auto notes = notes_given(options, {configuration, *day});
  if (!notes) return tell(notes.error());
  say_problems(notes->problems);
  if (const auto done = logging.add(std::move(notes->entries)); !done) return tell(done.error());
  logging.tell_what_was_added();
  const auto left_out = notes->problems.size();
  if (left_out == 0) return kExitFresh;
  return tell({fmt::format("{} of the notes {} not logged; mend what stands above", left_out, left_out == 1 ? "was" : "were"),
               kExitBadData});
}

int run_log(const LogOptions& options) {
  const auto now = instant_now(options);
  if (!now) return tell(now.error());
  const auto configuration = configuration_or_told(options);
  if (!configuration) return tell(configuration.error());
  if (options.show) {
    const auto shown = Logging(options, *configuration, *now).show();
    return shown ? kExitFresh : tell(shown.error());
  }
  const auto lock = lock_run(configuration->directory);
  if (!lock) return tell(lock.error());
  Logging logging(options, *configuration, *now);  // reads the log under the lock: another run may have added to it
  if (options.retract.empty()) return add_notes(options, *configuration, *now, logging);
  const auto done = logging.take_back(options.retract);
  return done ? kExitFresh : tell(done.error());
}

void add_note_options(CLI::App& command, LogOptions& options) {
  const auto add = [&](const char* name, std::string& value, const char* what, const char* type) {
    command.add_option(name, value, what)->type_name(type);
  };
  add("--where", options.where, "one note: the water, such as \"Mill run bank\" or \"mile 39.5 run\"", "WATER");
  add("--hour", options.hour, "the hour of it on the river's clock, such as 10:10", "HH:MM");
  add("--depth", options.depth, "how deep the water was sounded; \"6 ft by count\" when counted down", "DEPTH");
  add("--speed", options.speed, "how fast the surface ran, timed", "SPEED");
  add("--bottom", options.bottom, "Y if the fly touched the bottom, else N", "Y|N");
  add("--fly", options.fly, "how deep the fly could go, where the rod alone does not say", "DEPTH");
  add("--rod", options.rod, "the rod, by id, mark or its letter on the day's sheet", "ROD");
  add("--count", options.count, "seconds that the rod's sinking line was counted down", "SECONDS");
  add("--water", options.water, "the water's temperature", "TEMPERATURE");
}

}  // namespace

void add_log_command(CLI::App& program, RunCommand& run) {
  auto options = std::make_shared<LogOptions>();
  CLI::App* command = program.add_subcommand("log", "add what was met on the water; --show what it changed");
  command->add_option("FILE", options->file, "pencil notes, one a line, or JSON; - is standard input; without it a terminal is asked")
      ->type_name("FILE");
  add_config_option(*command, *options);
  command->add_option("--date", options->date, "the day of notes that name none: today, yesterday or YYYY-MM-DD")->type_name("DAY");
  command->add_option("--now", options->now, "as if it were this instant, such as 2027-05-14T20:10:00-06:00")->type_name("INSTANT");
  add_note_options(*command, *options);
  auto* retract = command->add_option("--retract", options->retract, "take an entry back; it stays in the file")->type_name("ID");
  command->add_flag("--show", options->show, "what each water and boat learned, and all entries")->excludes(retract);
  command->add_option("--as", options->as, "with --show: text or json (SI and UTC)")
      ->check(CLI::IsMember({"text", "json"}).description(""))
      ->type_name("text|json");
  command->add_option("--units", options->units, "us or metric, instead of what settings.json says")
      ->type_name("us|metric")
      ->check(CLI::IsMember({"us", "metric"}).description(""));
  command->add_flag("--quiet", options->quiet, "say nothing on standard error but failures");
  command->footer("Example: floatwright log --config ~/lantern notes.txt\n"
                  "         floatwright log --where \"Mill run bank\" --hour 10:10 --depth \"3 1/2 ft\"\n"
                  "         floatwright log --show");
  command->callback([options, &run] { run = [options] { return run_log(*options); }; });
}

}  // namespace floatwright
