#include "engine/tackle/twins.hpp"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace floatwright {
namespace {

bool alike(const Line& a, const Line& b) {
  const auto tied = [](const Line& line) {
    return std::tie(line.spare_spool, line.code, line.kind, line.line_number, line.tip_length, line.sink_rate,
                    line.sink_rate_butt, line.sink_rate_end, line.head_weight, line.least_tip, line.most_tip,
                    line.first_30_ft, line.sinking_weight, line.leader);
  };
  return tied(a) == tied(b);
}

std::vector<std::size_t> lines_on(const Tackle& tackle, std::size_t rod) {
  std::vector<std::size_t> lines;
  for (std::size_t line = 0; line < tackle.lines.size(); ++line)
    if (tackle.lines[line].on_rod == tackle.rods[rod].id) lines.push_back(line);
  return lines;
}

bool twins(const Tackle& tackle, std::size_t a, std::size_t b) {
  const Rod &one = tackle.rods[a], &other = tackle.rods[b];
  if (one.line_number != other.line_number || one.length != other.length) return false;
  const auto same = [&](std::size_t x, std::size_t y) { return alike(tackle.lines[x], tackle.lines[y]); };
  return std::ranges::equal(lines_on(tackle, a), lines_on(tackle, b), same);
}

}  // namespace

std::vector<std::size_t> first_twins(const Tackle& tackle) {
  std::vector<std::size_t> first(tackle.rods.size());
  for (std::size_t rod = 0; rod < first.size(); ++rod) {
    first[rod] = rod;
    for (std::size_t earlier = 0; earlier < rod && first[rod] == rod; ++earlier)
      if (twins(tackle, earlier, rod)) first[rod] = earlier;
  }
  return first;
}

std::vector<std::size_t> lines_of_first_twins(const Tackle& tackle) {
  std::vector<std::size_t> first(tackle.lines.size());
  std::iota(first.begin(), first.end(), std::size_t{0});
  const std::vector<std::size_t> twin = first_twins(tackle);
  for (std::size_t rod = 0; rod < twin.size(); ++rod) {
    const auto here = lines_on(tackle, rod), there = lines_on(tackle, twin[rod]);
    for (std::size_t i = 0; i < here.size(); ++i) first[here[i]] = there[i];
  }
  return first;
}

}  // namespace floatwright
