#include "adapters/in/files/log_file.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/files/river_ranges.hpp"
#include "adapters/in/files/whole_text.hpp"
#include "engine/river/names.hpp"

namespace floatwright {
namespace {

constexpr Range<Duration> kCounts{seconds(1.0), minutes(5.0)};
constexpr double kLeastFlySd = 0.01, kMostFlySd = 2.0;
constexpr double kMostFlow = 300000.0;  // m3/s
constexpr int kVersion = 1;

std::optional<Instant> read_instant(TypedObject& in, std::string_view key, Need need) {
  const std::string text = in.text(key, need);
  const auto at = text.empty() ? std::nullopt : instant_in(text);
  if (!text.empty() && !at)
    in.tell(key, "\"" + text + "\"", "an instant with its offset", "Write it as \"2027-05-14T10:10:00-06:00\".");
  return at;
}

std::optional<Band<Discharge>> read_flow_band(TypedObject& in, std::string_view key) {
  auto band = in.object(key, Need::Optional);
  if (!band) return std::nullopt;
  const auto end = [&](std::string_view name) { return band->plain_number(name, 0.0, kMostFlow, Need::Required); };
  const auto low = end("low"), best = end("best"), high = end("high");
  band->finish();
  if (!low || !best || !high) return std::nullopt;
  if (*low > *best || *best > *high) {
    band->tell("", "a band out of order", "low, best and high, rising", "Put them in order.");
    return std::nullopt;
  }
  return Band<Discharge>{cubic_metres_per_second(*low), cubic_metres_per_second(*best), cubic_metres_per_second(*high)};
}

std::optional<FloatMet> read_float(TypedObject& in) {
  if (!in.has("put_in") && !in.has("take_out")) return std::nullopt;
  FloatMet trip;
  trip.from = in.text("put_in", Need::Required);
  trip.to = in.text("take_out", Need::Required);
  trip.taken_out = read_instant(in, "taken_out_at", Need::Required).value_or(Instant{});
  trip.stopped = read_duration(in, "stopped", {Duration{}, hours(24.0)}, Need::Required).value_or(Duration{});
  trip.stopped_noted = in.truth("stopped_noted", true);
  trip.boat = in.text("boat", Need::Optional);
  trip.flow_at_end = read_flow_band(in, "flow_at_take_out_m3_s");
  return trip;
}

// Its flow became known later.
void add_flow(TypedObject& in, std::vector<LogEntry>& entries) {
  const std::string id = in.text("flow_of", Need::Required);
  const auto flow = read_flow_band(in, "flow_m3_s"), at_end = read_flow_band(in, "flow_at_take_out_m3_s");
  const auto entry = std::ranges::find(entries, id, &LogEntry::id);
  if (entry == entries.end()) return;
  if (flow) entry->flow = flow;
  if (at_end && entry->trip) entry->trip->flow_at_end = at_end;
}

// None where a problem was told.
std::optional<LogEntry> read_log_entry(TypedObject& in) {
  LogEntry entry;
  entry.id = in.text("id", Need::Required);
  entry.typed = in.text("typed", Need::Optional);
  const auto at = read_instant(in, "at", Need::Required);
  entry.trip = read_float(in);
  if (!entry.trip) read_water_met(in, entry);
  entry.flow = read_flow_band(in, "flow_m3_s");
  in.finish();
  if (!at || entry.id.empty()) return std::nullopt;
  entry.at = *at;
  return entry;
}

class LogReader {
 public:
  explicit LogReader(std::string file) : file_(std::move(file)) {}

  LogFile read(std::string_view text) && {
    int line = 0;
    while (!text.empty()) {
      const auto end = text.find('\n');
      log_.ends_open = end == std::string_view::npos;
      read_line(text.substr(0, end), ++line);
      text.remove_prefix(log_.ends_open ? text.size() : end + 1);
    }
    return std::move(log_);
  }

 private:
  void read_line(std::string_view text, int line) {
    if (text.find_first_not_of(" \t\r") == std::string_view::npos) return;
    ParsedJson parsed = parse_located_json(file_, text);
    FileReading reading{file_, std::move(parsed.problems), {}};
    if (parsed.root && parsed.root->kind != JsonKind::Object)
      reading.problems.push_back({file_, 1, "", describe(*parsed.root), "an object", "Take the line out."});
    std::optional<LogEntry> entry;
    if (parsed.root && reading.problems.empty()) entry = read_object(*parsed.root, reading);
    if (entry && reading.problems.empty()) keep(std::move(*entry), reading);
    tell(std::move(reading.problems), line);
  }

  // An entry; none for the other kinds of line, which are done with here.
  std::optional<LogEntry> read_object(const LocatedJson& root, FileReading& reading) {
    TypedObject in(root, "", "", reading);
    const auto version = in.whole_number("schema_version", 1, 1000000, Need::Required);
    if (version && *version != kVersion) {
      in.tell("schema_version", fmt::format("{}", *version), "1", "It was written by a newer floatwright: read it with that.");
      return std::nullopt;
    }
    const auto logged_at = read_instant(in, "logged_at", Need::Optional);
    if (in.has("retract")) {
      retract(in);
    } else if (in.has("flow_of")) {
      add_flow(in, log_.entries);
    } else {
      auto entry = read_log_entry(in);
      if (entry) entry->logged_at = logged_at;
      return entry;
    }
    in.finish();
    return std::nullopt;
  }

  void retract(TypedObject& in) {
    const std::string id = in.text("retract", Need::Required);
    const auto found = std::ranges::find(log_.entries, id, &LogEntry::id);
    if (found != log_.entries.end()) {
      log_.retracted.push_back(std::move(*found));
      log_.entries.erase(found);
    } else if (std::ranges::find(log_.retracted, id, &LogEntry::id) == log_.retracted.end()) {
      in.tell("retract", "\"" + id + "\"", "the id of an entry above it", "Look its id up with floatwright log --show.");
    }
  }

  // Logged again after it was taken back it stands again.
  void keep(LogEntry entry, FileReading& reading) {
    std::erase_if(log_.retracted, [&](const LogEntry& e) { return e.id == entry.id; });
    if (std::ranges::find(log_.entries, entry.id, &LogEntry::id) == log_.entries.end()) {
      log_.entries.push_back(std::move(entry));
      return;
    }
    reading.problems.push_back({file_, 1, "/id", "\"" + entry.id + "\", which an entry above it has", "an id of its own",
                                "Take the line out, or change its id."});
  }

  void tell(Problems problems, int line) {
    for (Problem& problem : problems) {
      problem.line = line;
      problem.warning = true;
      problem.mend += log_.ends_open ? " The line has no end, as one that was cut while it was written; it is left as it is."
                                     : " The line is left out, the rest counts.";
      log_.problems.push_back(std::move(problem));
    }
  }

  std::string file_;
  LogFile log_;
};

}  // namespace

void read_water_met(TypedObject& in, LogEntry& entry) {
  entry.where = in.text("where", Need::Required);
  entry.water = meaning_of(in, "water", in.text("water", Need::Optional), kWaterWords);
  entry.depth = read_length(in, "depth", kWaterDepths, Need::Optional);
  entry.by_count = in.truth("by_count", false);
  entry.surface_speed = read_surface_speed(in, "surface_speed", kSurfaceSpeeds, Need::Optional);
  if (in.has("bottom")) entry.bottom = in.truth("bottom", false);
  const auto fly = read_length(in, "fly_depth", kWaterDepths, Need::Optional);
  const auto scatter = in.plain_number("fly_sd_ln", kLeastFlySd, kMostFlySd, Need::Optional);
  if (fly) entry.fly = FlyReach{*fly, scatter.value_or(FlyReach{}.sd_ln)};
  entry.rod = in.text("rod", Need::Optional);
  entry.count = read_seconds(in, "count", kCounts, Need::Optional);
  entry.temperature = read_temperature(in, "water_temperature", kWaterTemperatures, Need::Optional);
}

LogFile read_log_text(const std::string& file, std::string_view text) { return LogReader(file).read(text); }

LogFile read_log(const std::filesystem::path& directory) {
  const std::filesystem::path file = directory / kLogFile;
  std::error_code error;
  if (!std::filesystem::exists(file, error)) return {};
  const auto text = read_whole_text(file);
  if (text) return read_log_text(file.string(), *text);
  LogFile log;
  log.problems.push_back({file.string(), 0, "", text.error().what, "a file that can be read",
                          "Look at its permissions; until then nothing of it counts.", true});
  return log;
}

}  // namespace floatwright
