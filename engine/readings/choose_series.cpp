#include "engine/readings/choose_series.hpp"

#include <algorithm>

#include "engine/readings/usable.hpp"

namespace floatwright {
namespace {

constexpr Period kAboutAsNew = std::chrono::hours{24};
constexpr Period kCounted = std::chrono::hours{72};

struct Candidate {
  const GaugeSeries* series = nullptr;
  std::optional<Instant> newest;  // usable row
  std::optional<Instant> newest_of_any;
  std::size_t usable_lately = 0;
};

std::optional<Candidate> candidate(const GaugeSeries& series, Instant now) {
  Candidate out;
  out.series = &series;
  for (const Reading& row : series.readings) {
    if (row.time > now) continue;
    out.newest_of_any = std::max(out.newest_of_any.value_or(row.time), row.time);
    if (why_not_usable(row, series.variable, now)) continue;
    out.newest = std::max(out.newest.value_or(row.time), row.time);
    if (row.time > now - kCounted) ++out.usable_lately;
  }
  return out.newest_of_any ? std::optional{out} : std::nullopt;
}

// By the sensor's own place where the service tells it; else by its id, long ones cut: the whole stands in the readings.
std::string called(const GaugeSeries& series) {
  if (!series.sensor.empty()) return "the one called \"" + series.sensor + "\"";
  constexpr std::size_t kReadable = 16, kEnough = 8;
  const auto& id = series.series_id;
  return "series " + (id.size() > kReadable ? id.substr(0, kEnough) + "..." : id);
}

// Only those about as new as the newest; where nothing is usable, by the newest row of any kind.
std::vector<Candidate> about_as_new(const std::vector<Candidate>& all) {
  const bool some_usable = std::any_of(all.begin(), all.end(), [](const Candidate& c) { return c.newest.has_value(); });
  const auto age_key = [&](const Candidate& c) { return some_usable ? c.newest : c.newest_of_any; };
  std::optional<Instant> newest;
  for (const Candidate& c : all) newest = std::max(newest, age_key(c));
  std::vector<Candidate> out;
  for (const Candidate& c : all)
    if (age_key(c) && *age_key(c) >= *newest - kAboutAsNew) out.push_back(c);
  return out;
}

std::string reason(const std::vector<Candidate>& asked, const Candidate& taken) {
  if (asked.size() == 1) return "it has the newest usable reading";
  const bool more = std::none_of(asked.begin(), asked.end(), [&](const Candidate& c) {
    return c.series != taken.series && c.usable_lately == taken.usable_lately;
  });
  return more ? "it has more usable readings in the last 72 h" : "equally good, the first by its name";
}

}  // namespace

std::optional<SeriesChoice> choose_series(const std::vector<GaugeSeries>& all, Variable variable,
                                          const std::string& gauge, Instant now) {
  std::vector<Candidate> candidates;
  for (const GaugeSeries& series : all) {
    if (series.variable != variable || series.daily || series.issued) continue;
    if (const auto found = candidate(series, now)) candidates.push_back(*found);
  }
  if (candidates.empty()) return std::nullopt;

  const std::vector<Candidate> asked = about_as_new(candidates);
  const Candidate taken = *std::min_element(asked.begin(), asked.end(), [](const Candidate& a, const Candidate& b) {
    if (a.usable_lately != b.usable_lately) return a.usable_lately > b.usable_lately;
    return a.series->series_id < b.series->series_id;
  });
  if (candidates.size() == 1) return SeriesChoice{taken.series, ""};
  return SeriesChoice{taken.series, "Of " + std::to_string(candidates.size()) + " sensors of " + name_of(variable) +
                                        " at " + gauge + ", " + called(*taken.series) +
                                        " was taken: " + reason(asked, taken) + "."};
}

}  // namespace floatwright
