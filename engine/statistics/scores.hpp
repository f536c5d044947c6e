#pragma once
// How good forecasts were, beside what came. All of one unit, any one; in the order given. Nash & Sutcliffe, J. Hydrol.
// 10, 1970; Gupta, Kling, Yilmaz & Martinez, J. Hydrol. 377, 2009; Kling, Fuchs & Paulin, J. Hydrol. 424-425, 2012;
// CRPS of an ensemble as E|x - y| - E|x - x'|/2 (Gneiting & Raftery, J. Am. Stat. Assoc. 102, 2007). All from memory;
// worked values in tests/published.
#include <span>
#include <vector>

#include "engine/units/measured.hpp"

namespace floatwright {

struct Judged {
  std::vector<double> forecast, observed;  // same length

  [[nodiscard]] std::size_t size() const { return observed.size(); }
};

enum class Keep { Finite, AboveZero };  // AboveZero: also finite
// The pairs of which both numbers may be used.
[[nodiscard]] Judged usable_pairs(std::span<const double> forecast, std::span<const double> observed, Keep keep);

// The caller has asked that there is a pair.
[[nodiscard]] double mean_error(const Judged& pairs);  // forecast less observed
[[nodiscard]] double mean_absolute_error(const Judged& pairs);
[[nodiscard]] double root_mean_square_error(const Judged& pairs);

// 1 - sum of squares over that of the observed mean. Absent where nothing varied, as of all that follow.
[[nodiscard]] Measured<double> nash_sutcliffe(const Judged& pairs);

struct KlingGupta {
  double correlation = 0.0;  // r; 0 where the forecast never varied
  double variability = 0.0;  // alpha, standard deviations' ratio; in the form of 2012 gamma, that of the variations
  double bias = 0.0;         // beta, means' ratio
  // 1 - distance of the three from 1
  [[nodiscard]] double efficiency() const;
};
[[nodiscard]] Measured<KlingGupta> kling_gupta_2009(const Judged& pairs);
[[nodiscard]] Measured<KlingGupta> kling_gupta_2012(const Judged& pairs);

// 1 - sum of squares over that of holding the value known when the forecast was made (of the form of Kitanidis & Bras,
// Water Resour. Res. 16, 1980). `held` stands beside each pair.
[[nodiscard]] Measured<double> persistence_skill(const Judged& pairs, std::span<const double> held);

// Continuous ranked probability score, in the members' unit; of one member the absolute error. There is a member.
[[nodiscard]] double crps(std::vector<double> ensemble, double observed);

// Mean square of chance less outcome (Brier, Mon. Weather Rev. 78, 1950). There is a chance.
[[nodiscard]] double brier(std::span<const double> chances, const std::vector<bool>& happened);

// Share of `observed` that lay in its band, ends included. There is an observed value.
[[nodiscard]] double coverage(std::span<const double> low, std::span<const double> high,
                              std::span<const double> observed);

}  // namespace floatwright
