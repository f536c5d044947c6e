#include <algorithm>
#include <cmath>

#include "engine/wording/float_plan_parts.hpp"

namespace floatwright {
namespace {

constexpr double kNearBand = 1.15;  // a flow this near to the band is worth a line in the bag; judgement

bool same_line(const Rig& a, const Rig& b) { return a.line == b.line && a.tip == b.tip; }

double away(const PlannedReach& reach, Discharge at) {
  return reach.whole_flow && *reach.whole_flow > Discharge{} ? std::abs(std::log(at / *reach.whole_flow)) : 0.0;
}

// The band is that of the reach's own thread, as a share of its best guess.
bool likely(const PlannedReach& reach, bool under, Discharge at) {
  if (!reach.whole_flow || !reach.discharge || !(reach.discharge->best > Discharge{})) return true;
  const Band<Discharge>& band = *reach.discharge;
  return under ? at * kNearBand >= *reach.whole_flow * (band.low / band.best)
               : at <= *reach.whole_flow * (band.high / band.best) * kNearBand;
}

TakesOver taking_over(const Told& told, const PlannedReach& reach, const PlannedWater& water, const LineChange& change,
                      bool under) {
  TakesOver t;
  t.under = under;
  t.at = change.at;
  t.where = {at_water(reach, water)};
  t.from = {water.choice.best->rig};
  t.to = change.to;
  t.away = away(reach, change.at);
  t.likely = likely(reach, under, change.at);
  t.in_boat = in_boat(told.rods, told.in.tackle, change.to.rig).has_value();
  return t;
}

void add_where(TakesOver& t, const std::string& where, bool first) {
  if (std::find(t.where.begin(), t.where.end(), where) == t.where.end())
    t.where.insert(first ? t.where.begin() : t.where.end(), where);
}

// The same line on the same side, put with what is told of it already.
void put_together(std::vector<TakesOver>& all, TakesOver next) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const TakesOver& t) {
    return t.under == next.under && same_line(t.to.rig, next.to.rig);
  });
  if (found == all.end()) {
    all.push_back(std::move(next));
    return;
  }
  const Rig& from = next.from.front();
  if (std::none_of(found->from.begin(), found->from.end(), [&](const Rig& r) { return same_line(r, from); }))
    found->from.push_back(from);
  const bool nearer = next.away < found->away;
  add_where(*found, next.where.front(), nearer);
  found->likely = found->likely || next.likely;
  if (!nearer) return;
  found->at = next.at;
  found->to = next.to;
  found->away = next.away;
}

int rank(const TakesOver& t) {
  if (t.likely) return t.in_boat ? 0 : 1;
  return t.in_boat ? 2 : 3;
}

}  // namespace

std::vector<TakesOver> lines_that_take_over(const Told& told) {
  std::vector<TakesOver> all;
  if (told.floated == nullptr) return all;
  for (const PlannedReach& reach : told.floated->reaches) {
    for (const PlannedWater& water : reach.waters) {
      const WaterChoice& choice = water.choice;
      if (!choice.best || !reach.closed_why.empty()) continue;
      if (choice.changes_below) put_together(all, taking_over(told, reach, water, *choice.changes_below, true));
      if (choice.changes_above) put_together(all, taking_over(told, reach, water, *choice.changes_above, false));
    }
  }
  std::stable_sort(all.begin(), all.end(), [](const TakesOver& a, const TakesOver& b) {
    return rank(a) != rank(b) ? rank(a) < rank(b) : a.away < b.away;
  });
  return all;
}

}  // namespace floatwright
