#include "engine/wording/most_fished.hpp"

#include <utility>
#include <vector>

namespace floatwright {
namespace {

bool same_line(const Rig& a, const Rig& b) { return a.line == b.line && a.tip == b.tip; }

const Rig& rig_of(const MostFished& fished) { return fished.water->choice.best->rig; }

std::vector<MostFished> fished_waters(const PlannedStretch& stretch) {
  std::vector<MostFished> fished;
  for (const PlannedReach& reach : stretch.reaches) {
    if (!is_fished(reach)) continue;
    for (const PlannedWater& water : reach.waters)
      if (water.choice.best) fished.push_back({&reach, &water});
  }
  return fished;
}

// Those alike that together have the most minutes; of equals the ones met first.
template <class Alike>
std::vector<MostFished> most_of(const std::vector<MostFished>& fished, Alike alike) {
  std::vector<MostFished> most;
  Duration longest{};
  for (const MostFished& one : fished) {
    std::vector<MostFished> with;
    Duration sum{};
    for (const MostFished& other : fished) {
      if (!alike(one, other)) continue;
      with.push_back(other);
      sum = sum + other.water->fishing;
    }
    if (!most.empty() && !(sum > longest)) continue;
    most = std::move(with);
    longest = sum;
  }
  return most;
}

// Of the rig fished longest the water fished longest.
std::optional<MostFished> longest_of(std::vector<MostFished> fished) {
  fished = most_of(fished, [](const auto& a, const auto& b) { return rig_of(a) == rig_of(b); });
  fished = most_of(fished, [](const auto& a, const auto& b) { return a.water == b.water; });
  if (fished.empty()) return std::nullopt;
  return fished.front();
}

}  // namespace

std::optional<MostFished> most_fished(const PlannedStretch& stretch) {
  auto fished = fished_waters(stretch);
  fished = most_of(fished, [](const auto& a, const auto& b) { return same_line(rig_of(a), rig_of(b)); });
  return longest_of(fished);
}

}  // namespace floatwright
