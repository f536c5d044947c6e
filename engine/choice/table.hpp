#pragma once
// A short table read by a straight line between its points and flat beyond its ends. `at` rises from point to point.
#include <array>
#include <cstddef>

namespace floatwright {

struct TablePoint {
  double at = 0.0;     // in the unit that the table's name says
  double share = 1.0;  // a factor
};

template <std::size_t N>
using Table = std::array<TablePoint, N>;

template <std::size_t N>
[[nodiscard]] constexpr double read(const Table<N>& table, double at) {
  if (at <= table.front().at) return table.front().share;
  for (std::size_t i = 1; i < N; ++i) {
    const TablePoint &a = table[i - 1], &b = table[i];
    if (at <= b.at) return a.share + (b.share - a.share) * (at - a.at) / (b.at - a.at);
  }
  return table.back().share;
}

}  // namespace floatwright
