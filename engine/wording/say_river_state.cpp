#include "engine/wording/say_river_state.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

constexpr double kSlow = 0.05, kFast = 0.15;  // |ln ratio| over 6 h between "slowly", plain and "fast"; judgement

std::string pace(double change_6h) {
  const double size = std::abs(change_6h);
  if (size < kSlow) return " slowly";
  return size > kFast ? " fast" : "";
}

// "down 3 % in 6 h", from the forecast's own words where it gave them.
std::string numbers(const GaugeOutlook& outlook) {
  if (!outlook.why.empty()) return without_stop(typed(outlook.why));
  const double percent = std::round((std::exp(outlook.change_6h) - 1.0) * 100.0);
  if (percent == 0.0) return "no change in 6 h";
  return fmt::format("{} {:.0f} % in 6 h", percent > 0 ? "up" : "down", std::abs(percent));
}

std::string say_method(FlowMethod method) {
  switch (method) {
    case FlowMethod::None:
      return " is not known";
    case FlowMethod::Schedule:
      return " by the dam's schedule";
    case FlowMethod::SameHour:
      return " as at the same hour of like days";
    case FlowMethod::WaveShape:
      return " by its own daily pattern";
    case FlowMethod::Hold:
      return " taken as now";
    case FlowMethod::FadingFall:
      return " falls on, more slowly";
  }
  return " is not known";
}

}  // namespace

std::string say_trend(const GaugeOutlook& outlook, bool snow_fed) {
  switch (outlook.state) {
    case FlowState::Unknown:
      return "state not known";
    case FlowState::Ice:
      return "ice at the gauge";
    case FlowState::Regulated:
      return "held by the dam";
    case FlowState::DailyWave:
      return snow_fed ? "up and down each day with snowmelt" : "up and down each day";
    case FlowState::Rising:
      return "rising" + pace(outlook.change_6h);
    case FlowState::Falling:
      return "falling" + pace(outlook.change_6h);
    case FlowState::Steady:
      return "steady";
  }
  return "state not known";
}

std::string say(const GaugeOutlook& outlook, bool snow_fed, const std::string& day) {
  const bool unknown = outlook.state == FlowState::Unknown || outlook.state == FlowState::Ice;
  const std::string why = unknown ? without_stop(typed(outlook.why)) : numbers(outlook);
  const std::string words = say_trend(outlook, snow_fed) + (why.empty() ? "" : ": " + why);
  const bool says_how = outlook.why.find("; ahead ") != std::string::npos;  // a schedule or like days, told there
  return says_how ? words : words + "; " + day + say_method(outlook.method);
}

}  // namespace floatwright
