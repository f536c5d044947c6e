#include "engine/wording/say_river_state.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/trip/fast_rise.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr double kSlow = 0.05;  // |ln ratio| over 6 h under which it is "slowly"; judgement

// From daily means the pace of an hour is not known.
std::string pace(const GaugeOutlook& outlook) {
  if (outlook.only_daily_means) return "";
  const double size = std::abs(outlook.change_6h);
  if (size < kSlow) return " slowly";
  return size > kRisesFast ? " fast" : "";
}

// "down 3 % in 6 h", from the forecast's own words where it gave them.
std::string numbers(const GaugeOutlook& outlook) {
  if (!outlook.why.empty()) return without_stop(typed(outlook.why));
  const double percent = std::round((std::exp(outlook.change_6h) - 1.0) * 100.0);
  if (percent == 0.0) return "no change in 6 h";
  return fmt::format("{} {:.0f} % in 6 h", percent > 0 ? "up" : "down", std::abs(percent));
}

bool nothing_known(const GaugeOutlook& outlook) {
  return outlook.state == FlowState::Unknown || outlook.state == FlowState::Ice;
}

// Below a dam and on a daily wave the numbers name the state themselves.
std::string state_words(const GaugeOutlook& outlook, bool snow_fed) {
  if (nothing_known(outlook)) {
    const std::string why = without_stop(typed(outlook.why));
    return say_trend(outlook, snow_fed) + (why.empty() ? "" : " (" + why + ")");
  }
  const bool named_by_numbers = outlook.state == FlowState::Regulated || outlook.state == FlowState::DailyWave;
  if (named_by_numbers && !outlook.why.empty()) return numbers(outlook);
  return say_trend(outlook, snow_fed) + ", " + numbers(outlook);
}

std::string say_method(FlowMethod method, const std::string& dam) {
  switch (method) {
    case FlowMethod::None:
      return "is not known";
    case FlowMethod::Official:
      return "by the agency's forecast, set to the gauge";
    case FlowMethod::FromAbove:
      return "as the gauge above has shown, on its way down";
    case FlowMethod::Tuned:
      return "as the gauge went on from like hours in the past";
    case FlowMethod::Schedule:
      return dam.empty() ? "by the dam's schedule" : "by the releases typed for " + dam;
    case FlowMethod::SameHour:
      return dam.empty() ? "as at the same hour on like days" : "the releases typed for " + dam + ", routed down";
    case FlowMethod::WaveShape:
      return "by its own daily pattern";
    case FlowMethod::Hold:
      return "taken as last read";
    case FlowMethod::FadingFall:
      return "falls on, more slowly";
    case FlowMethod::DailyMeans:
      return "as such days went on";
    case FlowMethod::OfficialAlone:
      return "as the agency forecasts, not set to the gauge";
  }
  return "is not known";
}

std::string gauge_name(const River& river, const std::string& id) {
  const auto found =
      std::find_if(river.gauges.begin(), river.gauges.end(), [&](const GaugeSite& g) { return g.id == id; });
  return found == river.gauges.end() || found->name.empty() ? "Gauge " + typed(id) : typed(found->name);
}

}  // namespace

std::string say_trend(const GaugeOutlook& outlook, bool snow_fed) {
  switch (outlook.state) {
    case FlowState::Unknown:
      return "state not known";
    case FlowState::Ice:
      return "ice at the gauge";
    case FlowState::Regulated:
      return "below a ramping dam";
    case FlowState::DailyWave:
      return snow_fed ? "up and down each day with snowmelt" : "up and down each day";
    case FlowState::Rising:
      return "rising" + pace(outlook);
    case FlowState::EdgingUp:
      return "edging up";
    case FlowState::Falling:
      return "falling" + pace(outlook);
    case FlowState::Steady:
      return "steady";
  }
  return "state not known";
}

std::string say(const GaugeOutlook& outlook, const StateWords& words) {
  std::string sentence = gauge_name(words.river, outlook.gauge);
  if (outlook.now && outlook.only_daily_means)
    sentence += fmt::format(" {} in the mean of {},", say_flow(*outlook.now, words.units),
                            day_of_week(words.clock.day(outlook.now_at)));
  else if (outlook.now)
    sentence += fmt::format(" {} at {},", say_flow(*outlook.now, words.units),
                            words.clock.minute_seen_from(outlook.now_at, words.seen_from));
  else
    sentence += ":";
  return fmt::format("{} {}; {} {}", sentence, state_words(outlook, words.river.snow_fed), words.day,
                     say_method(outlook.method, words.dam));
}

std::string followed_dam(const DayPlan& plan, const River& river, const std::string& gauge) {
  for (std::size_t i = 0; i < plan.outlooks.size() && i < plan.follows_dam.size(); ++i) {
    const auto& dam = plan.follows_dam[i];
    if (plan.outlooks[i].gauge == gauge && dam && *dam < river.dams.size()) return typed(river.dams[*dam].name);
  }
  return "";
}

}  // namespace floatwright
