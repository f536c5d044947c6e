#include "engine/temperature/release_temperature.hpp"

#include <algorithm>

namespace floatwright {
namespace {

constexpr Period kStands = std::chrono::hours{30 * 24};
constexpr Length kAtTheDam = Length::from_si(500.0);

bool ends_at(const Lake& lake, const Dam& dam) {
  if (!lake.from || !lake.to || *lake.from < dam.place) return false;
  const Length off = *lake.to - dam.place;
  return off < kAtTheDam && -off < kAtTheDam;
}

bool stands(const Lake& lake, Instant now) {
  if (lake.profile.empty() || !lake.profile_on) return false;
  const auto age = now - Instant{std::chrono::sys_days{*lake.profile_on}};
  return age < kStands && -age < kStands;
}

Temperature at_depth(const std::vector<ProfilePoint>& profile, Length depth) {
  const auto below = std::find_if(profile.begin(), profile.end(), [&](const auto& p) { return p.depth >= depth; });
  if (below == profile.begin()) return profile.front().temperature;
  if (below == profile.end()) return profile.back().temperature;
  const ProfilePoint &a = *(below - 1), &b = *below;
  return a.temperature + (depth - a.depth) / (b.depth - a.depth) * (b.temperature - a.temperature);
}

}  // namespace

std::optional<Temperature> release_temperature(const River& river, const Dam& dam, Instant now) {
  if (!dam.release_depth) return std::nullopt;
  for (const Lake& lake : river.lakes)
    if (ends_at(lake, dam) && stands(lake, now)) return at_depth(lake.profile, *dam.release_depth);
  return std::nullopt;
}

}  // namespace floatwright
