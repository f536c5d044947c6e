#include "engine/sinking/fishing_tables.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace floatwright {
namespace {

constexpr double kSamePace = 1e-6;  // rounding: below it a second table adds nothing

bool alike(const Technique& a, const Technique& b) {
  return a.mending == b.mending && a.count == b.count && a.strip == b.strip;
}

}  // namespace

FishingTables::FishingTables(TablesNeeded needed, std::vector<TableSet> sets)
    : needed_(std::move(needed)), sets_(std::move(sets)) {
  for (const TablesNeeded::Use& use : needed_.uses)
    orders_by_pace_[key(use.rig, use.method, use.cast)].emplace(needed_.orders[use.order].pace, use.order);
}

std::optional<CastPath> FishingTables::cast(const Rig& rig, const Technique& technique, Length cast, double pace,
                                            const GridPoint& at) const {
  const auto found = orders_by_pace_.find(key(rig, technique.method, cast));
  if (found == orders_by_pace_.end()) return std::nullopt;
  const auto& orders = found->second;
  const double k = std::clamp(pace, orders.begin()->first, orders.rbegin()->first);
  const auto above = orders.lower_bound(k);
  const FishingTable* faster = table(above->second, technique);
  if (!faster) return std::nullopt;
  if (above->first - k < kSamePace || above == orders.begin())
    return path_of(series_at(*faster, at, above->first), faster->leader);
  const auto below = std::prev(above);
  const FishingTable* slower = table(below->second, technique);
  if (!slower) return std::nullopt;
  const double way = (k - below->first) / (above->first - below->first);
  const CastSeries of_slower = series_at(*slower, at, below->first), of_faster = series_at(*faster, at, above->first);
  return path_of(between(of_slower, of_faster, way), faster->leader);
}

const FishingTable* FishingTables::table(std::size_t order, const Technique& technique) const {
  const auto& techniques = needed_.orders[order].techniques;
  const auto at = std::ranges::find_if(techniques, [&](const Technique& t) { return alike(t, technique); });
  if (at == techniques.end()) return nullptr;
  const auto& table = sets_[order][static_cast<std::size_t>(at - techniques.begin())];
  return table ? &*table : nullptr;
}

}  // namespace floatwright
