#include "engine/tackle/twins.hpp"

#include <algorithm>
#include <iterator>
#include <numeric>

#include "engine/tackle/precedence.hpp"

namespace floatwright {
namespace {

std::vector<std::size_t> lines_on(const Tackle& tackle, std::size_t rod, const Precedence& order) {
  std::vector<std::size_t> lines;
  std::ranges::copy_if(order.lines, std::back_inserter(lines),
                       [&](std::size_t line) { return tackle.lines[line].on_rod == tackle.rods[rod].id; });
  return lines;
}

}  // namespace

std::vector<std::size_t> lines_of_first_twins(const Tackle& tackle) {
  const Precedence order = precedence(tackle);
  std::vector<std::size_t> first(tackle.lines.size());
  std::iota(first.begin(), first.end(), std::size_t{0});
  for (std::size_t rod = 0; rod < tackle.rods.size(); ++rod) {
    const auto is_twin = [&](std::size_t other) { return order.rod_kinds[other] == order.rod_kinds[rod]; };
    const auto here = lines_on(tackle, rod, order);
    const auto there = lines_on(tackle, *std::ranges::find_if(order.rods, is_twin), order);
    for (std::size_t i = 0; i < here.size(); ++i) first[here[i]] = there[i];
  }
  return first;
}

}  // namespace floatwright
