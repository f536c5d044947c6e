#include "engine/wording/sheet_stretch.hpp"

#include <algorithm>
#include <map>

#include "engine/wording/reach_rows.hpp"
#include "engine/wording/say_rig.hpp"

namespace floatwright {
namespace {

bool has_stop(const PlannedReach& reach) { return reach.portage_at_end || !reach.stop_sentence.empty(); }

bool must_stay(const PlannedReach& reach) { return has_stop(reach) || reach.lunch || !is_fished(reach); }

std::size_t rows_of(const PlannedStretch& stretch) {
  const auto stops = std::count_if(stretch.reaches.begin(), stretch.reaches.end(), has_stop);
  const std::size_t too_warm = stretch.stop_by && *stretch.stop_by < stretch.end ? 1 : 0;
  return reach_rows(stretch).size() + static_cast<std::size_t>(stops) + too_warm + 1;  // one for the take-out
}

Duration fished(const PlannedReach& reach) {
  Duration sum{};
  for (const PlannedWater& water : reach.waters)
    if (water.choice.best) sum = sum + water.fishing;
  return sum;
}

bool less_fished(const PlannedWater& a, const PlannedWater& b) {
  if (a.choice.best.has_value() != b.choice.best.has_value()) return !a.choice.best.has_value();
  return a.fishing < b.fishing;
}

// What may be left out of a sheet: anything that has no need to stay, or all of that but the last water of a rod.
class MayGo {
 public:
  MayGo(const PlannedStretch& stretch, const Tackle& tackle, bool last_of_a_rod)
      : tackle_(tackle), last_of_a_rod_(last_of_a_rod) {
    for (const PlannedReach& reach : stretch.reaches)
      if (is_fished(reach))
        for (const PlannedWater& water : reach.waters)
          if (water.choice.best) ++on_rod_[rod_of(tackle, water.choice.best->rig)];
  }
  [[nodiscard]] bool operator()(const PlannedWater& water) const {
    return last_of_a_rod_ || !water.choice.best || on_rod_.at(rod_of(tackle_, water.choice.best->rig)) > 1;
  }
  [[nodiscard]] bool operator()(const PlannedReach& reach) const {
    return !must_stay(reach) && std::ranges::all_of(reach.waters, [&](const PlannedWater& water) { return (*this)(water); });
  }

 private:
  const Tackle& tackle_;
  bool last_of_a_rod_;
  std::map<std::size_t, int> on_rod_;  // waters
};

// The water fished least of those whose reach has another.
bool leave_out_a_water(SheetStretch& sheet, const MayGo& may_go) {
  PlannedReach* from = nullptr;
  std::vector<PlannedWater>::iterator least;
  for (PlannedReach& reach : sheet.stretch.reaches) {
    if (reach.waters.size() < 2 || !is_fished(reach)) continue;
    auto here = reach.waters.end();
    for (auto water = reach.waters.begin(); water != reach.waters.end(); ++water)  // of equals the later
      if (may_go(*water) && (here == reach.waters.end() || !less_fished(*here, *water))) here = water;
    if (here == reach.waters.end() || (from != nullptr && !less_fished(*here, *least))) continue;
    from = &reach;
    least = here;
  }
  if (from == nullptr) return false;
  const PlannedWater gone = *least;
  from->waters.erase(least);
  from->names_water |= std::ranges::all_of(from->waters, [&](const PlannedWater& left) { return less_fished(left, gone); });
  ++sheet.waters_left_out;
  return true;
}

const ScoredRig* only_choice(const PlannedReach& reach) {
  if (reach.waters.size() != 1 || !reach.closed_why.empty()) return nullptr;
  const auto& best = reach.waters[0].choice.best;
  return best ? &*best : nullptr;
}

bool on_one_rig(const PlannedReach& a, const PlannedReach& b) {
  const ScoredRig *one = only_choice(a), *other = only_choice(b);
  return one != nullptr && other != nullptr && one->rig == other->rig && !has_stop(a) && !b.lunch;
}

bool fished_alike(const PlannedReach& a, const PlannedReach& b) {
  const ScoredRig *one = only_choice(a), *other = only_choice(b);
  return one->technique == other->technique && one->indicator_to_fly.si() == other->indicator_to_fly.si();
}

// Neighbours on one rig, as many as there are in a row, are told with the way of fishing of the one fished longest.
bool put_techniques_together(SheetStretch& sheet) {
  auto& reaches = sheet.stretch.reaches;
  for (auto first = reaches.begin(); first != reaches.end();) {
    auto end = first + 1;
    while (end != reaches.end() && on_one_rig(*(end - 1), *end)) ++end;
    const auto differ = [&](const PlannedReach& reach) { return !fished_alike(*first, reach); };
    if (end - first > 1 && std::any_of(first + 1, end, differ)) {
      const auto longest = std::max_element(first, end, [](const PlannedReach& a, const PlannedReach& b) {
        return a.waters[0].fishing < b.waters[0].fishing;
      });
      const ScoredRig way = *only_choice(*longest);
      for (auto reach = first; reach != end; ++reach) {
        reach->waters[0].choice.best->technique = way.technique;
        reach->waters[0].choice.best->indicator_to_fly = way.indicator_to_fly;
      }
      ++sheet.techniques_put_together;
      return true;
    }
    first = end;
  }
  return false;
}

bool leave_out_a_reach(SheetStretch& sheet, const MayGo& may_go) {
  auto& reaches = sheet.stretch.reaches;
  auto least = reaches.end();
  for (auto reach = reaches.begin(); reach != reaches.end(); ++reach)
    if (may_go(*reach) && (least == reaches.end() || fished(*reach) < fished(*least))) least = reach;
  if (least == reaches.end()) return false;
  reaches.erase(least);
  ++sheet.reaches_left_out;
  return true;
}

bool shorten(SheetStretch& sheet, const Tackle& tackle, bool last_of_a_rod) {
  const MayGo may_go(sheet.stretch, tackle, last_of_a_rod);
  return leave_out_a_water(sheet, may_go) || put_techniques_together(sheet) || leave_out_a_reach(sheet, may_go);
}

}  // namespace

SheetStretch sheet_stretch(const PlannedStretch& whole, const Tackle& tackle, std::size_t most_rows) {
  SheetStretch sheet{whole, 0, 0, 0};
  while (rows_of(sheet.stretch) > most_rows)
    if (!shorten(sheet, tackle, false) && !shorten(sheet, tackle, true)) break;
  return sheet;
}

}  // namespace floatwright
