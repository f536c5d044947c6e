#include "engine/choice/scatter.hpp"

#include <cmath>

namespace floatwright {

Firmness firmness(const Technique& technique) {
  switch (technique.method) {
    case Method::Swing:
      return technique.mending == Mending::Tight ? Firmness::Tight : Firmness::Mended;
    case Method::Strip:
      return technique.count > Duration{} ? Firmness::Mended : Firmness::Tight;
    case Method::Indicator:
    case Method::TightLine:
    case Method::Dry:
      return Firmness::Drifted;
  }
  return Firmness::Mended;
}

double rig_scatter(Firmness firmness, const ScatterJudgement& judgement) {
  switch (firmness) {
    case Firmness::Drifted:
      return judgement.drifted;
    case Firmness::Tight:
      return judgement.tight;
    case Firmness::Mended:
      return judgement.mended;
  }
  return judgement.mended;
}

std::vector<double> scatter_factors(Firmness firmness, const Lane& lane, const ScatterJudgement& judgement) {
  const double sd =
      std::hypot(rig_scatter(firmness, judgement), lane.sd_ln_depth, judgement.of_speed * lane.sd_ln_speed);
  std::vector<double> factors;
  for (const double member : judgement.members) factors.push_back(std::exp(sd * member));
  return factors;
}

}  // namespace floatwright
