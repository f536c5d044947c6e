// What the weather does to the day, where it is known: it may raise the river, it spoils casting, it takes the boat.
#include "engine/forecast/rain.hpp"
#include "engine/trip/cautions.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/trip/weights.hpp"

namespace floatwright {
namespace {

// judgement
constexpr Speed kSpoilsCasting = miles_per_hour(15.0);
constexpr Speed kTakesTheBoat = miles_per_hour(20.0);

}  // namespace

void add_wind(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions) {
  if (day.weather == nullptr) return;
  const auto met = strongest_wind(*day.weather, times.launch, times.end);
  if (!met || met->speed <= kSpoilsCasting) return;
  const Speed limit = met->speed > kTakesTheBoat ? kTakesTheBoat : kSpoilsCasting;
  const auto hours = hours_windier_than(*day.weather, limit, times.launch, times.end);
  cautions.push_back({.kind = CautionKind::Wind,
                      .weight = weight_of(CautionKind::Wind),
                      .from = hours->from,
                      .to = hours->to,
                      .basis = "judgement; the wind is forecast and may be wrong",
                      .our_judgement = true,
                      .speed = met->speed,
                      .speed_limit = limit,
                      .emergency = limit == kTakesTheBoat});
}

void add_rain(const RiverDay& day, std::vector<Caution>& cautions) {
  if (day.weather == nullptr) return;
  const auto wettest = wettest_day(*day.weather, day.now, local_day(day.day, day.river.time_zone).end);
  if (!wettest || *wettest < kMuchRain) return;
  cautions.push_back({.kind = CautionKind::Rain,
                      .weight = weight_of(CautionKind::Rain),
                      .basis = "judgement; the rain is forecast and may be wrong",
                      .our_judgement = true,
                      .rise = *wettest});
}

}  // namespace floatwright
