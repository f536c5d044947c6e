#include "engine/trip/dam_fronts.hpp"

#include <algorithm>
#include <optional>

namespace floatwright {
namespace {

bool same_change(const DamFront& a, const DamFront& b) { return a.dam == b.dam && a.leaves == b.leaves; }

// Earliest at the nearest place told at or above `from`, latest at the nearest at or below `to`; open where none is told.
struct Window {
  std::optional<Instant> earliest, latest;
};

Window window(const std::vector<DamFront>& fronts, const DamFront& change, RiverPlace from, RiverPlace to) {
  const DamFront* above = nullptr;
  const DamFront* below = nullptr;
  for (const DamFront& front : fronts) {
    if (!same_change(front, change)) continue;
    if (front.place >= from && (above == nullptr || front.place < above->place)) above = &front;
    if (front.place <= to && (below == nullptr || front.place > below->place)) below = &front;
  }
  Window found;
  if (above != nullptr) found.earliest = above->earliest;
  if (below != nullptr) found.latest = below->latest;
  // A stretch beyond the first or last place told: the nearest one stands for it.
  if (above == nullptr && below != nullptr) found.earliest = change.leaves;
  if (below == nullptr && above != nullptr) found.latest = above->latest;
  return found;
}

}  // namespace

bool rise_expected(const RiverDay& day, RiverPlace from, RiverPlace to, Instant t) {
  return rise_expected(day, from, to, t, t);
}

bool rise_expected(const RiverDay& day, RiverPlace from, RiverPlace to, Instant arrive, Instant leave) {
  const auto& fronts = day.flows.fronts;
  return std::any_of(fronts.begin(), fronts.end(), [&](const DamFront& front) {
    if (!is_rise(front) || front.dam >= day.river.dams.size() || day.river.dams[front.dam].place < from) return false;
    const Window hours = window(fronts, front, from, to);
    return hours.earliest && hours.latest && *hours.earliest <= leave && arrive <= *hours.latest;
  });
}

std::vector<DamFront> fronts_met(const std::vector<DamFront>& fronts, const Timetable& times) {
  std::vector<DamFront> met;
  if (times.rows.empty()) return met;
  const RiverPlace from = times.rows.front().passage.from, to = times.rows.back().passage.to;
  for (const DamFront& front : fronts) {
    const bool within = front.place <= from && front.place >= to;
    if (within && front.latest >= times.launch && front.earliest <= times.off_by) met.push_back(front);
  }
  return met;
}

}  // namespace floatwright
