#include "engine/tackle/precedence.hpp"

#include <algorithm>
#include <numeric>
#include <set>
#include <tuple>

namespace floatwright {
namespace {

using Places = std::vector<std::size_t>;

// What things of a kind have in common, what settles between kinds first. The order in which uses are listed says nothing.
auto kind_of(const Rod& rod) { return std::tuple(rod.line_number, rod.length); }
auto kind_of(const Line& line) {
  return std::tuple(line.spare_spool, line.line_number, line.kind, line.tip_length, line.sink_rate, line.sink_rate_butt,
                    line.sink_rate_end, line.code, line.head_weight, line.least_tip, line.most_tip, line.first_30_ft,
                    line.sinking_weight, line.leader);
}
auto kind_of(const LoopedTip& tip) { return std::tuple(tip.length, tip.sink_rate, tip.weight); }
auto kind_of(const FlyClass& fly) {
  return std::tuple(fly.mass, fly.sink_rate, fly.size, fly.name, std::set(fly.uses.begin(), fly.uses.end()));
}

// By place in a list: how many places have a lesser key; equal for equal keys.
template <class Key>
Places ranks(const std::vector<Key>& keys) {
  std::vector<Key> sorted = keys;
  std::ranges::sort(sorted);
  Places result;
  for (const Key& key : keys)
    result.push_back(static_cast<std::size_t>(std::ranges::lower_bound(sorted, key) - sorted.begin()));
  return result;
}

template <class Thing>
Places kinds(const std::vector<Thing>& list) {
  std::vector<decltype(kind_of(std::declval<const Thing&>()))> keys;
  for (const Thing& one : list) keys.push_back(kind_of(one));
  return ranks(keys);
}

template <class Thing>
Places by_kind_and_name(const std::vector<Thing>& list, const Places& kinds) {
  Places places(list.size());
  std::iota(places.begin(), places.end(), std::size_t{0});
  std::ranges::sort(places, {}, [&](std::size_t i) { return std::pair(kinds[i], by_name(list[i].id)); });
  return places;
}

// By line: the place of its rod; behind all rods where it is on none.
Places carriers(const Tackle& tackle) {
  Places rods;
  for (const Line& line : tackle.lines)
    rods.push_back(static_cast<std::size_t>(std::ranges::find(tackle.rods, line.on_rod, &Rod::id) - tackle.rods.begin()));
  return rods;
}

Places kinds_of_rods(const Tackle& tackle, const Places& carriers, const Places& line_kinds) {
  const Places alone = kinds(tackle.rods);
  std::vector<std::pair<std::size_t, Places>> with_lines;
  for (const std::size_t kind : alone) with_lines.push_back({kind, {}});
  for (std::size_t line = 0; line < carriers.size(); ++line)
    if (carriers[line] < tackle.rods.size()) with_lines[carriers[line]].second.push_back(line_kinds[line]);
  for (auto& rod : with_lines) std::ranges::sort(rod.second);
  return ranks(with_lines);
}

// Those of twins side by side.
Places lines_by_rod(const Tackle& tackle, const Places& carriers, const Places& line_kinds, const Precedence& order) {
  std::vector<std::tuple<bool, std::size_t, std::size_t, std::size_t>> keys;
  for (std::size_t line = 0; line < carriers.size(); ++line) {
    const std::size_t rod = carriers[line];
    const std::size_t rod_kind = rod < tackle.rods.size() ? order.rod_kinds[rod] : tackle.rods.size();
    const auto rod_place = static_cast<std::size_t>(std::ranges::find(order.rods, rod) - order.rods.begin());
    keys.push_back({tackle.lines[line].spare_spool, rod_kind, line_kinds[line], rod_place});
  }
  return by_kind_and_name(tackle.lines, ranks(keys));
}

}  // namespace

Precedence precedence(const Tackle& tackle) {
  const Places carrier = carriers(tackle), line_kinds = kinds(tackle.lines);
  Precedence result;
  result.rod_kinds = kinds_of_rods(tackle, carrier, line_kinds);
  result.rods = by_kind_and_name(tackle.rods, result.rod_kinds);
  result.lines = lines_by_rod(tackle, carrier, line_kinds, result);
  result.tips = by_kind_and_name(tackle.tips, kinds(tackle.tips));
  result.flies = by_kind_and_name(tackle.flies, kinds(tackle.flies));
  return result;
}

}  // namespace floatwright
