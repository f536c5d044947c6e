#include "adapters/in/files/tuned_file.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "adapters/in/files/tuned_reader.hpp"
#include "adapters/in/files/whole_text.hpp"
#include "engine/trip/report_keys.hpp"

namespace floatwright {

void TunedReader::row(const char* key, std::vector<float>& values) {
  const LocatedJson* const typed = in_.find(key);
  const auto fits = [](const LocatedJson& item) { return item.kind == JsonKind::Number || item.kind == JsonKind::Null; };
  if (typed == nullptr || typed->kind != JsonKind::List || !std::all_of(typed->items.begin(), typed->items.end(), fits))
    return in_.tell(key, typed == nullptr ? std::string("no \"") + key + "\"" : describe(*typed), "a list of numbers and nulls",
                    "Tune again.");
  for (const LocatedJson& item : typed->items)
    values.push_back(item.kind == JsonKind::Number ? static_cast<float>(item.number) : std::numeric_limits<float>::quiet_NaN());
}

namespace {

// Entries of gauges that the river has, and whose station is still the one that was tuned.
class Sifter {
 public:
  Sifter(const River& river, const LocatedJson& root, const std::string& file, Problems& problems)
      : river_(river), root_(root), file_(file), problems_(problems) {}

  template <class T>
  void keep_known(const char* list, std::vector<T>& entries) {
    sift(list, entries, [&](const T& entry) { return why_not(entry.gauge, entry.station); });
  }
  void keep_known_channels(std::vector<FittedChannel>& channels) {
    sift("channels", channels, [&](const FittedChannel& channel) {
      const bool can_be = channel.a > 0.0 && channel.c > 0.0 && channel.k > 0.0 && channel.least <= channel.most;
      return can_be ? why_not(channel.gauge, "") : "a channel that can't be: a, c and k are over 0, least is not over most";
    });
  }
  void keep_known_lags(std::vector<FittedLag>& lags) {
    sift("lags", lags, [&](const FittedLag& lag) -> std::string {
      if (!(lag.at_flow > Discharge{}) || !(lag.time > Duration{})) return "a lag without a flow or a time";
      const std::string upper = why_not(lag.from, "");
      return upper.empty() ? why_not(lag.to, "") : upper;
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
