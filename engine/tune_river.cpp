#include "engine/tune_river.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "engine/forecast/release_plan.hpp"
#include "engine/forecast/tune_daily_flow.hpp"
#include "engine/forecast/tune_flow.hpp"
#include "engine/river/graph.hpp"
#include "engine/routing/brought_down.hpp"
#include "engine/routing/tune_lag.hpp"
#include "engine/temperature/tune_temperature.hpp"

namespace floatwright {
namespace {

// Where a gauge's water is in the river: its own place, or where its tributary joins.
std::optional<RiverPlace> place_of(const River& river, std::size_t gauge) {
  if (river.gauges[gauge].place) return river.gauges[gauge].place;
  for (const Tributary& tributary : river.tributaries)
    if (tributary.gauge == river.gauges[gauge].id) return tributary.joins_at;
  return std::nullopt;
}

const Series<Discharge>& finest_flow(const GaugeRecord& record) {
  return record.discharge.empty() ? record.daily_discharge : record.discharge;
}

bool same_station(const std::string& measured, const std::string& station) {
  return measured == station || measured.empty() || station.ends_with(":" + measured);
}

class Tuner {
 public:
  explicit Tuner(TuneInputs in) : in_(std::move(in)), graph_(river_graph(in_.river)) {}

  Tuning run() && {
    const std::size_t gauges = in_.river.gauges.size();
    const std::size_t steps = (in_.parts.geometry + in_.parts.routing + in_.parts.forecast) * gauges;
    std::size_t done = 0;
    const auto each = [&](bool wanted, void (Tuner::*tune)(std::size_t)) {
      for (std::size_t g = 0; wanted && g < gauges; ++g) {
        in_.progress(done++, steps);
        (this->*tune)(g);
      }
    };
    each(in_.parts.geometry, &Tuner::tune_geometry);
    each(in_.parts.routing, &Tuner::tune_travel);
    each(in_.parts.forecast, &Tuner::tune_water);
    return std::move(out_);
  }

 private:
  // On the stem above it, or in a tributary that joins above, nearest first; those with such a record.
  [[nodiscard]] std::vector<std::size_t> gauges_above(std::size_t gauge, const Series<Discharge> GaugeRecord::*record) const {
    std::vector<std::size_t> above;
    const auto here = in_.river.gauges[gauge].place;
    for (std::size_t g = 0; here && g < in_.river.gauges.size(); ++g) {
      const auto there = place_of(in_.river, g);
      if (g != gauge && there && *there > *here && !(in_.records[g].*record).empty()) above.push_back(g);
    }
    std::sort(above.begin(), above.end(),
              [&](std::size_t a, std::size_t b) { return *place_of(in_.river, a) < *place_of(in_.river, b); });
    return above;
  }

  // The next gauge up the stem that has a record of flow of any kind.
  [[nodiscard]] std::optional<std::size_t> next_above(std::size_t gauge) const {
    std::optional<std::size_t> next;
    const auto here = in_.river.gauges[gauge].place;
    for (std::size_t g = 0; here && g < in_.river.gauges.size(); ++g) {
      const auto there = in_.river.gauges[g].place;
      if (!there || !(*there > *here) || finest_flow(in_.records[g]).empty()) continue;
      if (!next || *there < *in_.river.gauges[*next].place) next = g;
    }
    return next;
  }

  void tune_geometry(std::size_t gauge) {
    std::vector<FieldMeasurement> visits;
    std::copy_if(in_.measurements.begin(), in_.measurements.end(), std::back_inserter(visits), [&](const FieldMeasurement& visit) {
      return same_station(visit.station, in_.river.gauges[gauge].station);
    });
    if (visits.empty()) return;
    ChannelTuning tuning = tune_channel({.gauge = in_.river.gauges[gauge].id, .visits = visits});
    out_.reports.channels.push_back(std::move(tuning.report));
    if (!tuning.channel.has_value()) return;
    out_.channels.push_back(*tuning.channel);
    std::erase_if(in_.river.fitted_channels, [&](const FittedChannel& old) { return old.gauge == tuning.channel->gauge; });
    in_.river.fitted_channels.push_back(*tuning.channel);
  }

  void tune_travel(std::size_t lower) {
    const auto upper = next_above(lower);
    const Series<Discharge>& below = finest_flow(in_.records[lower]);
    if (!upper || below.empty()) return;
    LagTuning tuning = tune_lag({in_.river, graph_, *upper, lower, finest_flow(in_.records[*upper]), below});
    out_.reports.lags.push_back(std::move(tuning.report));
    half_way_lags_[{*upper, lower}] = tuning.of_first_half;
    if (!tuning.lag.has_value()) return;
    out_.lags.push_back(*tuning.lag);
    std::erase_if(in_.river.fitted_lags,
                  [&](const FittedLag& old) { return old.from == tuning.lag->from && old.to == tuning.lag->to; });
    in_.river.fitted_lags.push_back(*tuning.lag);
  }

  void tune_water(std::size_t gauge) {
    const GaugeRecord& record = in_.records[gauge];
    if (!record.discharge.empty()) tune_instants(gauge);
    if (record.discharge.empty() && !record.daily_discharge.empty()) tune_days(gauge);
    if (!record.temperature.empty()) {
      TemperatureTuning tuning =
          tune_temperature({.record = record, .time_zone = in_.river.time_zone, .made_on = in_.made_on, .stop = in_.stop});
      out_.reports.temperatures.push_back(std::move(tuning.report));
      if (tuning.tuned) out_.tuned.temperatures.push_back(*std::move(tuning.tuned));
    }
  }

  // The river with no more of this pair's lag than the first half of its record tells: a forecast judged on the rest
  // may not know better.
  [[nodiscard]] River river_known_half_way(std::size_t upper, std::size_t lower) {
    const auto [known, missing] = half_way_lags_.try_emplace({upper, lower});
    if (missing)
      known->second = tune_lag({in_.river, graph_, upper, lower, in_.records[upper].discharge, in_.records[lower].discharge}).of_first_half;
    River river = in_.river;
    const std::string &from = river.gauges[upper].id, &to = river.gauges[lower].id;
    std::erase_if(river.fitted_lags, [&](const FittedLag& lag) { return lag.from == from && lag.to == to; });
    if (known->second) river.fitted_lags.push_back(*known->second);
    return river;
  }

  void tune_instants(std::size_t gauge) {
    FromAbove routed, routed_then;
    for (const std::size_t upper : gauges_above(gauge, &GaugeRecord::discharge)) {
      if (!in_.river.gauges[upper].place) continue;
      const Series<Discharge>& shown = in_.records[upper].discharge;
      routed = from_above(in_.river, graph_, upper, gauge, shown);
      routed_then = from_above(river_known_half_way(upper, gauge), graph_, upper, gauge, shown);
      break;
    }
    FlowTuning tuning = tune_flow({.record = in_.records[gauge],
                                   .below_dam = dam_above(in_.river, in_.river.gauges[gauge]).dam != nullptr,
                                   .time_zone = in_.river.time_zone,
                                   .above = routed.routed.empty() ? nullptr : &routed,
                                   .made_on = in_.made_on,
                                   .above_then = routed_then.routed.empty() ? nullptr : &routed_then});
    out_.reports.flows.push_back(std::move(tuning.report));
    if (tuning.tuned.has_value()) out_.tuned.flows.push_back(*std::move(tuning.tuned));
  }

  [[nodiscard]] DailyMeansOf daily_means_of(std::size_t gauge) const {
    const GaugeSite& site = in_.river.gauges[gauge];
    return {site.id, site.station, in_.records[gauge].daily_discharge};
  }

  void tune_days(std::size_t gauge) {
    DailyTuningInputs wanted{.own = daily_means_of(gauge), .above = {}, .made_on = in_.made_on};
    for (const std::size_t upper : gauges_above(gauge, &GaugeRecord::daily_discharge)) wanted.above.push_back(daily_means_of(upper));
    DailyTuning tuning = tune_daily_flow(wanted);
    out_.reports.daily_flows.push_back(std::move(tuning.report));
    if (tuning.tuned.has_value()) out_.tuned.daily_flows.push_back(*std::move(tuning.tuned));
  }

  TuneInputs in_;
  RiverGraph graph_;
  std::map<std::pair<std::size_t, std::size_t>, std::optional<FittedLag>> half_way_lags_;
  Tuning out_;
};

// `is_same` tells entries of one gauge, or one pair, apart from others.
template <class T, class Same>
std::vector<T> replaced(std::vector<T> before, std::vector<T> now, const Same& is_same) {
  std::erase_if(before, [&](const T& old) { return std::any_of(now.begin(), now.end(), [&](const T& t) { return is_same(old, t); }); });
  std::move(now.begin(), now.end(), std::back_inserter(before));
  return before;
}

constexpr auto kSameGauge = [](const auto& a, const auto& b) { return a.gauge == b.gauge; };
constexpr auto kSamePair = [](const auto& a, const auto& b) { return a.from == b.from && a.to == b.to; };

}  // namespace

Tuning tune_river(TuneInputs in) {
  in.records.resize(in.river.gauges.size());
  return Tuner(std::move(in)).run();
}

Tuning put_together(Tuning before, Tuning now) {
  Tuning out;
  out.tuned.flows = replaced(std::move(before.tuned.flows), std::move(now.tuned.flows), kSameGauge);
  out.tuned.daily_flows = replaced(std::move(before.tuned.daily_flows), std::move(now.tuned.daily_flows), kSameGauge);
  out.tuned.temperatures = replaced(std::move(before.tuned.temperatures), std::move(now.tuned.temperatures), kSameGauge);
  out.lags = replaced(std::move(before.lags), std::move(now.lags), kSamePair);
  out.channels = replaced(std::move(before.channels), std::move(now.channels), kSameGauge);
  out.reports.flows = replaced(std::move(before.reports.flows), std::move(now.reports.flows), kSameGauge);
  out.reports.daily_flows = replaced(std::move(before.reports.daily_flows), std::move(now.reports.daily_flows), kSameGauge);
  out.reports.temperatures = replaced(std::move(before.reports.temperatures), std::move(now.reports.temperatures), kSameGauge);
  out.reports.lags = replaced(std::move(before.reports.lags), std::move(now.reports.lags), kSamePair);
  out.reports.channels = replaced(std::move(before.reports.channels), std::move(now.reports.channels), kSameGauge);
  return out;
}

}  // namespace floatwright
