#include "engine/trip/water_book.hpp"

namespace floatwright {

const ScoredWater& WaterBook::at(const Passage& passage, std::size_t water, Instant read_at) {
  const Key key{passage.from, passage.to, water, read_at};
  const auto found = pages_.find(key);
  if (found != pages_.end()) return found->second;
  ScoredWater page{met_water(day_, passage, waters_of(day_, passage)[water], read_at), {}};
  if (page.met.to_fish.has_value()) {
    page.scored = scored_rigs(*page.met.to_fish, day_.tackle, day_.settings.preferences, day_.judgement);
  }
  return pages_.emplace(key, std::move(page)).first->second;
}

}  // namespace floatwright
