#pragma once
// Quantiles of a sample by straight lines between its order statistics: the p-quantile of n sorted values stands at
// place 1 + (n-1) p, the smallest at p 0 and the largest at p 1 (type 7 of Hyndman & Fan, The American Statistician 50,
// 1996, from memory). Of any unit; the caller has asked that there is at least one value and that all are finite.
#include <span>
#include <vector>

namespace floatwright {

// p outside 0 to 1 is held there.
[[nodiscard]] double quantile(std::vector<double> values, double p);
[[nodiscard]] double quantile_of_sorted(std::span<const double> ascending, double p);
// Below which the next value of the same kind comes with chance p: at place (n+1) p, held to the sample's ends
// (Weibull's plotting position, type 6 of the same list). Of few values it lies farther out than quantile(), which is
// too narrow as a band for what is still to come.
[[nodiscard]] double quantile_of_next(std::vector<double> values, double p);
[[nodiscard]] double median(std::vector<double> values);

}  // namespace floatwright
