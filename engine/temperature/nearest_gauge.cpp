#include "engine/temperature/nearest_gauge.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <optional>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

struct Span {
  RiverPlace upper, lower;
};

bool inside(RiverPlace place, Span span) { return place < span.upper && place > span.lower; }

std::optional<Discharge> newest_flow(const std::vector<GaugeRecord>& records, std::size_t gauge) {
  if (gauge >= records.size() || records[gauge].discharge.empty()) return std::nullopt;
  return records[gauge].discharge.values.back();
}

// Share of the flow below the confluence, by the gauges' newest flows, else by drainage area; none where neither is
// known.
std::optional<double> share_of_flow(const River& river, const Tributary& tributary, std::size_t stem_gauge,
                                    const std::vector<GaugeRecord>& records) {
  const bool gauge_below = *river.gauges[stem_gauge].place < tributary.joins_at;
  const auto share = [&](double joins, double stem) { return joins / (gauge_below ? stem : stem + joins); };
  for (std::size_t i = 0; i < river.gauges.size(); ++i) {
    if (tributary.gauge.empty() || river.gauges[i].id != tributary.gauge) continue;
    const auto joins = newest_flow(records, i), stem = newest_flow(records, stem_gauge);
    if (joins && stem && *stem > Discharge{}) return share(joins->si(), stem->si());
  }
  const auto& stem_area = river.gauges[stem_gauge].drainage_area;
  if (!tributary.drainage_area || !stem_area) return std::nullopt;
  return share(tributary.drainage_area->si(), stem_area->si());
}

// What parts the water at the gauge from that of the reach; empty where nothing does.
std::string parted_by(const River& river, Span span, std::size_t gauge, const std::vector<GaugeRecord>& records) {
  for (const Dam& dam : river.dams)
    if (inside(dam.place, span)) return dam.name;
  for (const Lake& lake : river.lakes)
    if (lake.from && lake.to && *lake.to<span.upper&& * lake.from> span.lower) return lake.name;
  for (const Tributary& tributary : river.tributaries) {
    if (!inside(tributary.joins_at, span)) continue;
    const auto share = share_of_flow(river, tributary, gauge, records);
    if (!share) return tributary.name + ", whose size is not known,";
    if (*share > kLargeTributary) return fmt::format("{}, {:.0f} % of the flow,", tributary.name, 100.0 * *share);
  }
  return "";
}

RiverPlace middle_of(const Reach& reach) { return RiverPlace::from_si((reach.from.si() + reach.to.si()) / 2.0); }

// From the gauge to the reach's far end: all of it must be the same water.
Span span_between(RiverPlace gauge, const Reach& reach) {
  return {std::max(gauge, reach.from), std::min(gauge, reach.to)};
}

Length away_from(RiverPlace gauge, const Reach& reach) {
  if (gauge <= reach.from && gauge >= reach.to) return {};
  const Length off = gauge - middle_of(reach);
  return off < Length{} ? -off : off;
}

std::vector<TemperatureGauge> within_reach(const River& river, const Reach& reach, const std::vector<bool>& usable) {
  std::vector<TemperatureGauge> near;
  for (std::size_t g = 0; g < river.gauges.size() && g < usable.size(); ++g) {
    if (!usable[g] || !river.gauges[g].place) continue;
    const Length away = away_from(*river.gauges[g].place, reach);
    if (away <= kFarthestForTemperature) near.push_back({g, away});
  }
  std::stable_sort(near.begin(), near.end(), [](const auto& a, const auto& b) { return a.away < b.away; });
  return near;
}

}  // namespace

Measured<TemperatureGauge> temperature_gauge(const River& river, const Reach& reach,
                                             const std::vector<GaugeRecord>& records, const std::vector<bool>& usable) {
  std::string in_the_way;
  for (const TemperatureGauge& candidate : within_reach(river, reach, usable)) {
    const Span span = span_between(*river.gauges[candidate.gauge].place, reach);
    const std::string parting = parted_by(river, span, candidate.gauge, records);
    if (parting.empty()) return candidate;
    if (in_the_way.empty()) in_the_way = parting + " parts it from gauge " + river.gauges[candidate.gauge].id;
  }
  return Absent{in_the_way.empty() ? "no gauge near enough measures water temperature" : in_the_way};
}

}  // namespace floatwright
