#pragma once
// How a gauge went on from past instants like this one: the median change of y = ln Q after the nearest of them, by the
// shape of the five days before and the level. Distance is the sum of absolute differences, which one odd value moves
// less than squares do.
#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "engine/forecast/flow_history.hpp"
#include "engine/forecast/tuned_flow.hpp"

namespace floatwright {

inline constexpr std::size_t kShapeTerms = 10;
using FlowShape = std::array<float, kShapeTerms>;  // weighted

// y(t - j) - y(t) at j = 3 to 120 h and the level, at the newest row. None where one of them is missing.
[[nodiscard]] std::optional<FlowShape> flow_shape(const FlowHistory& history, Discharge median);

struct LikeInstantsAsked {
  Instant t{};                    // only outcomes known by then count
  bool same_hour = false;         // only the library's hour nearest to this one's
  std::span<const Period> leads;  // ascending
};

class LikeInstants {
 public:
  LikeInstants(const FlowLibrary& library, Discharge median);
  // By lead; none where under 15 like instants are known. Not for two threads at once: it keeps its working memory.
  [[nodiscard]] std::vector<std::optional<double>> changes(const FlowShape& shape, const LikeInstantsAsked& asked);

 private:
  struct Near {
    float distance = 0.0F;
    std::uint32_t row = 0;
    friend bool operator<(const Near& a, const Near& b) { return a.distance < b.distance; }
  };
  [[nodiscard]] std::size_t rows_known(Instant t, Period lead) const;
  void measure(const FlowShape& shape, std::size_t rows);
  // From every stride-th row; returns the first row not looked at.
  [[nodiscard]] std::size_t keep_nearest(std::size_t from, std::size_t until, std::size_t stride, std::size_t most);
  [[nodiscard]] std::optional<double> median_change(Period lead) const;

  FlowLibrary library_;
  std::array<std::vector<float>, kShapeTerms>
      columns_;                               // by library step; not-a-number throughout where one is missing
  std::vector<std::uint32_t> usable_before_;  // rows without a hole before each row
  std::vector<float> distances_;
  std::vector<Near> nearest_;  // a heap, the farthest on top
};

}  // namespace floatwright
