#pragma once
// Rivers, tackle and days by chance, the same for the same seed: what holds of every plan is asked of many of them. Led
// and drifted methods, which need no cast worked out, so that it is quick.
#include <algorithm>
#include <cstdlib>
#include <random>
#include <vector>

#include "tests/engine/trip/small_river.hpp"

namespace floatwright {

// FLOATWRIGHT_DAYS=600 asks more of them by hand.
[[nodiscard]] inline unsigned days_asked() {
  const char* days = std::getenv("FLOATWRIGHT_DAYS");
  return days == nullptr ? 40U : static_cast<unsigned>(std::max(1, std::atoi(days)));
}
inline const unsigned kDays = days_asked();

class Chance {
 public:
  explicit Chance(unsigned seed) : random_(seed) {}
  double between(double least, double most) { return std::uniform_real_distribution<double>(least, most)(random_); }
  std::size_t among(std::size_t count) { return std::uniform_int_distribution<std::size_t>(0, count - 1)(random_); }
  bool one_in(std::size_t count) { return among(count) == 0; }
  template <class T>
  void shuffle(std::vector<T>& list) {
    std::ranges::shuffle(list, random_);
  }

 private:
  std::mt19937 random_;
};

[[nodiscard]] Tackle some_tackle(Chance& chance);
[[nodiscard]] DayInputs some_day(unsigned seed);

}  // namespace floatwright
