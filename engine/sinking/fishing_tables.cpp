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

std::optional<std::size_t> FishingTables::build(const Rig& rig, Method method, Length cast) const {
  const auto found = orders_by_pace_.find(key(rig, method, cast));
  return found == orders_by_pace_.end() ? std::nullopt : std::optional(found->second.begin()->second);
}

std::optional<CastPath> FishingTables::cast(const Rig& rig, const Technique& technique, Length cast, double pace,
                                            const GridPoint& at) const {
  auto paths = casts(rig, technique, cast, pace, at, {&at.warmer_c, 1});
  return paths.empty() ? std::nullopt : std::optional(std::move(paths.front()));
}

std::vector<CastPath> FishingTables::casts(const Rig& rig, const Technique& technique, Length cast, double pace,
                                           const GridPoint& at, std::span<const double> warmer_c) const {
  std::vector<CastPath> paths;
  const auto found = orders_by_pace_.find(key(rig, technique.method, cast));
  if (found == orders_by_pace_.end()) return paths;
  const auto& orders = found->second;
  const double k = std::clamp(pace, orders.begin()->first, orders.rbegin()->first);
  const auto above = orders.lower_bound(k);
  const FishingTable* faster = table(above->second, technique);
  if (!faster) return paths;
  const CastSeries of_faster = series_as_tabled(*faster, at, above->first);
  if (above->first - k < kSamePace || above == orders.begin()) {
    for (const double warmer : warmer_c) paths.push_back(path_of(warmed(of_faster, *faster, warmer), faster->leader));
    return paths;
  }
  const auto below = std::prev(above);
  const FishingTable* slower = table(below->second, technique);
  if (!slower) return paths;
  const double way = (k - below->first) / (above->first - below->first);
  const CastSeries of_slower = series_as_tabled(*slower, at, below->first);
  for (const double warmer : warmer_c)
    paths.push_back(
        path_of(between(warmed(of_slower, *slower, warmer), warmed(of_faster, *faster, warmer), way), faster->leader));
  return paths;
}

const FishingTable* FishingTables::table(std::size_t order, const Technique& technique) const {
  const auto& techniques = needed_.orders[order].techniques;
  const auto at = std::ranges::find_if(techniques, [&](const Technique& t) { return alike(t, technique); });
  if (at == techniques.end()) return nullptr;
  const auto& table = sets_[order][static_cast<std::size_t>(at - techniques.begin())];
  return table ? &*table : nullptr;
}

}  // namespace floatwright
