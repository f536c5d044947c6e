#pragma once
// The keys under which tuned.json holds what was fitted and how good it was: written and read by one description. `Io`
// takes each key with its value, which it reads or fills. A key ends in the unit of its number.
#include <concepts>
#include <type_traits>

#include "engine/trip/tuning.hpp"

namespace floatwright {

template <class T, class U>
concept Is = std::same_as<std::remove_const_t<T>, U>;  // of a value that is written it is const

template <class Io>
void tuned_keys(Io& io, Is<TunedLead> auto& lead) {
  io.hours("lead_h", lead.lead);
  io.truth("used", lead.used);
  io.terms("coefficients", lead.coefficients, kLimbTermWords);
}

template <class Io>
void tuned_keys(Io& io, Is<PastErrors> auto& errors) {
  io.maybe_word("state", errors.state, kFlowStateWords);
  io.hours("lead_h", errors.lead);
  io.count("count", errors.count);
  io.number("low", errors.low);
  io.number("high", errors.high);
}

template <class Io>
void tuned_keys(Io& io, Is<ForecastSkill> auto& skill) {
  io.instant("known_until", skill.known_until);
  io.list("errors", skill.errors);
}

template <class Io>
void tuned_keys(Io& io, Is<FlowLibrary> auto& library) {
  io.instant("start", library.start);
  io.hours("step_h", library.step);
  io.row("ln_flow", library.ln_flow);
}

template <class Io>
void tuned_keys(Io& io, Is<TunedFlow> auto& flow) {
  io.text("gauge", flow.gauge);
  io.text("station", flow.station);
  io.instant("made_on", flow.made_on);
  io.instant("record_from", flow.record_from);
  io.instant("record_to", flow.record_to);
  io.truth("below_dam", flow.below_dam);
  io.truth("from_above", flow.from_above);
  io.si("median_m3_s", flow.median);
  io.list("leads", flow.leads);
  io.object("skill", flow.skill);
  io.object("library", flow.library);
}

template <class Io>
void tuned_keys(Io& io, Is<TunedDailyLead> auto& lead) {
  io.count("days", lead.days);
  io.truth("used", lead.used);
  io.terms("coefficients", lead.coefficients, kDailyTermWords);
  io.number("mean_miss", lead.mean_miss);
}

template <class Io>
void tuned_keys(Io& io, Is<TunedDailyFlow> auto& flow) {
  io.text("gauge", flow.gauge);
  io.text("station", flow.station);
  io.instant("made_on", flow.made_on);
  io.instant("record_from", flow.record_from);
  io.instant("record_to", flow.record_to);
  io.text("gauge_above", flow.gauge_above);
  io.text("station_above", flow.station_above);
  io.si("median_m3_s", flow.median);
  io.list("leads", flow.leads);
  io.object("skill", flow.skill);
  io.object("library", flow.library);
}

template <class Io>
void tuned_keys(Io& io, Is<TunedTemperatureLead> auto& lead) {
  io.hours("lead_h", lead.lead);
  io.truth("used", lead.used);
  io.terms("coefficients", lead.coefficients, kTemperatureTermWords);
  io.number("low", lead.low);
  io.number("high", lead.high);
  io.kelvin("mean_error_c", lead.mean_error);
  io.count("errors", lead.errors);
}

template <class Io>
void tuned_keys(Io& io, Is<TunedTemperature> auto& curve) {
  io.text("gauge", curve.gauge);
  io.text("station", curve.station);
  io.instant("made_on", curve.made_on);
  io.instant("record_from", curve.record_from);
  io.instant("record_to", curve.record_to);
  io.list("leads", curve.leads);
  io.kelvin("maximum_missed_c", curve.maximum_missed);
  io.maybe_number("air_share", curve.air_share);
}

template <class Io>
void tuned_keys(Io& io, Is<FittedLag> auto& lag) {
  io.text("from", lag.from);
  io.text("to", lag.to);
  io.si("at_flow_m3_s", lag.at_flow);
  io.si("time_s", lag.time);
  io.number("exponent", lag.exponent);
  io.number("spread", lag.spread);
  io.count("fronts", lag.fronts);
}

template <class Io>
void tuned_keys(Io& io, Is<FittedChannel> auto& channel) {
  io.text("gauge", channel.gauge);
  io.number("a", channel.a);
  io.number("b", channel.b);
  io.number("c", channel.c);
  io.number("f", channel.f);
  io.number("k", channel.k);
  io.number("m", channel.m);
  io.si("least_m3_s", channel.least);
  io.si("most_m3_s", channel.most);
  io.number("sd_ln_depth", channel.sd_ln_depth);
  io.number("sd_ln_speed", channel.sd_ln_speed);
  io.count("visits", channel.visits);
}

}  // namespace floatwright
