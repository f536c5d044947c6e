#include "engine/wording/tuning_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/wording/typed.hpp"

namespace floatwright {

std::string name_of_gauge(const std::string& gauge, const River& river) {
  const auto found = std::find_if(river.gauges.begin(), river.gauges.end(), [&](const GaugeSite& g) { return g.id == gauge; });
  if (found == river.gauges.end() || found->name.empty()) return typed(gauge);
  return fmt::format("{} ({})", typed(found->name), typed(gauge));
}

std::string judged_words(Instant fitted_from, Instant fitted_until, Instant judged_until, const LocalClock& clock) {
  return fmt::format("Fitted to {} to {}, judged on the time to {}.", short_day(clock.day(fitted_from)),
                     short_day(clock.day(fitted_until)), short_day(clock.day(judged_until)));
}

std::string score_figure(double value) { return std::isfinite(value) ? fmt::format("{:.2f}", value) : "?"; }

std::string percent_figure(double share) { return std::isfinite(share) ? fmt::format("{:.0f} %", 100.0 * share) : "?"; }

std::string lead_figure(Period lead, RecordOf record) {
  if (record == RecordOf::Days) return fmt::format("{} d", lead / std::chrono::hours{24});
  return fmt::format("{} h", lead / std::chrono::hours{1});
}

Page tuning_page(const TuningReports& reports, const TuningWords& words) {
  Page page;
  page.title = "Tuning of " + typed(words.river.name);
  page.blocks.push_back(Heading{"HOW GOOD IT HAS BEEN: " + typed(words.river.name), "", 1});
  add_channel_reports(page, reports.channels, words);
  add_lag_reports(page, reports.lags, words);
  add_flow_reports(page, reports.flows, RecordOf::Instants, words);
  add_flow_reports(page, reports.daily_flows, RecordOf::Days, words);
  add_temperature_reports(page, reports.temperatures, words);
  if (page.blocks.size() == 1) page.blocks.push_back(Lines{{"Nothing was judged: no record was long enough."}, ""});
  return page;
}

Page untuned_page(const TuningWords& words) {
  Page page;
  page.title = "Skill on " + typed(words.river.name);
  page.blocks.push_back(Heading{"HOW GOOD IT HAS BEEN: " + typed(words.river.name), "", 1});
  page.blocks.push_back(Lines{
      {"Not known: nothing is tuned to this river's own records, so stated defaults hold.",
       "Flow: a rise holds, a fall fades, a daily wave and the hours below a ramping dam are taken from the days before. "
       "One day in ten is said to be lower than the band, one in ten higher: after 24 h 0.82 to 1.30 of the flow told where "
       "the river falls or is steady, 0.60 to 1.65 where it rises, 0.80 to 1.25 on a daily wave.",
       "Temperature: the gauge's own curve of the day before, moved by a share of the newest change.",
       "Travel of water: as typed in wave_times, else from the channel, 0.8 to 1.6 times as long as told.",
       "To tune: floatwright fetch --since P3Y, then floatwright tune. A year of readings is enough to begin."},
      ""});
  return page;
}

}  // namespace floatwright
