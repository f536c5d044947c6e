#include "adapters/cli/spot_asked_for.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "adapters/in/files/nearest.hpp"
#include "adapters/in/text/printable.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostNamed = 5;

std::string nearest_first(const River& river, const std::string& id) {
  std::vector<std::string> known;
  for (const Spot& spot : river.spots) known.push_back(spot.id);
  std::ranges::stable_sort(known, {}, [&](const std::string& other) { return edit_distance(id, other); });
  const std::size_t more = known.size() > kMostNamed ? known.size() - kMostNamed : 0;
  known.resize(known.size() - more);
  return fmt::format("{}{}", fmt::join(known, ", "), more == 0 ? "" : fmt::format(" and {} more", more));
}

Failure unknown(const River& river, const std::string& id) {
  if (river.spots.empty()) {
    return {"--at: river.json has no spots; add one under \"spots\" with id, mile, platform and waters", kExitUsage};
  }
  return {fmt::format("--at: found \"{}\"; river.json has these spots: {}", printable(id), nearest_first(river, id)), kExitUsage};
}

}  // namespace

Result<std::optional<std::size_t>> spot_asked_for(const River& river, const std::string& id) {
  if (id.empty()) return std::nullopt;
  const auto found = std::ranges::find(river.spots, id, &Spot::id);
  if (found == river.spots.end()) return tl::unexpected(unknown(river, id));
  return static_cast<std::size_t>(found - river.spots.begin());
}

}  // namespace floatwright
