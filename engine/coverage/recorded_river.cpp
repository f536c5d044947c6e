#include "engine/coverage/recorded_river.hpp"

#include <algorithm>

#include "engine/coverage/days_of_record.hpp"
#include "engine/temperature/nearest_gauge.hpp"
#include "engine/trip/local_time.hpp"

namespace floatwright {
namespace {

template <class T>
std::optional<T> value_on(const Series<T>& days, std::chrono::sys_days date) {
  const auto found = std::lower_bound(days.times.begin(), days.times.end(), Instant{date});
  if (found == days.times.end() || *found != Instant{date}) return std::nullopt;
  return days.values[static_cast<std::size_t>(found - days.times.begin())];
}

TimeGrid one_instant(std::chrono::sys_days date, const std::string& time_zone) {
  return {at_local(date, hours(12.0), time_zone), std::chrono::minutes{15}, 1};
}

// The nearest usable gauge on one side of a reach, if its water is the reach's.
template <class Side>
Measured<TemperatureGauge> gauge_on(const River& river, const Reach& reach, const std::vector<GaugeRecord>& flows,
                                    std::vector<bool> usable, Side&& is_on_side) {
  for (std::size_t g = 0; g < usable.size(); ++g)
    usable[g] = usable[g] && river.gauges[g].place && is_on_side(*river.gauges[g].place);
  return temperature_gauge(river, reach, flows, usable);
}

}  // namespace

RecordedRiver::RecordedRiver(River river, const RiverGraph& graph, const std::vector<GaugeRecord>& records)
    : river_(std::move(river)), graph_(graph) {
  for (Dam& dam : river_.dams) dam.schedule.clear();
  for (const GaugeRecord& record : records) {
    gauges_.push_back({days_of_record(record.daily_discharge, record.discharge, river_.time_zone),
                       days_of_record(record.daily_temperature, record.temperature, river_.time_zone)});
    const Series<Discharge>& flow = gauges_.back().flow;
    if (flow.empty()) continue;
    const auto first = std::chrono::floor<std::chrono::days>(flow.times.front());
    const auto last = std::chrono::floor<std::chrono::days>(flow.times.back());
    if (!span_) span_ = {first, last};
    span_ = {std::min(span_->first, first), std::max(span_->second, last)};
  }
  gauges_.resize(river_.gauges.size());
}

std::vector<GaugeOutlook> RecordedRiver::outlooks_on(std::chrono::sys_days date) const {
  std::vector<GaugeOutlook> outlooks;
  for (std::size_t g = 0; g < gauges_.size(); ++g) {
    GaugeOutlook outlook;
    outlook.gauge = river_.gauges[g].id;
    outlook.flow = Absent{"no flow on record that day"};
    if (const auto mean = value_on(gauges_[g].flow, date)) {
      const std::vector<Discharge> row{*mean};
      outlook.flow = PerCase<std::vector<Discharge>>{row, row, row};
      outlook.now = *mean;
    }
    outlooks.push_back(std::move(outlook));
  }
  return outlooks;
}

RiverTemperatures RecordedRiver::temperatures_on(std::chrono::sys_days date, const TimeGrid& grid) const {
  std::vector<bool> usable;
  std::vector<Temperature> means;
  std::vector<GaugeRecord> flows(gauges_.size());  // what temperature_gauge() weighs a tributary by
  for (std::size_t g = 0; g < gauges_.size(); ++g) {
    const auto mean = value_on(gauges_[g].temperature, date);
    usable.push_back(mean.has_value());
    means.push_back(mean.value_or(Temperature{}));
    if (const auto flow = value_on(gauges_[g].flow, date)) flows[g].discharge = {{grid.start}, {*flow}};
  }
  RiverTemperatures all{.grid = grid, .reach = {}, .source = {}};
  for (const Reach& reach : graph_.reaches) {
    const RiverPlace middle = upstream_of(reach.to, 0.5 * (reach.from - reach.to));
    const auto above = gauge_on(river_, reach, flows, usable, [&](RiverPlace place) { return place >= middle; });
    const auto below = gauge_on(river_, reach, flows, usable, [&](RiverPlace place) { return place < middle; });
    all.source.emplace_back();
    if (!above && !below) {
      all.reach.emplace_back(Absent{above.why_absent()});
      continue;
    }
    Temperature mean = means[above ? above->gauge : below->gauge];
    if (above && below) {
      const Length off = above->away, span = above->away + below->away;
      if (span > Length{}) mean = mean + (off / span) * (means[below->gauge] - mean);
    }
    all.reach.emplace_back(std::vector<PerCase<Temperature>>{{mean, mean, mean}});
  }
  return all;
}

std::optional<RiverOnDate> RecordedRiver::on(std::chrono::sys_days date) const {
  const std::vector<GaugeOutlook> outlooks = outlooks_on(date);
  if (std::ranges::none_of(outlooks, [](const GaugeOutlook& one) { return one.flow.has_value(); })) return std::nullopt;
  const TimeGrid grid = one_instant(date, river_.time_zone);
  return RiverOnDate{grid.start, river_flows(river_, graph_, outlooks, grid, grid.start), temperatures_on(date, grid)};
}

}  // namespace floatwright
