#pragma once
// An invented river for tests: dam at mile 46, gauge heron at 45.2, gauge ferry at 28.9, Alder Creek joins at 35, a
// side channel from 38.6 to 37.4, Mill ditch at 41.5, the last access at 22.4. Flows are m3/s; outlooks are made by
// hand.
#include <functional>

#include "engine/routing/river_flows.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

inline constexpr Instant kNow = std::chrono::sys_days{std::chrono::year{2027} / 5 / 13} + std::chrono::hours{18};
inline TimeGrid small_grid() { return {kNow - std::chrono::hours{96}, std::chrono::hours{1}, 133}; }

inline GaugeSite gauge_site(const std::string& id, std::optional<double> mile, double area_mi2) {
  GaugeSite site;
  site.id = site.name = id;
  if (mile) site.place = river_mile(*mile);
  if (area_mi2 > 0) site.drainage_area = square_miles(area_mi2);
  return site;
}
inline Access access_at(const std::string& id, double mile) {
  Access access;
  access.id = access.name = id;
  access.place = river_mile(mile);
  return access;
}
inline StretchNote note_between(double from, double to) {
  StretchNote note;
  note.from = river_mile(from);
  note.to = river_mile(to);
  note.at_flow = cubic_metres_per_second(50);
  note.float_time = hours((from - to) / 2.2);
  Water run;
  run.fishing_time = 1.0;
  run.notes = {
      {cubic_metres_per_second(50), feet(4.5), surface_feet_per_second(3.3), DepthSource::Noted, std::nullopt}};
  note.waters = {run};
  return note;
}

// Nothing on it but accesses, notes and the two gauges.
inline River bare_river(double area_heron = 980, double area_ferry = 1290) {
  River river;
  river.name = "Lantern River";
  river.time_zone = "America/Denver";
  river.gauges = {gauge_site("heron", 45.2, area_heron), gauge_site("ferry", 28.9, area_ferry)};
  river.accesses = {access_at("ramp", 45.6), access_at("mill", 40.2), access_at("bar", 34.4),
                    access_at("quarry", 22.4)};
  river.notes = {note_between(45.6, 40.2), note_between(40.2, 34.4), note_between(34.4, 22.4)};
  return river;
}
inline Dam heron_dam(std::vector<Release> schedule = {}) {
  Dam dam;
  dam.id = "heron_dam";
  dam.name = "Heron Dam";
  dam.place = river_mile(46);
  dam.ramping = true;
  dam.schedule = std::move(schedule);
  return dam;
}

// The flow by hours after kNow (negative: the past), and how far the low and high cases part ahead of now.
inline GaugeOutlook outlook_of(const std::string& gauge, const std::function<double(double)>& flow_at,
                               double band = 0.0, FlowMethod method = FlowMethod::Hold) {
  GaugeOutlook outlook;
  outlook.gauge = gauge;
  outlook.state =
      method == FlowMethod::Schedule || method == FlowMethod::SameHour ? FlowState::Regulated : FlowState::Steady;
  outlook.method = method;
  outlook.now_at = kNow;
  outlook.forecast_from = kNow + std::chrono::hours{1};
  outlook.now = cubic_metres_per_second(flow_at(0));
  PerCase<std::vector<Discharge>> flow;
  const TimeGrid grid = small_grid();
  for (std::size_t i = 0; i < grid.count; ++i) {
    const double h = static_cast<double>(i) - 96.0, q = flow_at(h), part = h > 0 ? band : 0.0;
    flow.low.push_back(cubic_metres_per_second(q * (1 - part)));
    flow.middle.push_back(cubic_metres_per_second(q));
    flow.high.push_back(cubic_metres_per_second(q * (1 + part)));
  }
  outlook.flow = std::move(flow);
  return outlook;
}
inline GaugeOutlook silent(const std::string& gauge) {
  GaugeOutlook outlook;
  outlook.gauge = gauge;
  outlook.flow = Absent{"ice"};
  return outlook;
}
inline std::function<double(double)> steady(double q) {
  return [q](double) { return q; };
}

struct Routed {
  RiverGraph graph;
  RiverFlows flows;
  [[nodiscard]] std::size_t at(double mile) const { return *graph.at(river_mile(mile)); }
  [[nodiscard]] double middle(double mile, double h) const {
    return flow_at(flows, at(mile), kNow + std::chrono::seconds{static_cast<int>(3600 * h)}).middle.si();
  }
};
inline Routed run_of(const River& river, const std::vector<GaugeOutlook>& outlooks) {
  RiverGraph graph = river_graph(river);
  RiverFlows flows = river_flows(river, graph, outlooks, small_grid(), kNow);
  return {std::move(graph), std::move(flows)};
}

}  // namespace floatwright
