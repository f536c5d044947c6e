// Water between two gauges, beside a plain integration of dT/dt = (Te - T)/tau in steps of a minute.
#include "engine/temperature/stretch_temperatures.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "engine/temperature/release_temperature.hpp"
#include "warm_record.hpp"

namespace floatwright {
namespace {

double hour_of_day(Instant t) { return in_hours(duration(t.time_since_epoch() % std::chrono::hours{24})); }
double equilibrium(Instant t) { return 16.0 + 8.0 * std::cos(2.0 * std::numbers::pi * (hour_of_day(t) - 20.0) / 24.0); }

// A release that is up to 2 C warmer from noon to 20 h.
double released(Instant t) {
  const double since_noon = hour_of_day(t) - 12.0;
  return 8.0 + (since_noon > 0.0 && since_noon < 8.0 ? 2.0 * std::sin(std::numbers::pi * since_noon / 8.0) : 0.0);
}

constexpr double kTau_h = 4.186e6 * 0.8 / 30.0 / 3600.0;  // of water 0.8 m deep

// The parcel that arrives at `t` after so many hours.
double come_down(Instant t, double travel_h) {
  const int minutes = static_cast<int>(std::lround(60.0 * travel_h));
  const Instant left = t - std::chrono::minutes{minutes};
  double water = released(left);
  for (int m = 0; m < minutes; ++m) water += (equilibrium(left + std::chrono::minutes{m}) - water) / kTau_h / 60.0;
  return water;
}

KnownTemperature known_after(double travel_h, int days = 8) {
  KnownTemperature known;
  known.observed = temperatures(24 * days, [&](int h) { return come_down(kNow - std::chrono::hours{h}, travel_h); });
  known.grid = grid_around();
  for (std::size_t i = 0; i < known.grid.count; ++i) {
    const Temperature t = celsius(come_down(known.grid.at(i), travel_h));
    known.cases.push_back({t, t, t});
  }
  return known;
}

WaterPath ten_pieces(double piece_h) {
  WaterPath path;
  for (std::size_t i = 0; i < 10; ++i) path.pieces.push_back({i, hours(piece_h), heat_time(metres(0.8)), {}});
  return path;
}

struct Worst {
  double middle = 0.0, half_width = 0.0;  // C
  bool inside = true;
};
// Of the middle of piece p, over all hours, where the water really takes `true_h` over each piece.
Worst worst_at(const std::vector<TemperatureCurve>& curves, std::size_t p, double true_h) {
  Worst worst;
  for (std::size_t i = 0; i < grid_around().count; ++i) {
    const double seen = come_down(grid_around().at(i), (static_cast<double>(p) + 0.5) * true_h);
    const PerCase<Temperature>& t = curves[p][i];
    worst.middle = std::max(worst.middle, std::abs(in_celsius(t.middle) - seen));
    worst.half_width = std::max(worst.half_width, in_kelvins(t.high - t.low) / 2.0);
    worst.inside = worst.inside && in_celsius(t.low) < seen + 0.05 && in_celsius(t.high) > seen - 0.05;
  }
  return worst;
}

std::vector<TemperatureCurve> curves_of(const WaterPath& path, double true_h) {
  const KnownTemperature top = known_after(0.0), bottom = known_after(10.0 * true_h);
  return *stretch_temperatures({path, top, bottom, {}});
}

TEST(StretchTemperatures, AreWhatComesDown) {
  WaterPath path = ten_pieces(1.5);
  path.timed_by_floats = true;
  const auto curves = curves_of(path, 1.5);
  for (const std::size_t p : {0UL, 4UL, 9UL}) EXPECT_LT(worst_at(curves, p, 1.5).middle, 0.1) << p;
}
TEST(StretchTemperatures, FindThePaceOfTheWaterFromTheLowerGauge) {
  const auto curves = curves_of(ten_pieces(1.0), 1.59);  // the channel's speed is far too quick
  EXPECT_LT(worst_at(curves, 4, 1.59).middle, 0.2);
}
TEST(StretchTemperatures, HoldTheTruthInTheirBandWhereThePaceIsNotKnown) {
  const auto curves = curves_of(ten_pieces(1.5), 1.5);
  EXPECT_TRUE(worst_at(curves, 4, 1.5).inside);
}
TEST(StretchTemperatures, MeetTheLowerGauge) {
  const KnownTemperature top = known_after(0.0);
  KnownTemperature bottom = known_after(15.0);
  for (PerCase<Temperature>& t : bottom.cases)
    t = {t.low + kelvins(1.0), t.middle + kelvins(1.0), t.high + kelvins(1.0)};
  const auto raised = *stretch_temperatures({ten_pieces(1.5), top, bottom, {}});
  const auto plain = *stretch_temperatures({ten_pieces(1.5), top, known_after(15.0), {}});
  for (const std::size_t p : {0UL, 4UL, 9UL})  // in proportion to the travel
    EXPECT_NEAR(in_kelvins(raised[p][60].middle - plain[p][60].middle), (static_cast<double>(p) + 0.5) / 10.0, 1e-6);
}
TEST(StretchTemperatures, AreAbsentWithoutADayAtBothEnds) {
  const KnownTemperature top = known_after(0.0), bottom = known_after(15.0, 0);
  EXPECT_FALSE(stretch_temperatures({ten_pieces(1.5), top, bottom, {}}).has_value());
}

// Lowney 2000 (Water Resour. Res. 36; the property from memory): below a release of constant temperature the daily
// range is widest half a day of travel down and narrowest a whole day down.
TEST(ParcelsDown, SwingMostHalfADayBelowAConstantReleaseAndLeastAWholeDay) {
  const WaterPath path = [] {
    WaterPath pieces = ten_pieces(1.0);
    pieces.pieces.resize(36, pieces.pieces.front());
    return pieces;
  }();
  const TimeGrid departures{kNow, std::chrono::hours{1}, 25};
  const ParcelsDown parcels(path, 1.0, departures, {});
  const auto range_at = [&](std::size_t place) {
    double low = 99.0, high = -99.0;
    for (std::size_t d = 0; d < departures.count; ++d) {
      const Equilibrium swing{celsius(16.0), kelvins(5.0), kelvins(-6.0)};
      const double t = in_celsius(temperature_of(parcels.shares(place, d), celsius(8.0), swing));
      low = std::min(low, t);
      high = std::max(high, t);
    }
    return high - low;
  };
  std::size_t widest = 0, narrowest = 12;
  for (std::size_t p = 0; p < 24; ++p)
    if (range_at(p) > range_at(widest)) widest = p;
  for (std::size_t p = 12; p < 36; ++p)
    if (range_at(p) < range_at(narrowest)) narrowest = p;
  EXPECT_NEAR(in_hours(parcels.travel(widest)), 12.0, 1.6);  // the swing is damped a little on the way
  EXPECT_NEAR(in_hours(parcels.travel(narrowest)), 24.0, 1.6);
}
TEST(ParcelsDown, KeepTheHeatOfTheWaterThatJoins) {
  WaterPath path = ten_pieces(0.0);
  path.pieces[5].joining = {{0, 0.25}};
  const ParcelsDown parcels(path, 1.0, {kNow, std::chrono::hours{1}, 1}, [](auto, auto) { return celsius(20.0); });
  const Equilibrium none{celsius(0.0), {}, {}};
  const auto end = temperature_of(parcels.shares(parcels.end(), 0), celsius(8.0), none);
  EXPECT_NEAR(in_celsius(end), 0.75 * 8.0 + 0.25 * 20.0, 1e-12);  // 30 m3/s of 8 C and 10 of 20 C
}

TEST(ReleaseTemperature, IsTheLakesAtTheDepthOfTheRelease) {
  River river;
  Dam dam;
  dam.place = river_mile(50);
  dam.release_depth = metres(20);
  Lake lake;
  lake.from = river_mile(58);
  lake.to = river_mile(50);
  lake.profile = {{metres(0), celsius(20)}, {metres(10), celsius(16)}, {metres(30), celsius(6)}};
  lake.profile_on = std::chrono::year{2027} / 5 / 1;
  river.lakes = {lake};
  EXPECT_NEAR(in_celsius(*release_temperature(river, dam, kNow)), 11.0, 1e-12);
  EXPECT_FALSE(release_temperature(river, dam, kNow + std::chrono::hours{24 * 20}).has_value());  // over a month old
  dam.release_depth.reset();
  EXPECT_FALSE(release_temperature(river, dam, kNow).has_value());
}

}  // namespace
}  // namespace floatwright
