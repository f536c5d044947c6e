#include "engine/wording/reach_rows.hpp"

#include <algorithm>

namespace floatwright {
namespace {

constexpr double kSameDepthOfIndicator = 0.1;  // m: the indicator is not moved for less

template <class T>
void widen(std::optional<T>& low, std::optional<T>& high, const std::optional<T>& other_low,
           const std::optional<T>& other_high) {
  if (other_low && (!low || *other_low < *low)) low = other_low;
  if (other_high && (!high || *other_high > *high)) high = other_high;
}

std::string why_none(const PlannedWater& water) {
  if (!water.depth) return "not known: " + water.depth.why_absent();
  return water.choice.why_none;
}

ReachRow row_of(const PlannedReach& reach, const PlannedWater& water) {
  ReachRow row;
  row.first = row.last = &reach;
  row.types = {water.type};
  row.doubtful = water.source == DepthSource::Guessed || water.far_from_note;
  if (water.depth) row.depth_low = row.depth_high = water.depth->best;
  if (water.surface_speed) row.speed_low = row.speed_high = water.surface_speed->best;
  row.best = water.choice.best;
  if (row.best) row.fly_low = row.fly_high = row.best->fly_depth.best;
  if (!row.best) row.why_none = why_none(water);
  return row;
}

bool fished_alike(const ReachRow& a, const ReachRow& b) {
  if (!a.best || !b.best) return !a.best && !b.best && a.why_none == b.why_none && !a.types.empty() && !b.types.empty();
  const Length apart = a.best->indicator_to_fly - b.best->indicator_to_fly;
  return a.best->rig == b.best->rig && a.best->technique == b.best->technique && a.doubtful == b.doubtful &&
         a.first->described == b.first->described && std::abs(apart.si()) < kSameDepthOfIndicator;
}

void put_together(ReachRow& row, const ReachRow& other) {
  for (const WaterType type : other.types)
    if (std::find(row.types.begin(), row.types.end(), type) == row.types.end()) row.types.push_back(type);
  widen(row.depth_low, row.depth_high, other.depth_low, other.depth_high);
  widen(row.speed_low, row.speed_high, other.speed_low, other.speed_high);
  widen(row.fly_low, row.fly_high, other.fly_low, other.fly_high);
  row.last = other.last;
}

std::vector<ReachRow> rows_of(const PlannedReach& reach) {
  std::vector<ReachRow> rows;
  if (is_fished(reach)) {
    for (const PlannedWater& water : reach.waters) {
      const ReachRow row = row_of(reach, water);
      const auto alike =
          std::find_if(rows.begin(), rows.end(), [&](const ReachRow& r) { return fished_alike(r, row); });
      if (alike == rows.end()) {
        rows.push_back(row);
      } else {
        put_together(*alike, row);
      }
    }
  }
  if (rows.empty()) {
    ReachRow row;
    row.first = row.last = &reach;
    rows.push_back(row);
  }
  for (std::size_t i = 0; i < rows.size(); ++i) {
    rows[i].begins_reach = i == 0;
    rows[i].names_waters = rows.size() > 1 || reach.names_water;
  }
  return rows;
}

bool closed_alike(const PlannedReach& a, const PlannedReach& b) {
  return !a.closed_why.empty() && a.closed_why == b.closed_why;
}

// A stop, a lunch or a closed water between two reaches keeps them apart: each is a thing to do. Closed water that goes on
// is told once.
bool joins(const ReachRow& before, const std::vector<ReachRow>& next) {
  const bool stop_between =
      before.last->portage_at_end || !before.last->stop_sentence.empty() || next.front().first->lunch;
  if (next.size() == 1 && !stop_between && closed_alike(*before.last, *next.front().first)) return true;
  return next.size() == 1 && !before.names_waters && !next.front().names_waters && !stop_between &&
         !next.front().types.empty() && !before.types.empty() && fished_alike(before, next.front());
}

// At a spot the waters stay the same: hours in which each is fished as before are told with those before them.
bool goes_on(const std::vector<ReachRow>& all, const std::vector<ReachRow>& next) {
  if (all.size() < next.size()) return false;
  const auto before = all.end() - static_cast<std::ptrdiff_t>(next.size());
  return std::equal(before, all.end(), next.begin(), [](const ReachRow& a, const ReachRow& b) {
    const bool alike = a.types.empty() ? is_fished(*a.first) && is_fished(*b.first) : fished_alike(a, b);
    return a.begins_reach == b.begins_reach && a.types == b.types && alike;
  });
}

void go_on(std::vector<ReachRow>& all, const std::vector<ReachRow>& next) {
  for (std::size_t i = 0; i < next.size(); ++i) put_together(all[all.size() - next.size() + i], next[i]);
}

}  // namespace

std::vector<ReachRow> reach_rows(const PlannedStretch& stretch) {
  std::vector<ReachRow> all;
  for (const PlannedReach& reach : stretch.reaches) {
    const std::vector<ReachRow> rows = rows_of(reach);
    if (stretch.spot && goes_on(all, rows)) {
      go_on(all, rows);
    } else if (!all.empty() && joins(all.back(), rows)) {
      put_together(all.back(), rows.front());
    } else {
      all.insert(all.end(), rows.begin(), rows.end());
    }
  }
  return all;
}

}  // namespace floatwright
