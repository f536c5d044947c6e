#include "engine/choice/scatter.hpp"

#include <cmath>

namespace floatwright {

double rig_scatter(const Technique& technique, const ScatterJudgement& judgement) {
  switch (technique.method) {
    case Method::Swing:
      return technique.mending == Mending::Tight ? judgement.tight : judgement.mended;
    case Method::Strip:
      return technique.count > Duration{} ? judgement.mended : judgement.tight;
    case Method::Indicator:
    case Method::TightLine:
    case Method::Dry:
      return judgement.drifted;
  }
  return judgement.mended;
}

std::vector<double> scatter_factors(const Technique& technique, const Lane& lane, const ScatterJudgement& judgement) {
  const double sd =
      std::hypot(rig_scatter(technique, judgement), lane.sd_ln_depth, judgement.of_speed * lane.sd_ln_speed);
  std::vector<double> factors;
  for (const double member : judgement.members) factors.push_back(std::exp(sd * member));
  return factors;
}

}  // namespace floatwright
