#include "engine/choice/lake_layer.hpp"

#include <algorithm>

namespace floatwright {
namespace {

constexpr double kDrop = 1.0;  // C/m

double gradient(const ProfilePoint& upper, const ProfilePoint& lower) {
  const double dy = (lower.depth - upper.depth).si();  // m
  return dy > 0.0 ? (in_celsius(upper.temperature) - in_celsius(lower.temperature)) / dy : 0.0;
}

// Where the steepest drop ends; none where the water cools slowly all the way down.
std::optional<Length> drop_ends(const std::vector<ProfilePoint>& profile) {
  std::size_t steepest = 0;
  double most = kDrop;
  for (std::size_t i = 1; i < profile.size(); ++i) {
    const double here = gradient(profile[i - 1], profile[i]);
    if (here < most || (here == most && steepest != 0)) continue;
    most = here;
    steepest = i;
  }
  return steepest == 0 ? std::nullopt : std::optional(profile[steepest].depth);
}

// The depth between two points of a profile at which a temperature is met; the upper end where both are alike.
Length meets(const ProfilePoint& upper, const ProfilePoint& lower, Temperature wanted) {
  const double from = in_celsius(upper.temperature), to = in_celsius(lower.temperature);  // C
  const double way = from == to ? 0.0 : std::clamp((in_celsius(wanted) - from) / (to - from), 0.0, 1.0);
  return upper.depth + way * (lower.depth - upper.depth);
}

// From the first to the last depth of that warmth.
std::optional<Layer> warm_enough(const std::vector<ProfilePoint>& profile) {
  std::optional<Layer> layer;
  const auto fits = [](const ProfilePoint& p) { return p.temperature >= kLayersCoolest && p.temperature <= kLayersWarmest; };
  const auto add = [&](Length depth) {
    if (!layer) layer = Layer{depth, depth};
    layer->to = std::max(layer->to, depth);
  };
  for (std::size_t i = 0; i < profile.size(); ++i) {
    if (fits(profile[i])) add(profile[i].depth);
    if (i + 1 == profile.size()) break;
    const ProfilePoint &upper = profile[i], &lower = profile[i + 1];
    for (const Temperature limit : {kLayersWarmest, kLayersCoolest}) {
      const bool crosses = (upper.temperature > limit) != (lower.temperature > limit);
      if (crosses) add(meets(upper, lower, limit));
    }
  }
  return layer;
}

}  // namespace

Measured<Layer> layer_to_fish(const Lake& lake) {
  if (lake.profile.size() < 2) return Absent{"no temperature profile of this lake is written down"};
  const auto warm = warm_enough(lake.profile);
  if (!warm) return Absent{"no water that trout like is in its profile"};
  Layer layer = *warm;
  if (const auto drop = drop_ends(lake.profile)) layer.to = std::min(layer.to, *drop);
  if (lake.weed_top) layer.to = std::min(layer.to, *lake.weed_top);
  if (layer.to <= layer.from) return Absent{"the water that trout like lies under its steepest drop or in the weed"};
  return layer;
}

}  // namespace floatwright
