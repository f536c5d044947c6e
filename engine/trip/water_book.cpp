#include "engine/trip/water_book.hpp"

namespace floatwright {

WaterBook::Page& WaterBook::page(const Key& key) {
  const std::scoped_lock alone(turning_);
  return pages_[key];
}

const ScoredWater& WaterBook::at(const Passage& passage, std::size_t water, Instant read_at) {
  Page& page = this->page({passage.from, passage.to, water, read_at});
  std::call_once(page.written, [&] {
    page.water.met = met_water(day_, passage, waters_of(day_, passage)[water], read_at);
    if (!page.water.met.to_fish.has_value()) return;
    page.water.scored =
        scored_rigs(*page.water.met.to_fish, day_.tackle, day_.settings.preferences, day_.judgement, day_.tables);
  });
  return page.water;
}

}  // namespace floatwright
