#include "engine/wording/sheet_stretch.hpp"

#include <algorithm>

#include "engine/wording/reach_rows.hpp"

namespace floatwright {
namespace {

bool has_stop(const PlannedReach& reach) { return reach.portage_at_end || !reach.stop_sentence.empty(); }

bool must_stay(const PlannedReach& reach) { return has_stop(reach) || reach.lunch || !is_fished(reach); }

std::size_t rows_of(const PlannedStretch& stretch) {
  const auto stops = std::count_if(stretch.reaches.begin(), stretch.reaches.end(), has_stop);
  return reach_rows(stretch).size() + static_cast<std::size_t>(stops) + 1;  // one for the take-out
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

// The water fished least of those whose reach has another.
bool leave_out_a_water(SheetStretch& sheet) {
  PlannedReach* from = nullptr;
  std::vector<PlannedWater>::iterator least;
  for (PlannedReach& reach : sheet.stretch.reaches) {
    if (reach.waters.size() < 2 || !is_fished(reach)) continue;
    auto here = reach.waters.begin();
    for (auto water = here; water != reach.waters.end(); ++water)  // of equals the later
      if (!less_fished(*here, *water)) here = water;
    if (from != nullptr && !less_fished(*here, *least)) continue;
    from = &reach;
    least = here;
  }
  if (from == nullptr) return false;
  from->waters.erase(least);
  ++sheet.waters_left_out;
  return true;
}

bool on_one_rig(const PlannedReach& a, const PlannedReach& b) {
  if (has_stop(a) || b.lunch || a.waters.size() != 1 || b.waters.size() != 1) return false;
  if (!is_fished(a) || !is_fished(b)) return false;
  const auto &one = a.waters[0].choice.best, &other = b.waters[0].choice.best;
  return one && other && one->rig == other->rig &&
         (!(one->technique == other->technique) || one->indicator_to_fly.si() != other->indicator_to_fly.si());
}

// Neighbours on one rig are told with the way of fishing of the one fished longer.
bool put_techniques_together(SheetStretch& sheet) {
  auto& reaches = sheet.stretch.reaches;
  for (std::size_t i = 0; i + 1 < reaches.size(); ++i) {
    if (!on_one_rig(reaches[i], reaches[i + 1])) continue;
    PlannedWater &a = reaches[i].waters[0], &b = reaches[i + 1].waters[0];
    const ScoredRig& longer = a.fishing < b.fishing ? *b.choice.best : *a.choice.best;
    const Technique technique = longer.technique;
    const Length to_fly = longer.indicator_to_fly;
    for (PlannedWater* water : {&a, &b}) {
      water->choice.best->technique = technique;
      water->choice.best->indicator_to_fly = to_fly;
    }
    ++sheet.techniques_put_together;
    return true;
  }
  return false;
}

bool leave_out_a_reach(SheetStretch& sheet) {
  auto& reaches = sheet.stretch.reaches;
  auto least = reaches.end();
  for (auto reach = reaches.begin(); reach != reaches.end(); ++reach)
    if (!must_stay(*reach) && (least == reaches.end() || fished(*reach) < fished(*least))) least = reach;
  if (least == reaches.end()) return false;
  reaches.erase(least);
  ++sheet.reaches_left_out;
  return true;
}

}  // namespace

SheetStretch sheet_stretch(const PlannedStretch& whole, std::size_t most_rows) {
  SheetStretch sheet{whole, 0, 0, 0};
  while (rows_of(sheet.stretch) > most_rows)
    if (!leave_out_a_water(sheet) && !put_techniques_together(sheet) && !leave_out_a_reach(sheet)) break;
  return sheet;
}

}  // namespace floatwright
