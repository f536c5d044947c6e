#include <date/date.h>

#include <algorithm>

#include "adapters/in/files/boats_file.hpp"
#include "adapters/in/files/whole_text.hpp"
#include "adapters/result.hpp"

namespace floatwright {
namespace {

std::string iso(std::chrono::year_month_day day) {
  const std::chrono::sys_days days = day;
  return date::format("%F", date::sys_days{days.time_since_epoch()});
}

void check_day(const LocatedJson& root, FileReading& reading, std::chrono::year_month_day day, const DaysAllowed& allowed) {
  if (!day.ok() || (day >= allowed.first && day <= allowed.last)) return;
  const bool asked = allowed.first == allowed.last;
  reading.problems.push_back(
      {reading.file, line_of(root, "/date"), "/date", "\"" + iso(day) + "\"",
       asked ? iso(allowed.first) + ", the day asked for with --date"
             : iso(allowed.first) + " to " + iso(allowed.last) + ": today on the river and as far ahead as a plan may be asked for",
       asked ? "Take that day's list, or leave --date out to plan the day of the file." : "Take the list of the day to come."});
}

}  // namespace

LoadedBoats load_boats(const std::filesystem::path& file, const Configuration& configuration,
                       const DaysAllowed& allowed) {
  LoadedBoats loaded;
  const auto text = read_whole_text(file);
  if (!text) {
    loaded.problems = {{file.string(), 0, "", text.error().what, "a file with the day's boats",
                        "Write it, or name another with --boats."}};
    loaded.exit_code = kExitNoInput;
    return loaded;
  }
  FileReading reading;
  reading.file = file.string();
  ParsedJson parsed = parse_located_json(reading.file, *text);
  reading.problems = std::move(parsed.problems);
  if (parsed.root) {
    Boats boats = read_boats(*parsed.root, reading, configuration.river, configuration.settings);
    check_day(*parsed.root, reading, boats.day, allowed);
    loaded.boats = std::move(boats);
  }
  std::stable_sort(reading.problems.begin(), reading.problems.end(),
                   [](const Problem& a, const Problem& b) { return a.line < b.line; });
  const bool sound = std::all_of(reading.problems.begin(), reading.problems.end(), [](const Problem& p) { return p.warning; });
  if (!sound) loaded.boats.reset();
  if (!sound) loaded.exit_code = kExitConfiguration;
  loaded.problems = std::move(reading.problems);
  return loaded;
}

}  // namespace floatwright
