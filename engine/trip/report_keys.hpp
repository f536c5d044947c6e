#pragma once
// The keys under which reports of tuning stand in tuned.json and in `tune --as json`, written and read by one
// description as tuned_keys.hpp. A number that is none (nothing varied, nothing was judged) is null.
#include "engine/trip/tuned_keys.hpp"

namespace floatwright {

template <class Io>
void tuned_keys(Io& io, Is<FlowScore> auto& score) {
  io.number_or_null("nash_sutcliffe", score.nash_sutcliffe);
  io.number_or_null("kling_gupta", score.kling_gupta);
  io.si("mean_error_m3_s", score.mean_error);
}

template <class Io>
void tuned_keys(Io& io, Is<FlowScoreRow> auto& row) {
  io.maybe_word("state", row.state, kFlowStateWords);
  io.hours("lead_h", row.lead);
  io.count("origins", row.origins);
  io.object("forecast", row.forecast);
  io.object("holding", row.holding);
  io.object("untuned", row.untuned);
  io.count("banded", row.banded);
  io.number_or_null("inside_band", row.inside_band);
  io.number_or_null("inside_default", row.inside_default);
}

template <class Io>
void tuned_keys(Io& io, Is<FlowReport> auto& report) {
  io.text("gauge", report.gauge);
  io.instant("fitted_from", report.fitted_from);
  io.instant("fitted_until", report.fitted_until);
  io.instant("judged_until", report.judged_until);
  io.list("rows", report.rows);
  io.texts("notes", report.notes);
}

template <class Io>
void tuned_keys(Io& io, Is<TemperatureScoreRow> auto& row) {
  io.hours("lead_h", row.lead);
  io.count("origins", row.origins);
  io.kelvin("tuned_error_c", row.tuned);
  io.kelvin("untuned_error_c", row.untuned);
  io.kelvin("same_hour_error_c", row.same_hour);
  io.count("banded", row.banded);
  io.number_or_null("inside_band", row.inside_band);
  io.number_or_null("inside_untuned", row.inside_untuned);
  io.number_or_null("inside_stated", row.inside_stated);
}

template <class Io>
void tuned_keys(Io& io, Is<MaximumScore> auto& score) {
  io.count("days", score.days);
  io.kelvin("error_c", score.error);
  io.kelvin("bias_c", score.bias);
  io.kelvin("rule_error_c", score.rule_error);
  io.kelvin("rule_bias_c", score.rule_bias);
  io.kelvin("yesterday_error_c", score.yesterday_error);
}

template <class Io>
void tuned_keys(Io& io, Is<StopScore> auto& score) {
  io.count("seen_from_h", score.seen_from);
  io.truth("evening_before", score.evening_before);
  io.count("came", score.came);
  io.count("named_in_time", score.named_in_time);
  io.count("others", score.others);
  io.count("called_in_vain", score.called_in_vain);
}

template <class Io>
void tuned_keys(Io& io, Is<TemperatureReport> auto& report) {
  io.text("gauge", report.gauge);
  io.instant("fitted_from", report.fitted_from);
  io.instant("fitted_until", report.fitted_until);
  io.instant("judged_until", report.judged_until);
  io.list("rows", report.rows);
  io.object("maximum", report.maximum);
  io.list("stops", report.stops);
  io.texts("notes", report.notes);
}

template <class Io>
void tuned_keys(Io& io, Is<RiseScore> auto& score) {
  io.count("rises", score.rises);
  io.si("median_error_s", score.median_error);
  io.number_or_null("within_quarter_hour", score.within_quarter_hour);
  io.number_or_null("within_margin", score.within_margin);
}

template <class Io>
void tuned_keys(Io& io, Is<RoutedScore> auto& score) {
  io.measured_number("nash_sutcliffe", score.nash_sutcliffe);
  io.measured_number("kling_gupta", score.kling_gupta);
}

template <class Io>
void tuned_keys(Io& io, Is<LagReport> auto& report) {
  io.text("from", report.from);
  io.text("to", report.to);
  io.si("apart_m", report.apart);
  io.si("least_change_m3_s", report.least_change);
  io.count("changes", report.changes);
  io.instant("used_from", report.used_from);
  io.instant("judged_from", report.judged_from);
  io.instant("judged_to", report.judged_to);
  io.count("rises_above", report.rises_above);
  io.object("tuned", report.tuned);
  io.object("constant", report.constant);
  io.object("by_channel", report.by_channel);
  io.object("unrouted", report.unrouted);
  io.object("routed", report.routed);
  io.object("brought_down", report.brought_down);
  io.texts("notes", report.notes);
}

template <class Io>
void tuned_keys(Io& io, Is<ChannelSkill> auto& skill) {
  io.count("fitted", skill.fitted);
  io.count("judged", skill.judged);
  io.instant("from", skill.from);
  io.number_or_null("depth_error", skill.depth_error);
  io.number_or_null("speed_error", skill.speed_error);
  io.number_or_null("plain_depth_error", skill.plain_depth_error);
  io.number_or_null("plain_speed_error", skill.plain_speed_error);
  io.number_or_null("depth_held", skill.depth_held);
  io.number_or_null("speed_held", skill.speed_held);
}

template <class Io>
void tuned_keys(Io& io, Is<VisitLeftOut> auto& visit) {
  io.text("visit", visit.visit);
  io.maybe_instant("time", visit.time);
  io.text("why", visit.why);
}

template <class Io>
void tuned_keys(Io& io, Is<ChannelReport> auto& report) {
  io.text("gauge", report.gauge);
  io.count("visits", report.visits);
  io.maybe_object("skill", report.skill);
  io.list("other_sections", report.other_sections);
  io.list("left_out", report.left_out);
  io.list("outliers", report.outliers);
  io.texts("notes", report.notes);
}

template <class Io>
void tuned_keys(Io& io, Is<TuningReports> auto& reports) {
  io.list("flow_reports", reports.flows);
  io.list("daily_flow_reports", reports.daily_flows);
  io.list("temperature_reports", reports.temperatures);
  io.list("lag_reports", reports.lags);
  io.list("channel_reports", reports.channels);
}

template <class Io>
void tuned_keys(Io& io, Is<Tuning> auto& tuning) {
  io.list("flows", tuning.tuned.flows);
  io.list("daily_flows", tuning.tuned.daily_flows);
  io.list("temperatures", tuning.tuned.temperatures);
  io.list("lags", tuning.lags);
  io.list("channels", tuning.channels);
  tuned_keys(io, tuning.reports);
}

}  // namespace floatwright
