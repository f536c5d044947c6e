#include "engine/wording/since_yesterday.hpp"

#include <fmt/format.h>

#include <cmath>
#include <optional>

#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

template <class T>
struct TwoDays {
  T now, before;
};

template <class T>
std::optional<TwoDays<T>> two_days(const Series<T>& series, Instant now) {
  if (series.empty() || now - series.times.back() > kStaleAfter) return std::nullopt;
  const Measured<T> before = value_at(series, series.times.back() - std::chrono::hours{24});
  if (!before) return std::nullopt;
  return TwoDays<T>{series.values.back(), *before};
}

std::string say_stages(const TwoDays<Stage>& stage, UnitSystem units) {
  const Length rise = metres(in_metres(stage.now) - in_metres(stage.before));
  const std::string inches = say_rise(rise, units);
  if (inches.starts_with("0 ")) return "as high";
  return inches + (rise > Length{} ? " higher" : " lower");
}

std::string say_flows(const TwoDays<Discharge>& flow) {
  if (!(flow.before > Discharge{})) return "";
  const double percent = std::round(100.0 * (flow.now / flow.before - 1.0));
  if (percent == 0.0) return "as much water";
  return fmt::format("{:.0f} % {}", std::abs(percent), percent > 0.0 ? "more" : "less");
}

}  // namespace

std::string say_since_yesterday(const GaugeRecord& record, Instant now, UnitSystem units) {
  if (const auto stage = two_days(record.stage, now)) return say_stages(*stage, units);
  if (const auto flow = two_days(record.discharge, now)) return say_flows(*flow);
  return "";
}

}  // namespace floatwright
