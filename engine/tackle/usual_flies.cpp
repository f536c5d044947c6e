#include "engine/tackle/usual_flies.hpp"

namespace floatwright {
namespace {

const std::vector<Method> kPulled{Method::Swing, Method::Strip};
const std::vector<Method> kNymphed{Method::Indicator, Method::TightLine, Method::Swing, Method::Strip};

FlyClass fly(const char* name, const std::vector<Method>& uses, Mass mass, Speed sinks) {
  return {name, name, uses, mass, sinks, ""};
}

}  // namespace

const std::vector<FlyClass>& usual_flies() {
  static const std::vector<FlyClass> kFlies{
      fly("weighted streamer", kPulled, grams(0.55), inches_per_second(5.0)),
      fly("unweighted streamer", kPulled, grams(0.20), inches_per_second(1.5)),
      fly("large streamer", kPulled, grams(0.80), inches_per_second(4.0)),
      fly("soft hackle", kPulled, grams(0.05), inches_per_second(0.8)),
      fly("wet fly", kPulled, grams(0.08), inches_per_second(1.2)),
      fly("small bead nymph", kNymphed, grams(0.20), inches_per_second(5.0)),
      fly("unweighted nymph", kNymphed, grams(0.06), inches_per_second(1.5)),
      fly("heavy nymph", kNymphed, grams(0.50), inches_per_second(9.0)),
      fly("small dry", {Method::Dry}, grams(0.04), Speed{}),
      fly("large dry", {Method::Dry}, grams(0.12), Speed{}),
  };
  return kFlies;
}

}  // namespace floatwright
