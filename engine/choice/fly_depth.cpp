#include "engine/choice/fly_depth.hpp"

#include <algorithm>
#include <cmath>

#include "engine/choice/scatter.hpp"

namespace floatwright {
namespace {

constexpr double kNinetieth = 1.2816;  // of a normal distribution, standard deviations

struct Sides {
  double below, above;  // ln
};

Sides line_sides(const Technique& technique, const Judgement& judgement) {
  if (technique.method == Method::Indicator || technique.method == Method::TightLine) {
    const double half = kNinetieth * judgement.scatter.drifted;
    return {half, half};
  }
  const BandsJudgement& bands = judgement.bands;
  const bool slack =
      technique.method == Method::Strip ? technique.count > Duration{} : technique.mending != Mending::Tight;
  return {-std::log(1.0 - (slack ? bands.mended_below : bands.tight_below)),
          std::log(1.0 + (slack ? bands.mended_above : bands.tight_above))};
}

// More flow may lift the fly or, in deeper slow water, let it down: each side takes the case that lies on it.
Sides flow_sides(const PerCase<Length>& fly) {
  const double mid = in_metres(fly.middle);                                // m
  const double least = std::min(in_metres(fly.low), in_metres(fly.high));  // m
  const double most = std::max(in_metres(fly.low), in_metres(fly.high));   // m
  if (mid <= 0 || least <= 0) return {0, 0};
  return {std::max(0.0, std::log(mid / least)), std::max(0.0, std::log(most / mid))};
}

}  // namespace

Band<Length> fly_depth_band(const FlyDepthCases& cases, const Technique& technique, const Judgement& judgement) {
  if (technique.method == Method::Dry) return {};
  const Sides line = line_sides(technique, judgement), flow = flow_sides(cases.fly);
  const double best = in_metres(cases.fly.middle);  // m
  const double least = judgement.bands.least_m;     // m
  const double low = std::min(best * std::exp(-std::hypot(line.below, flow.below)), best - least);
  double high = std::max(best * std::exp(std::hypot(line.above, flow.above)), best + least);
  if (technique.method == Method::Indicator) high = std::min(high, std::max(best, in_metres(cases.indicator_to_fly)));
  const double bed =
      std::max({best, in_metres(cases.water.low), in_metres(cases.water.middle), in_metres(cases.water.high)});
  return {metres(std::max(0.0, low)), metres(best), metres(std::min(high, bed))};
}

}  // namespace floatwright
