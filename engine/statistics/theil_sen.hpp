#pragma once
// A straight line that up to three points of ten, lying anywhere, do not bend: the median of the slopes between all
// pairs of points, through the median of what is left. H. Theil 1950; P. K. Sen, J. Am. Stat. Assoc. 63, 1968 (from
// memory). A single far point bends reweighted least squares; it does not bend this.
#include <optional>
#include <span>

namespace floatwright {

struct TheilSenLine {
  double intercept = 0.0, slope = 0.0;
  [[nodiscard]] double at(double x) const { return intercept + slope * x; }
};

// Pairs nearer to each other in x than `least_apart` are not asked; none where that leaves no pair. As many y as x.
[[nodiscard]] std::optional<TheilSenLine> theil_sen(std::span<const double> x, std::span<const double> y,
                                                    double least_apart = 0.0);

}  // namespace floatwright
