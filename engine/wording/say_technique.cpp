#include "engine/wording/say_technique.hpp"

#include <fmt/format.h>

namespace floatwright {
namespace {

constexpr Speed kSlowToFast = metres_per_second(0.45);  // between the two strips that are offered, 0.3 and 0.6 m/s

std::string say_swing(Mending mending) {
  switch (mending) {
    case Mending::Tight:
      return "tight swing";
    case Mending::OneMend:
      return "one mend, swing";
    case Mending::MendAndFeed:
      return "mend, feed, swing";
  }
  return "swing";
}

std::string say_strip(const Technique& technique) {
  const std::string pace = technique.strip < kSlowToFast ? "slow strip" : "fast strip";
  const double count = in_seconds(technique.count);
  return count < 0.5 ? "no count, " + pace : fmt::format("count {:.0f}, {}", count, pace);
}

}  // namespace

std::string say(Method method) {
  switch (method) {
    case Method::Swing:
      return "swing";
    case Method::Strip:
      return "strip";
    case Method::Indicator:
      return "indicator";
    case Method::TightLine:
      return "tight line";
    case Method::Dry:
      return "dry";
  }
  return "method";
}

std::string say(Platform platform) {
  switch (platform) {
    case Platform::Drifting:
      return "drift";
    case Platform::Held:
      return "hold";
    case Platform::Anchored:
      return "ANCHOR";
    case Platform::Wading:
      return "WADE";
  }
  return "boat";
}

std::string say_technique(const Technique& technique) {
  switch (technique.method) {
    case Method::Swing:
      return say_swing(technique.mending);
    case Method::Strip:
      return say_strip(technique);
    case Method::Indicator:
      return "indicator";
    case Method::TightLine:
      return "tight line";
    case Method::Dry:
      return "dry fly";
  }
  return "fish";
}

std::string say(const Technique& technique) { return say(technique.platform) + ", " + say_technique(technique); }

}  // namespace floatwright
