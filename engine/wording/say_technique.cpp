#include "engine/wording/say_technique.hpp"

#include <fmt/format.h>

#include "engine/tackle/names.hpp"

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
  return count < 0.5 ? pace : fmt::format("count {:.0f}, {}", count, pace);
}

}  // namespace

std::string say(Method method) { return method == Method::TightLine ? "tight line" : std::string(word_for(method)); }

std::string say(Platform platform) {
  switch (platform) {
    case Platform::Drifting:
      return "";
    case Platform::Held:
      return "HOLD";
    case Platform::Anchored:
      return "ANCHOR";
    case Platform::Wading:
      return "WADE";
  }
  return "";
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

std::string say(const Technique& technique) {
  const std::string platform = say(technique.platform), how = say_technique(technique);
  return platform.empty() ? how : platform + ", " + how;
}

}  // namespace floatwright
