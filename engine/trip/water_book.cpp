#include "engine/trip/water_book.hpp"

#include "engine/choice/ranking.hpp"

namespace floatwright {

WaterBook::Page& WaterBook::page(const Key& key) {
  const std::scoped_lock alone(turning_);
  return pages_[key];
}

ScoredWater WaterBook::ranked(const WaterAtHour& where) const {
  ScoredWater water;
  water.met = met_water(day_, where.passage, waters_of(day_, where.passage)[where.water], where.read_at);
  if (water.met.to_fish.has_value())
    water.scored = ranked_rigs(*water.met.to_fish, day_.tackle, day_.settings.preferences, day_.judgement, day_.tables);
  if (day_.may_rise_on) leave_standing(water.scored, day_.judgement.choice);
  return water;
}

ScoredWater WaterBook::worked_out(const WaterAtHour& where) {
  ScoredWater water = at(where, Scored::OnTables);
  if (water.met.to_fish.has_value())
    water.scored = best_worked_out(water.scored, *water.met.to_fish, day_.tackle, day_.settings.preferences,
                                   day_.judgement, day_.tables);
  if (day_.may_rise_on) leave_standing(water.scored, day_.judgement.choice);
  return water;
}

const ScoredWater& WaterBook::at(const WaterAtHour& where, Scored how) {
  Page& page = this->page({where.passage.from, where.passage.to, where.water, where.read_at, where.passage.rises, how});
  std::call_once(page.written, [&] { page.water = how == Scored::OnTables ? ranked(where) : worked_out(where); });
  return page.water;
}

}  // namespace floatwright
