#pragma once
// How the river went on from the past days that were most like one: the median change of the k nearest by d, d1, d2, d3
// weighted 1, 0.7, 0.5, 0.35 and 0.1 z, z = ln(Q / median) within 3 of 0; k = sqrt(n) within 9 and 40. Weights and k
// are judgement.
#include <array>

#include "engine/forecast/daily_record.hpp"

namespace floatwright {

class LikeDays {
 public:
  LikeDays(const DailyRecord& record, double ln_median);

  struct Change {
    double change = 0.0;    // of y over `days`; not-a-number where the day or all the past is unknown
    std::size_t known = 0;  // past days whose outcome was known by then
  };
  // From day t on, by days whose outcome was known at the end of day t.
  [[nodiscard]] Change after(std::size_t t, int days) const;

 private:
  using Pattern = std::array<double, 5>;
  std::vector<double> ln_flow_;
  std::vector<Pattern> patterns_;
};

}  // namespace floatwright
