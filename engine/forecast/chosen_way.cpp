#include "engine/forecast/chosen_way.hpp"

#include <date/date.h>
#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "engine/forecast/joined_official.hpp"
#include "engine/forecast/local_clock.hpp"
#include "engine/forecast/rain.hpp"

namespace floatwright {
namespace {

constexpr Period kOldFit = std::chrono::hours{24 * 365};  // the span of the errors that are kept

std::string day(Instant t) { return date::format("%Y-%m-%d", t); }

FlowMethod untuned_method(FlowState state) {
  if (state == FlowState::Regulated) return FlowMethod::SameHour;
  if (state == FlowState::DailyWave) return FlowMethod::WaveShape;
  return state == FlowState::Falling ? FlowMethod::FadingFall : FlowMethod::Hold;
}

bool follows_schedule(const OutlookInputs& in, FlowState state) {
  return state == FlowState::Regulated && in.dam_close && !in.dam_above->schedule.empty();
}

void tell_schedule(const OutlookInputs& in, const ChosenWay& way, GaugeOutlook& outlook) {
  const std::string at = "At gauge " + outlook.gauge + " ";
  if (std::abs(way.gauge_over_schedule - 1.0) >= 0.005)
    outlook.notes.push_back(fmt::format("{}the typed releases of {} are taken times {:.2f}, as it read of late.", at,
                                        way.schedule->name, way.gauge_over_schedule));
  const Instant last = way.schedule->schedule.back().time;
  if (last < outlook.now_at)
    outlook.notes.push_back(fmt::format("{}the last release typed for {} is of {} and is taken to hold.", at,
                                        way.schedule->name, hour_and_day(last, in.time_zone)));
}

// A hole in the library is allowed for; its steps meet the leads.
bool of_numbers(const TunedFlow& tuned) {
  const auto finite = [](double number) { return std::isfinite(number); };
  return tuned.median > Discharge{} && finite(tuned.median.si()) && tuned.library.step > Period{} &&
         kFlowLeads.front() % tuned.library.step == Period{} &&
         std::all_of(tuned.leads.begin(), tuned.leads.end(),
                     [&](const TunedLead& lead) {
                       return std::all_of(lead.coefficients.begin(), lead.coefficients.end(), finite);
                     }) &&
         std::all_of(tuned.skill.errors.begin(), tuned.skill.errors.end(),
                     [&](const PastErrors& errors) { return finite(errors.low) && finite(errors.high); });
}

// What was fitted to another station's record, or above another dam, is not this gauge's.
const TunedFlow* own_tuned(const OutlookInputs& in, FlowState state, GaugeOutlook& outlook) {
  if (in.tuned == nullptr) return nullptr;
  const std::string start = "What was fitted to the record of gauge " + outlook.gauge;
  if (in.tuned->station != in.record.station) {
    outlook.notes.push_back(fmt::format("{} is of station {} and is not used for {}; run `tune` again.", start,
                                        in.tuned->station, in.record.station));
    return nullptr;
  }
  if (in.tuned->below_dam != (state == FlowState::Regulated)) {
    outlook.notes.push_back(start + " knew of " +
                            (in.tuned->below_dam ? "a ramping dam above it" : "no ramping dam above it") +
                            " and is not used; run `tune` again.");
    return nullptr;
  }
  if (!of_numbers(*in.tuned)) {
    outlook.notes.push_back(start + " holds what is no number and is not used; run `tune` again.");
    return nullptr;
  }
  if (outlook.now_at - in.tuned->record_to > kOldFit)
    outlook.notes.push_back(start + " ends on " + day(in.tuned->record_to) + "; run `tune` again.");
  if (in.tuned->from_above && in.above == nullptr)
    outlook.notes.push_back(start + " counts on a gauge above, of which nothing is known now.");
  return in.tuned;
}

void tell_above(const OutlookInputs& in, const ChosenWay& way, GaugeOutlook& outlook) {
  const Instant seen = way.own.seen_above_until();
  if (seen <= outlook.now_at || way.official || way.schedule != nullptr) return;
  outlook.notes.push_back("At gauge " + outlook.gauge + " the flow until " + hour_and_day(seen, in.time_zone) +
                          " is what the gauge above has read, on its way down.");
}

void tell_rain(const OutlookInputs& in, const ChosenWay& way, GaugeOutlook& outlook) {
  if (!way.wet_from) return;
  outlook.notes.push_back(rain_note(hour_and_day(*way.wet_from, in.time_zone), way.official.has_value()));
}

}  // namespace

FlowMethod ChosenWay::method(Instant until) const {
  if (official) return FlowMethod::Official;
  if (schedule != nullptr) return FlowMethod::Schedule;
  const Instant now = own.origin.at();
  if (own.seen_above_until() - now > (until - now) / 2) return FlowMethod::FromAbove;
  return own.tuned ? FlowMethod::Tuned : untuned_method(own.origin.state);
}

LnCases ChosenWay::at(Instant t) const {
  LnCases cases =
      schedule != nullptr && !official ? by_schedule(own.origin.history, *schedule, gauge_over_schedule, t) : own.at(t);
  bool rain_counted = false;
  if (official) {
    const double said = official->ln_flow_or(t, [&](Instant then) { return own.at(then).middle; });
    const double moved = said - cases.middle;
    cases = {cases.low + moved, said, cases.high + moved};
    rain_counted = official->ln_flow(t).has_value();
  }
  if (wet_from && t >= *wet_from && !rain_counted) cases.high += std::log(kRainRaisesHighCase);
  return cases;
}

ChosenWay chosen_way(const OutlookInputs& in, const FlowHistory& history, Instant until, GaugeOutlook& outlook) {
  ForecastOrigin origin{.history = history,
                        .state = outlook.state,
                        .after_wave = outlook.state != FlowState::Regulated && wave_lately(history),
                        .above = in.above,
                        .time_zone = in.time_zone};
  const TunedFlow* tuned = own_tuned(in, outlook.state, outlook);
  ChosenWay way{.own = flow_ahead(std::move(origin), tuned), .official = std::nullopt, .wet_from = std::nullopt};
  way.official = joined_official(in, until, outlook);
  if (!way.official && follows_schedule(in, outlook.state)) {
    way.schedule = in.dam_above;
    way.gauge_over_schedule = gauge_over_schedule(history, *in.dam_above);
    tell_schedule(in, way, outlook);
  }
  if (in.weather != nullptr) way.wet_from = wet_from(*in.weather, outlook.now_at, until);
  outlook.method = way.method(until);
  if (outlook.method == FlowMethod::Tuned)
    outlook.source =
        fmt::format("what was fitted to its own record of {} to {}", day(tuned->record_from), day(tuned->record_to));
  tell_above(in, way, outlook);
  tell_rain(in, way, outlook);
  return way;
}

}  // namespace floatwright
