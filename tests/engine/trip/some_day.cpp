#include "tests/engine/trip/some_day.hpp"

#include <string>

namespace floatwright {
namespace {

std::vector<Water> some_waters(Chance& chance, double at_cfs) {
  std::vector<Water> waters;
  const std::size_t count = 1 + chance.among(3);
  for (std::size_t i = 0; i < count; ++i)
    waters.push_back(noted(static_cast<WaterType>(chance.among(7)), 1.0 / static_cast<double>(count),
                           chance.between(1.0, 7.0), chance.between(1.0, 4.5), at_cfs));
  return waters;
}

Hazard some_hazard(Chance& chance, double most_mile) {
  Hazard hazard;
  hazard.what = "The Shelf";
  hazard.place = river_mile(chance.between(1.0, most_mile));
  if (chance.one_in(3)) hazard.least_flow = cubic_feet_per_second(chance.between(500.0, 3000.0));
  if (chance.one_in(2)) hazard.above_flow = cubic_feet_per_second(chance.between(1000.0, 5000.0));
  hazard.must_portage = chance.one_in(3);
  return hazard;
}

Closure some_closure(Chance& chance, double most_mile) {
  Closure closure;
  closure.from = river_mile(chance.between(2.0, most_mile));
  closure.to = upstream_of(closure.from, miles(-1.5));
  closure.why = "spawning fish";
  if (chance.one_in(2)) closure.hours = HoursOfDay{hours(12.0), hours(24.0)};
  return closure;
}

River some_river(Chance& chance) {
  River river = small_river();
  river.accesses.clear();
  river.notes.clear();
  const std::size_t count = 3 + chance.among(2);
  double mile = 0.5;
  for (std::size_t i = 0; i < count; ++i) {
    river.accesses.insert(river.accesses.begin(),
                          access("access" + std::to_string(i), mile, 0.05 * static_cast<double>(i)));
    river.accesses.front().closed = chance.one_in(8);
    river.accesses.front().trailer = !chance.one_in(8);
    mile += chance.between(2.0, 6.0);
  }
  for (std::size_t i = 0; i + 1 < count; ++i) {
    StretchNote note = note_between(river.accesses[i], river.accesses[i + 1], chance.between(1.0, 3.0));
    note.at_flow = cubic_feet_per_second(chance.between(900.0, 2500.0));
    note.waters = some_waters(chance, in_cubic_feet_per_second(note.at_flow));
    river.notes.push_back(note);
  }
  const double highest = in_river_miles(river.accesses.front().place) - 0.5;
  if (chance.one_in(2)) river.hazards.push_back(some_hazard(chance, highest));
  for (int i = 0; i < 2; ++i)
    if (chance.one_in(2)) river.closures.push_back(some_closure(chance, highest));
  if (chance.one_in(2)) river.boat_limits.least_flow = cubic_feet_per_second(chance.between(300.0, 1500.0));
  if (chance.one_in(2)) river.boat_limits.most_flow = cubic_feet_per_second(chance.between(1500.0, 5000.0));
  return river;
}

}  // namespace

Tackle some_tackle(Chance& chance) {
  static constexpr LineKind kKinds[]{LineKind::Floating, LineKind::NymphTaper, LineKind::DoubleTaper,
                                     LineKind::ThinNymphLine};
  Tackle tackle;
  const std::size_t rods = 2 + chance.among(3);
  for (std::size_t r = 0; r < rods; ++r) {
    const std::string id = "rod" + std::to_string(r);
    tackle.rods.push_back({id, "square", 5, feet(9.0)});
    for (std::size_t l = 0; l <= chance.among(2); ++l)
      tackle.lines.push_back(line_on(id, id + "_line" + std::to_string(l), kKinds[chance.among(4)], 5));
  }
  for (std::size_t f = 0; f < 3; ++f)
    tackle.flies.push_back(fly("nymph" + std::to_string(f), {Method::Indicator, Method::TightLine},
                               chance.between(0.1, 0.8), chance.between(3.0, 10.0)));
  tackle.flies.push_back(fly("dry", {Method::Dry}, chance.between(0.03, 0.1), 0.0));
  tackle.shot = {grams(0.2)};
  return tackle;
}

DayInputs some_day(unsigned seed) {
  Chance chance(seed);
  const River river = some_river(chance);
  DayInputs in = small_day(river, {.flow_cfs = chance.between(500.0, 4000.0),
                                   .mean_f = chance.between(40.0, 68.0),
                                   .swing_f = chance.between(1.0, 5.0)});
  in.tackle = some_tackle(chance);
  in.settings.preferences.methods = {{Method::Indicator, 0.8}, {Method::TightLine, 0.9}, {Method::Dry, 1.0}};
  in.settings.preferences.rods_aboard = 1 + static_cast<int>(chance.among(3));
  in.settings.preferences.anglers = {{"guest", feet(chance.between(25.0, 45.0)), chance.one_in(2)}};
  in.settings.latest_off = hours(chance.between(12.0, 20.0));
  if (chance.one_in(3)) in.settings.most_stretch = miles(chance.between(3.0, 12.0));
  if (chance.one_in(3)) in.settings.least_stretch = miles(chance.between(2.0, 6.0));
  return in;
}

}  // namespace floatwright
