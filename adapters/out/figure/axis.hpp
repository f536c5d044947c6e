#pragma once
// One axis of a picture: values to points, and the round values that are written beside it.
#include <vector>

namespace floatwright {

struct Axis {
  double least = 0.0, most = 1.0;  // values
  double start = 0.0, end = 1.0;   // points, of least and most

  [[nodiscard]] double at(double value) const { return start + (end - start) * (value - least) / (most - least); }
};

// 1, 2 or 5 times a power of ten: the finest of which at most `count` steps are in `span`. Both above 0.
[[nodiscard]] double round_step(double span, int count);
// The multiples of a step from least to most.
[[nodiscard]] std::vector<double> multiples(double step, double least, double most);

}  // namespace floatwright
