#include "engine/forecast/outlook.hpp"

#include <algorithm>
#include <cmath>

#include "engine/forecast/chosen_way.hpp"
#include "engine/forecast/daily_outlook.hpp"
#include "engine/forecast/flow_library.hpp"
#include "engine/forecast/flow_state.hpp"
#include "engine/forecast/local_clock.hpp"
#include "engine/forecast/official_alone.hpp"

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

// `way` says the cases at an instant past the newest reading. A hole wider than the bridge is crossed, and told.
template <class Way>
PerCase<std::vector<Discharge>> over_grid(const FlowHistory& history, const Way& way, const TimeGrid& grid,
                                          GaugeOutlook& outlook) {
  PerCase<std::vector<Discharge>> flow;
  bool patched = false;
  outlook.forecast_from = grid.last() + grid.step;
  for (std::size_t i = 0; i < grid.count; ++i) {
    const Instant t = grid.at(i);
    if (!history.rows.empty() && t <= history.newest()) {
      patched = patched || !history.ln_flow(t);
      const double y = history.ln_flow_or_between(t);
      append(flow, {y, y, y});
      continue;
    }
    outlook.forecast_from = std::min(outlook.forecast_from, t);
    append(flow, way.at(t));
  }
  if (patched)
    outlook.notes.push_back("At gauge " + outlook.gauge +
                            " hours without a flow were filled in between their neighbours.");
  return flow;
}

void tell_held(const FlowHistory& history, const ChosenWay& way, const TimeGrid& grid, GaugeOutlook& outlook) {
  const Instant told_until = way.official ? std::max(way.official->until(), history.newest()) : history.newest();
  if (grid.count > 0 && grid.last() - told_until > kFarthestAhead)
    outlook.notes.push_back("At gauge " + outlook.gauge +
                            " the flow is only held more than two days past its newest reading.");
}

// Every row the gauge sent, whatever it says, is older than a forecast may start from.
bool has_fallen_silent(const Series<Discharge>& record, Instant now) {
  const auto newer = std::upper_bound(record.times.begin(), record.times.end(), now);
  return newer == record.times.begin() || now - *(newer - 1) > kTooOld;
}

// What else may speak where no readings of hours do: means of days, or an agency alone.
std::optional<GaugeOutlook> without_readings(const OutlookInputs& in, const FlowHistory& history, const TimeGrid& grid,
                                             Instant now) {
  if (in.record.ice_now) return std::nullopt;
  if (!in.record.daily_discharge.empty())
    if (GaugeOutlook daily = daily_outlook(in, grid, now); daily.flow) return daily;
  if (!has_fallen_silent(in.record.discharge, now)) return std::nullopt;
  GaugeOutlook outlook;
  outlook.gauge = in.record.gauge;
  const auto way = official_alone(in, history, now, grid.last(), outlook);
  if (!way) return std::nullopt;
  outlook.flow = over_grid(history, *way, grid, outlook);
  return outlook;
}

}  // namespace

GaugeOutlook gauge_outlook(const OutlookInputs& in, const TimeGrid& grid, Instant now) {
  GaugeOutlook outlook;
  outlook.gauge = in.record.gauge;
  const FlowHistory history = flow_history(in.record.discharge, now);
  if (const std::string because = no_forecast_because(in, history, now); !because.empty()) {
    if (auto other = without_readings(in, history, grid, now)) return *std::move(other);
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
  tell_held(history, way, grid, outlook);
  return outlook;
}

}  // namespace floatwright
