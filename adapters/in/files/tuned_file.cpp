#include "adapters/in/files/tuned_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "adapters/in/files/tuned_reader.hpp"
#include "adapters/in/files/whole_text.hpp"
#include "engine/trip/report_keys.hpp"

namespace floatwright {

void TunedReader::row(const char* key, std::vector<float>& values) {
  const LocatedJson* const typed = in_.find(key);
  constexpr double kMostLnFlow = 30.0;  // of m3/s
  const auto fits = [](const LocatedJson& item) {
    return (item.kind == JsonKind::Number && std::abs(item.number) <= kMostLnFlow) || item.kind == JsonKind::Null;
  };
  if (typed == nullptr || typed->kind != JsonKind::List || !std::all_of(typed->items.begin(), typed->items.end(), fits))
    return in_.tell(key, typed == nullptr ? std::string("no \"") + key + "\"" : describe(*typed), "a list of numbers, each the logarithm of a flow, and nulls",
                    "Tune again.");
  for (const LocatedJson& item : typed->items)
    values.push_back(item.kind == JsonKind::Number ? static_cast<float>(item.number) : std::numeric_limits<float>::quiet_NaN());
}

namespace {

constexpr double kMostLn = 10.0;        // of a ratio of flows
constexpr double kMostDegrees = 30.0;   // C, that a forecast was off
constexpr double kMostQuotient = 50.0;  // of an error over the mean error
constexpr Duration kLongestLag = hours(60.0 * 24.0);

bool within(double low, double number, double high) { return low <= number && number <= high; }  // false of no number
bool can_be_off(double least, TemperatureChange off) {  // or null: nothing was judged
  return std::isnan(in_kelvins(off)) || within(least, in_kelvins(off), kMostDegrees);
}

// What is no more than a damaged file would hold; empty where it can be.
std::string why_it_cannot_be(const ForecastSkill& skill) {
  const bool can_be = std::all_of(skill.errors.begin(), skill.errors.end(), [](const PastErrors& errors) {
    return within(-kMostLn, errors.low, errors.high) && errors.high <= kMostLn;
  });
  return can_be ? "" : "past errors that can't be: low is not over high, both ln of a ratio";
}
std::string why_it_cannot_be(const TunedFlow& flow) {
  return flow.median > Discharge{} ? why_it_cannot_be(flow.skill) : "a median that is no flow";
}
std::string why_it_cannot_be(const TunedDailyFlow& flow) {
  for (const TunedDailyLead& lead : flow.leads)
    if (!within(0.0, lead.mean_miss, kMostLn)) return "a mean_miss that can't be";
  return why_it_cannot_be(flow.skill);
}
std::string why_it_cannot_be(const TunedTemperature& curve) {
  Period last{};
  for (const TunedTemperatureLead& lead : curve.leads) {
    if (lead.lead <= last) return "leads that do not ascend";
    last = lead.lead;
    if (!can_be_off(0.0, lead.mean_error) || !within(-kMostQuotient, lead.low, lead.high) ||
        lead.high > kMostQuotient)
      return "errors that can't be";
  }
  const bool missed = can_be_off(-kMostDegrees, curve.maximum_missed);
  return missed && within(-1.0, curve.air_share.value_or(0.0), 2.0) ? "" : "a maximum_missed_c or air_share that can't be";
}
std::string why_it_cannot_be(const FittedChannel& channel) {
  const bool sizes = within(1e-6, channel.a, 1e6) && within(1e-6, channel.c, 1e6) && within(1e-6, channel.k, 1e6);
  const bool powers = within(-1.0, channel.b, 2.0) && within(-1.0, channel.f, 2.0) && within(-1.0, channel.m, 2.0);
  const bool spread = within(0.0, channel.sd_ln_depth, kMostLn) && within(0.0, channel.sd_ln_speed, kMostLn);
  if (sizes && powers && spread && channel.least <= channel.most) return "";
  return "a channel that can't be: a, c and k are over 0, least is not over most";
}
std::string why_it_cannot_be(const FittedLag& lag) {
  if (!(lag.at_flow > Discharge{}) || !(lag.time > Duration{})) return "a lag without a flow or a time";
  const bool can_be = lag.time <= kLongestLag && within(-1.0, lag.exponent, 2.0) && within(0.01, lag.spread, 100.0);
  return can_be ? "" : "a lag that can't be";
}

// Entries of gauges that the river has, and whose station is still the one that was tuned.
class Sifter {
 public:
  Sifter(const River& river, const LocatedJson& root, const std::string& file, Problems& problems)
      : river_(river), root_(root), file_(file), problems_(problems) {}

  template <class T>
  void keep_known(const char* list, std::vector<T>& entries) {
    sift(list, entries, [&](const T& entry) {
      const std::string other = why_not(entry.gauge, entry.station);
      return other.empty() ? why_it_cannot_be(entry) : other;
    });
  }
  void keep_known_channels(std::vector<FittedChannel>& channels) {
    sift("channels", channels, [&](const FittedChannel& channel) {
      const std::string other = why_not(channel.gauge, "");
      return other.empty() ? why_it_cannot_be(channel) : other;
    });
  }
  void keep_known_lags(std::vector<FittedLag>& lags) {
    sift("lags", lags, [&](const FittedLag& lag) -> std::string {
      if (std::string upper = why_not(lag.from, ""); !upper.empty()) return upper;
      const std::string lower = why_not(lag.to, "");
      return lower.empty() ? why_it_cannot_be(lag) : lower;
    });
  }

 private:
  [[nodiscard]] std::string why_not(const std::string& gauge, const std::string& station) const {
    const auto site = std::find_if(river_.gauges.begin(), river_.gauges.end(), [&](const GaugeSite& g) { return g.id == gauge; });
    if (site == river_.gauges.end()) return "gauge \"" + gauge + "\", which river.json does not have";
    if (!station.empty() && site->station != station)
      return "gauge \"" + gauge + "\" tuned to " + station + ", which is now " + site->station;
    return {};
  }
  template <class T, class Why>
  void sift(const std::string& list, std::vector<T>& entries, const Why& why) {
    std::vector<T> kept;
    for (std::size_t i = 0; i < entries.size(); ++i) {
      const std::string wrong = why(entries[i]);
      if (wrong.empty()) {
        kept.push_back(std::move(entries[i]));
        continue;
      }
      const std::string pointer = fmt::format("/{}/{}", list, i);
      problems_.push_back({file_, line_of(root_, pointer), pointer, wrong, "a gauge of river.json as it was tuned",
                           "Left out, stated defaults hold; run floatwright tune.", true});
    }
    entries = std::move(kept);
  }

  const River& river_;
  const LocatedJson& root_;
  const std::string& file_;
  Problems& problems_;
};

// Everything in it is a warning, and nothing of it is used.
TunedFile damaged(Problems problems) {
  TunedFile out;
  out.damaged = true;
  for (Problem& problem : problems) {
    problem.warning = true;
    problem.mend += " Until then the whole file is left out and stated defaults hold; floatwright tune makes it anew.";
    out.problems.push_back(std::move(problem));
  }
  return out;
}

}  // namespace

TunedFile read_tuned_file(const std::filesystem::path& file, const River& river) {
  std::error_code error;
  if (!std::filesystem::exists(file, error)) return {};
  const auto text = read_whole_text(file);
  if (!text) return damaged({{file.string(), 0, "", text.error().what, "a file that can be read", "Look at its permissions."}});
  ParsedJson parsed = parse_located_json(file.string(), *text);
  if (!parsed.root) return damaged(std::move(parsed.problems));
  FileReading reading{file.string(), std::move(parsed.problems), {}};
  TunedFile out;
  if (auto root = versioned_root(*parsed.root, reading)) {
    TunedReader reader(*root);
    tuned_keys(reader, out.tuning);
    root->finish();
  }
  if (!reading.problems.empty()) return damaged(std::move(reading.problems));
  Sifter sifter(river, *parsed.root, reading.file, out.problems);
  sifter.keep_known("flows", out.tuning.tuned.flows);
  sifter.keep_known("daily_flows", out.tuning.tuned.daily_flows);
  sifter.keep_known("temperatures", out.tuning.tuned.temperatures);
  sifter.keep_known_lags(out.tuning.lags);
  sifter.keep_known_channels(out.tuning.channels);
  return out;
}

}  // namespace floatwright
