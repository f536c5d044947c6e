#pragma once
// How good what was tuned has been on the part of each record that it was not fitted to, for people: `tune` and `show
// skill` print it. Errors of flow in the user's units; "held" is the newest value kept; "less" how much smaller the
// error is than that.
#include "engine/trip/settings.hpp"
#include "engine/trip/tuning.hpp"
#include "engine/wording/clock.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

struct TuningWords {
  const River& river;
  const LocalClock& clock;
  UnitSystem units = UnitSystem::Us;
};

[[nodiscard]] Page tuning_page(const TuningReports& reports, const TuningWords& words);

// Without anything tuned: what holds then, and how to tune.
[[nodiscard]] Page untuned_page(const TuningWords& words);

// The parts, each a heading, the judged span and tables; nothing where the list is empty.
enum class RecordOf { Instants, Days };
void add_flow_reports(Page& page, const std::vector<FlowReport>& reports, RecordOf record, const TuningWords& words);
void add_temperature_reports(Page& page, const std::vector<TemperatureReport>& reports, const TuningWords& words);
void add_lag_reports(Page& page, const std::vector<LagReport>& reports, const TuningWords& words);
void add_channel_reports(Page& page, const std::vector<ChannelReport>& reports, const TuningWords& words);

// "Lantern at Old Ferry (ferry)"
[[nodiscard]] std::string name_of_gauge(const std::string& gauge, const River& river);
// "Fitted to 1 Jan 2016 to 31 Dec 2016, judged on the time to 31 Dec 2017."
[[nodiscard]] std::string judged_words(Instant fitted_from, Instant fitted_until, Instant judged_until, const LocalClock& clock);
// "0.83", "?" where it is no number; "81 %"
[[nodiscard]] std::string score_figure(double value);
[[nodiscard]] std::string percent_figure(double share);
// "6 h"; of a record of days "2 d"
[[nodiscard]] std::string lead_figure(Period lead, RecordOf record = RecordOf::Instants);

}  // namespace floatwright
