#include "engine/trip/likely_waters.hpp"

#include "engine/river/shares.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/water/described.hpp"
#include "engine/water/known_channel.hpp"

namespace floatwright {
namespace {

std::vector<Water> likely_in(const RiverDay& day, std::size_t index, Instant noon) {
  const Reach& reach = day.graph.reaches[index];
  const auto whole = whole_flow(day, index, noon);
  if (reach.lake || !whole.has_value()) return {};
  const Discharge own = own_flow(day.river, reach, whole->middle);
  if (!(own > Discharge{})) return {};
  const auto channel = known_channel(day.river, reach);
  if (!channel) return {};
  Water likely = likely_water(*channel, own);
  for (WaterNote& note : likely.notes) note.at_flow = whole->middle;  // as a person notes it
  return {likely};
}

}  // namespace

LikelyWaters likely_waters(const RiverDay& day) {
  const Instant noon = at_local(day.day, hours(12.0), day.river.time_zone);
  LikelyWaters likely;
  for (std::size_t i = 0; i < day.graph.reaches.size(); ++i) likely.push_back(likely_in(day, i, noon));
  return likely;
}

}  // namespace floatwright
