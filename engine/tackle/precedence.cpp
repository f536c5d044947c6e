#include "engine/tackle/precedence.hpp"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace floatwright {
namespace {

using Places = std::vector<std::size_t>;

auto all_but_id(const Line& line) {
  return std::tie(line.spare_spool, line.code, line.kind, line.line_number, line.tip_length, line.sink_rate,
                  line.sink_rate_butt, line.sink_rate_end, line.head_weight, line.least_tip, line.most_tip,
                  line.first_30_ft, line.sinking_weight, line.leader);
}
auto all_but_id(const LoopedTip& tip) { return std::tie(tip.length, tip.sink_rate, tip.weight); }
auto all_but_id(const FlyClass& fly) { return std::tie(fly.name, fly.uses, fly.mass, fly.sink_rate, fly.size); }
auto all_but_id(const Rod& rod) { return std::tie(rod.line_number, rod.length); }

// By place in a list: the first place that is alike.
template <class Alike>
Places kinds(std::size_t count, const Alike& alike) {
  Places first;
  for (std::size_t i = 0; i < count; ++i) {
    std::size_t other = 0;
    while (other < i && !alike(other, i)) ++other;
    first.push_back(other);
  }
  return first;
}

template <class Thing>
Places kinds(const std::vector<Thing>& list) {
  return kinds(list.size(), [&](std::size_t a, std::size_t b) { return all_but_id(list[a]) == all_but_id(list[b]); });
}

// The places of a list by a key.
template <class Key>
Places in_order(std::size_t count, const Key& key) {
  Places places(count);
  std::iota(places.begin(), places.end(), std::size_t{0});
  std::ranges::stable_sort(places, {}, key);
  return places;
}

template <class Thing>
Places by_kind_and_name(const std::vector<Thing>& list, const Places& kinds) {
  return in_order(list.size(), [&](std::size_t i) { return std::pair(kinds[i], by_name(list[i].id)); });
}

// By line: the place of its rod; behind all rods where it is on none.
Places carriers(const Tackle& tackle) {
  Places rods;
  for (const Line& line : tackle.lines)
    rods.push_back(static_cast<std::size_t>(std::ranges::find(tackle.rods, line.on_rod, &Rod::id) - tackle.rods.begin()));
  return rods;
}

Places kinds_of_lines(const Tackle& tackle, const Places& carriers) {
  const auto rods_alike = [&](std::size_t a, std::size_t b) {
    const std::size_t none = tackle.rods.size();
    if (a == none || b == none) return a == b;
    return all_but_id(tackle.rods[a]) == all_but_id(tackle.rods[b]);
  };
  return kinds(tackle.lines.size(), [&](std::size_t a, std::size_t b) {
    return all_but_id(tackle.lines[a]) == all_but_id(tackle.lines[b]) && rods_alike(carriers[a], carriers[b]);
  });
}

Places kinds_of_rods(const Tackle& tackle, const Places& carriers, const Places& line_kinds) {
  std::vector<Places> carried(tackle.rods.size() + 1);
  for (std::size_t line = 0; line < carriers.size(); ++line) carried[carriers[line]].push_back(line_kinds[line]);
  for (Places& lines : carried) std::ranges::sort(lines);
  return kinds(tackle.rods.size(), [&](std::size_t a, std::size_t b) {
    return all_but_id(tackle.rods[a]) == all_but_id(tackle.rods[b]) && carried[a] == carried[b];
  });
}

}  // namespace

Precedence precedence(const Tackle& tackle) {
  const Places carrier = carriers(tackle), line_kinds = kinds_of_lines(tackle, carrier);
  Precedence result;
  result.rod_kinds = kinds_of_rods(tackle, carrier, line_kinds);
  result.rods = by_kind_and_name(tackle.rods, result.rod_kinds);
  result.tips = by_kind_and_name(tackle.tips, kinds(tackle.tips));
  result.flies = by_kind_and_name(tackle.flies, kinds(tackle.flies));
  result.lines = in_order(tackle.lines.size(), [&](std::size_t i) {
    const Line& line = tackle.lines[i];
    return std::tuple(line.spare_spool, line_kinds[i], std::ranges::find(result.rods, carrier[i]) - result.rods.begin(),
                      by_name(line.id));
  });
  return result;
}

}  // namespace floatwright
