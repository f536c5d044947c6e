#include "engine/choice_tables.hpp"

#include <algorithm>

#include "engine/trip/score_waters.hpp"
#include "engine/trip/spot_hours.hpp"

namespace floatwright {
namespace {

std::optional<Stretch> stretch_of(const RiverDay& day, const PlannedStretch& floated, std::optional<std::size_t> spot) {
  if (spot) {
    const auto place = spot_passage(day, *spot);
    return place ? std::optional(Stretch{.spot = spot, .times = spot_hours(day, *place)}) : std::nullopt;
  }
  for (Stretch& stretch : stretches(day)) {
    const auto& accesses = day.river.accesses;
    if (accesses[stretch.put_in].id == floated.from && accesses[stretch.take_out].id == floated.to)
      return std::move(stretch);
  }
  return std::nullopt;
}

}  // namespace

std::vector<ChoiceTable> choice_tables(const DayInputs& in, const PlannedStretch& floated, const DoEach& do_each) {
  const WaterOfDay water = water_of_day(in);
  const RiverDay day = river_day(in, water);
  const auto stretch = stretch_of(day, floated, in.spot);
  if (!stretch) return {};
  WaterBook book(day);
  score_waters(day, book, Scored::WorkedOut, {&*stretch}, do_each);
  std::vector<ChoiceTable> tables;
  for (std::size_t r = 0; r < std::min(floated.reaches.size(), stretch->times.rows.size()); ++r) {
    const PlannedReach& reach = floated.reaches[r];
    for (std::size_t w = 0; w < reach.waters.size(); ++w) {
      if (!(reach.waters[w].fishing > Duration{})) continue;
      tables.push_back({r, w, book.at({stretch->times.rows[r].passage, w, reach.read_at}, Scored::WorkedOut).scored});
    }
  }
  return tables;
}

}  // namespace floatwright
