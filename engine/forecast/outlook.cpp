#include "engine/forecast/outlook.hpp"

#include <algorithm>
#include <cmath>

#include "engine/forecast/chosen_way.hpp"
#include "engine/forecast/daily_outlook.hpp"
#include "engine/forecast/flow_library.hpp"
#include "engine/forecast/flow_state.hpp"
#include "engine/forecast/local_clock.hpp"

namespace floatwright {
namespace {

constexpr Period kTooOld = std::chrono::hours{48};
constexpr Period kFarthestAhead = std::chrono::hours{48};


// Why nothing can be said, or empty.
std::string no_forecast_because(const OutlookInputs& in, const FlowHistory& history, Instant now) {
  const GaugeRecord& record = in.record;
  if (record.ice_now) return "ice: the newest flow is marked as affected by it";
  if (history.rows.empty())
    return record.discharge.empty() ? "no usable flow reading" : "no flow above zero in the record";
  if (now - history.newest() > kTooOld) return "no reading since " + hour_and_day(history.newest(), in.time_zone);
  const auto newest_row = std::upper_bound(record.discharge.times.begin(), record.discharge.times.end(), now);
  if (newest_row != record.discharge.times.begin() && *(newest_row - 1) > history.newest())
    return "the newest flow is not above zero";
  return "";
}

// The past at a grid instant. A hole wider than the bridge is crossed by a straight line in ln; before the first row
// the first is held. Sets `patched` where it did either.
double ln_past(const FlowHistory& history, Instant t, bool& patched) {
  if (const auto y = history.ln_flow(t)) return *y;
  patched = true;
  const auto& rows = history.rows;
  if (t <= rows.times.front()) return std::log(rows.values.front().si());
  const auto after =
      static_cast<std::size_t>(std::upper_bound(rows.times.begin(), rows.times.end(), t) - rows.times.begin());
  const double share = duration(t - rows.times[after - 1]) / duration(rows.times[after] - rows.times[after - 1]);
  return std::log(rows.values[after - 1].si()) * (1.0 - share) + std::log(rows.values[after].si()) * share;
}

Discharge flow_of(double ln_flow) { return Discharge::from_si(std::exp(ln_flow)); }

void append(PerCase<std::vector<Discharge>>& flow, LnCases y) {
  flow.low.push_back(flow_of(y.low));
  flow.middle.push_back(flow_of(y.middle));
  flow.high.push_back(flow_of(y.high));
}

// Below a dam the least release may stand still for weeks.
void tell_standing_still(const FlowHistory& history, GaugeOutlook& outlook) {
  FlowHistory moved = history;
  if (leave_out_frozen(moved) == 0 || (!moved.rows.empty() && moved.newest() == history.newest())) return;
  outlook.notes.push_back("At gauge " + outlook.gauge +
                          " the flow has read the same for ten days or more: its sensor may be frozen or stuck.");
}

PerCase<std::vector<Discharge>> over_grid(const FlowHistory& history, const ChosenWay& way, const TimeGrid& grid,
                                          GaugeOutlook& outlook) {
  PerCase<std::vector<Discharge>> flow;
  bool patched = false;
  outlook.forecast_from = grid.last() + grid.step;
  for (std::size_t i = 0; i < grid.count; ++i) {
    const Instant t = grid.at(i);
    if (t <= history.newest()) {
      const double y = ln_past(history, t, patched);
      append(flow, {y, y, y});
      continue;
    }
    outlook.forecast_from = std::min(outlook.forecast_from, t);
    append(flow, way.at(t));
  }
  if (patched)
    outlook.notes.push_back("At gauge " + outlook.gauge +
                            " hours without a flow were filled in between their neighbours.");
  const Instant told_until = way.official ? std::max(way.official->until(), history.newest()) : history.newest();
  if (grid.count > 0 && grid.last() - told_until > kFarthestAhead)
    outlook.notes.push_back("At gauge " + outlook.gauge +
                            " the flow is only held more than two days past its newest reading.");
  return flow;
}

}  // namespace

GaugeOutlook gauge_outlook(const OutlookInputs& in, const TimeGrid& grid, Instant now) {
  GaugeOutlook outlook;
  outlook.gauge = in.record.gauge;
  const FlowHistory history = flow_history(in.record.discharge, now);
  if (const std::string because = no_forecast_because(in, history, now); !because.empty()) {
    if (!in.record.ice_now && !in.record.daily_discharge.empty())
      if (GaugeOutlook daily = daily_outlook(in, grid, now); daily.flow) return daily;
    outlook.state = in.record.ice_now ? FlowState::Ice : FlowState::Unknown;
    outlook.why = because;
    outlook.now = Absent{because};
    outlook.flow = Absent{because};
    return outlook;
  }
  outlook.now = history.rows.values.back();
  outlook.now_at = history.newest();
  outlook.change_6h = history.change_6h().value_or(0.0);

  const bool ramps = in.dam_above != nullptr && in.dam_above->ramping;
  const NamedState named = name_state(history, ramps, in.snow_fed);
  outlook.state = named.state;
  outlook.why = named.why;
  if (now - outlook.now_at > kStaleAfter)
    outlook.notes.push_back("At gauge " + outlook.gauge + " no flow was read since " + hour_and_day(outlook.now_at, in.time_zone) + ".");
  if (!ramps) tell_standing_still(history, outlook);
  const ChosenWay way = chosen_way(in, history, grid.last(), outlook);
  outlook.flow = over_grid(history, way, grid, outlook);
  return outlook;
}

}  // namespace floatwright
