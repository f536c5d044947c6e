#pragma once
// What is believed of one number x, the natural logarithm of what is over what was noted, before and after it was met:
// a normal prior about 0, normal observations of x, and one-sided ones: a fly that touched the bottom says that the water
// is no deeper than the fly could have sunk, one that did not touch says that it is deeper, each softly, by the scatter
// of the fly's own depth: P(x < at) = Phi((at - x)/sd).
// The mean is that of the exact posterior: conjugate where all observations are normal, else by quadrature, so that it
// does not hang on the order of what was met. The scatter adds up information: 1/sd^2 of each normal observation, and of
// each one-sided one what such a touch tells in the mean over the prior (Fisher information of a probit). So it never
// widens by one more, and is the exact one where all are normal; the exact posterior of contradicting touches may be
// narrower than it by a few hundredths.
#include <vector>

namespace floatwright {

struct SeenValue {
  double x = 0.0, sd = 0.1;
};
struct SeenBound {
  double at = 0.0, sd = 0.25;
  bool below = true;  // x lies below it; else above
};

struct Belief {
  double mean = 0.0, sd = 0.15;
};

// `prior_sd` and every sd are over 0; every x and bound is finite.
[[nodiscard]] Belief belief(double prior_sd, const std::vector<SeenValue>& values, const std::vector<SeenBound>& bounds);

}  // namespace floatwright
