#include "engine/choice/techniques.hpp"

#include <algorithm>

#include "engine/choice/limits.hpp"

namespace floatwright {
namespace {

std::vector<Technique> swings(LineKind kind, Platform platform, const Judgement& judgement) {
  if (!stands(platform)) return {};
  Technique tight;
  tight.platform = platform;
  if (mends(kind, Method::Swing, drift_limits(judgement)) < 1.0) return {tight};
  Technique mended = tight, fed = tight;
  mended.mending = Mending::OneMend;
  fed.mending = Mending::MendAndFeed;
  return {tight, mended, fed};
}

std::vector<Technique> strips(LineKind kind, Platform platform, double pace, const Judgement& judgement) {
  std::vector<Technique> result;
  if (kind == LineKind::LoopedHead || pace > judgement.boat.most_strip_pace) return result;
  for (const double count : judgement.techniques.strip_count_s) {
    for (const double speed : judgement.techniques.strip_m_s) {
      Technique strip;
      strip.method = Method::Strip;
      strip.platform = platform;
      strip.count = seconds(count);
      strip.strip = metres_per_second(speed);
      result.push_back(strip);
    }
  }
  return result;
}

}  // namespace

Speed boat_speed(Platform platform, SurfaceSpeed boat_lane, SurfaceSpeed fished, const Judgement& judgement) {
  const double boat = (1.0 - hold(platform, drift_limits(judgement))) * in_metres_per_second(boat_lane);  // m/s
  return metres_per_second(std::min(boat, judgement.boat.most_pace * in_metres_per_second(fished)));
}

std::vector<Technique> techniques(Method method, LineKind kind, Platform platform, double pace,
                                  const Judgement& judgement) {
  if (method == Method::Swing) return swings(kind, platform, judgement);
  if (method == Method::Strip) return strips(kind, platform, pace, judgement);
  if (method == Method::TightLine && platform == Platform::Drifting) return {};
  Technique drift;
  drift.method = method;
  drift.platform = platform;
  return {drift};
}

Length cast_length(LineKind kind, Length angler, const TechniquesJudgement& judgement) {
  return is_thin(kind) ? std::min(angler, metres(judgement.thin_line_cast_m)) : angler;
}

Length cast_length(LineKind kind, const Preferences& people, const TechniquesJudgement& judgement) {
  const auto& anglers = people.anglers;
  const auto shorter = [](const Angler& a, const Angler& b) { return a.cast < b.cast; };
  const Length cast = anglers.empty() ? Angler{}.cast : std::ranges::min_element(anglers, shorter)->cast;
  return cast_length(kind, cast, judgement);
}

}  // namespace floatwright
