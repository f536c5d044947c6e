// The zone and the pace on paper. Profile uniform, so that the speed at the fish is the surface's times the shelter.
#include "engine/choice/zone.hpp"

#include <gmock/gmock.h>

#include <cmath>

#include "engine/choice/pace.hpp"
#include "engine/choice/share_by_height.hpp"

namespace floatwright {
namespace {

const Judgement kJudgement;
constexpr double kExact = 1e-9;

Profile uniform() {
  Profile profile;
  profile.law = Profile::Law::Uniform;
  return profile;
}

Zone zone_of(Length depth, double speed_m_s, Measured<Temperature> temperature = celsius(12), Bed bed = Bed::Cobble,
             Method method = Method::Swing, Measured<Turbidity> clarity = fnu(1)) {
  return zone({depth, surface_metres_per_second(speed_m_s), uniform(), bed, temperature, clarity}, method,
              kJudgement.zone);
}

TEST(Table, IsReadAtItsPointsBetweenAndFlatBeyond) {
  const Table<3> table{{{0, 0.5}, {10, 1.0}, {20, 0.0}}};
  EXPECT_EQ(read(table, 0), 0.5);
  EXPECT_EQ(read(table, 10), 1.0);
  EXPECT_EQ(read(table, 5), 0.75);
  EXPECT_EQ(read(table, 12), 0.8);
  EXPECT_EQ(read(table, -40), 0.5);
  EXPECT_EQ(read(table, 99), 0.0);
}

// Barrett, Grossman & Rosenfeld 1992, from memory: shares of the reach at 5, 15 and 30 FNU; the one at 60 is judgement.
TEST(Zone, ReachShrinksInColouredWater) {
  EXPECT_NEAR(read(kJudgement.zone.reach_by_clarity, 15), 0.80, kExact);
  EXPECT_NEAR(read(kJudgement.zone.reach_by_clarity, 22.5), 0.625, kExact);
  EXPECT_NEAR(read(kJudgement.zone.reach_by_clarity, 2000), 0.20, kExact);
}

TEST(Zone, HoldsAtTwelvePercentOfTheDepthAndNeverOverAQuarterMetre) {
  EXPECT_NEAR(in_metres(zone_of(metres(1), 0.5).hold), 0.12, kExact);
  EXPECT_NEAR(in_metres(zone_of(metres(4), 0.5).hold), 0.25, kExact);
}

// u_h = 0.7 x 0.6 = 0.42 m/s; R = 0.9 sqrt(1 - (0.42/0.73)^2) = 0.9 x 0.81793 = 0.73613 m.
TEST(Zone, ReachesAsFarAsTheSwimmingLeaves) {
  const Zone found = zone_of(metres(2), 0.6);
  EXPECT_NEAR(in_metres_per_second(found.speed_at_hold), 0.42, kExact);
  EXPECT_NEAR(in_metres(found.reach), 0.9 * std::sqrt(1 - std::pow(0.42 / 0.73, 2)), kExact);
  EXPECT_NEAR(in_metres(found.reach), 0.7361, 1e-4);
}

TEST(Zone, ReachesFifteenCentimetresAtLeast) { EXPECT_NEAR(in_metres(zone_of(metres(2), 3.0).reach), 0.15, kExact); }

TEST(Zone, TakesAnUnknownBedForCobbleAndUnknownTemperatureForBest) {
  const Zone known = zone_of(metres(1.5), 0.8, celsius(12), Bed::Cobble);
  const Zone unknown = zone_of(metres(1.5), 0.8, Absent{"no gauge"}, Bed::Unknown);
  EXPECT_EQ(in_metres(known.reach), in_metres(unknown.reach));
  EXPECT_EQ(known.presence, unknown.presence);
}

// Shelter 0.7: u_h/V_f is 1.0 at 1.042857 m/s, 1.15 half way, 1.3 at 1.355714 m/s.
TEST(Zone, EmptiesAsFishCannotHold) {
  EXPECT_NEAR(zone_of(metres(2), 0.73 / 0.7).presence, 1.0, kExact);
  EXPECT_NEAR(zone_of(metres(2), 1.15 * 0.73 / 0.7).presence, 0.5, kExact);
  EXPECT_NEAR(zone_of(metres(2), 1.3 * 0.73 / 0.7).presence, 0.0, kExact);
  EXPECT_EQ(zone_of(metres(2), 5.0).presence, 0.0);
}

TEST(Zone, EmptiesSoonerInColdWater) {
  EXPECT_LT(zone_of(metres(2), 1.0, celsius(2)).presence, zone_of(metres(2), 1.0).presence);
}

TEST(Zone, CountsFullyToHalfTheReachThenFadesToNothing) {
  const Zone found = zone_of(metres(3), 0.0);  // hold 0.25, reach 0.9
  const auto share = [&](double z) { return share_at(found, metres(z), kJudgement.zone); };
  EXPECT_NEAR(share(0.03), 1.0, kExact);
  EXPECT_NEAR(share(0.70), 1.0, kExact);
  EXPECT_NEAR(share(0.925), 0.5, kExact);
  EXPECT_NEAR(share(1.15), 0.0, kExact);
  EXPECT_EQ(share(1.16), 0.0);
  EXPECT_NEAR(share(0.029), 0.2, kExact);
  EXPECT_NEAR(share(-0.5), 0.2, kExact);
}

// Reach 1.0 m: in 0.5 m the fish, at 0.06 m, has 0.56 m to spare of the 0.5 m that is enough; in 1 m, at 0.12 m, 0.12
// m.
// A fly at no known height is never taken for one in the zone.
TEST(Zone, HasNoShareAtAHeightThatIsNoNumber) {
  using Several = std::experimental::native_simd<double>;
  const ShareByHeight share(zone_of(metres(2), 1.0), kJudgement.zone);
  EXPECT_TRUE(std::isnan(of_lane(share.at(Alone(std::nan(""))), 0)));
  Several heights(0.3);
  const double known = of_lane(share.at(heights), 0);
  EXPECT_GT(known, 0.0);
  heights[Several::size() - 1] = std::nan("");
  const Several shares = share.at(heights);
  EXPECT_TRUE(std::isnan(of_lane(shares, Several::size() - 1)));
  for (std::size_t lane = 0; lane + 1 < Several::size(); ++lane) EXPECT_EQ(of_lane(shares, lane), known);
}

TEST(Zone, SeesADryFlyFromWhereItCanReachTheSurface) {
  const auto share = [&](double depth, bool hatch) {
    return share_on_top(zone_of(metres(depth), 0.0, celsius(12), Bed::Cobble, Method::Dry), hatch, kJudgement.zone);
  };
  EXPECT_NEAR(share(0.5, false), 1.0, kExact);
  EXPECT_NEAR(share(1.0, false), 0.24, 1e-6);
  EXPECT_EQ(share(2.0, false), 0.0);
  EXPECT_EQ(share(2.0, true), 1.0);
}

CastSample moving(double ground, double water, double bearing_deg = 90) {
  CastSample sample;
  sample.over_ground = metres_per_second(ground);
  sample.through_water = metres_per_second(water);
  sample.bearing = degrees(bearing_deg);
  return sample;
}

TEST(Pace, OfASwungFlyIsTheSlowerOfGroundAndWater) {
  const Speed easy = easy_speed(celsius(12), kJudgement.pace);
  const auto share = [&](const CastSample& s) { return share_of_pace(s, Method::Swing, easy, kJudgement.pace); };
  EXPECT_NEAR(in_metres_per_second(easy), 0.60, kExact);
  EXPECT_EQ(share(moving(2.0, 0.6)), 1.0);
  EXPECT_NEAR(share(moving(0.9, 2.0)), std::exp(-1.0), kExact);
  EXPECT_NEAR(share(moving(0.3, 0.3, 5)), 0.3, kExact);
  EXPECT_NEAR(share(moving(0.3, 0.3, -7.9)), 0.3, kExact);
  EXPECT_EQ(share(moving(0.3, 0.3, 8.1)), 1.0);
}

TEST(Pace, IsSlowerInColdWaterAndThatOfTenDegreesWhereUnknown) {
  EXPECT_NEAR(in_metres_per_second(easy_speed(celsius(2), kJudgement.pace)), 0.348, kExact);
  EXPECT_NEAR(in_metres_per_second(easy_speed(celsius(7), kJudgement.pace)), 0.60 * 0.79, kExact);
  EXPECT_NEAR(in_metres_per_second(easy_speed(Absent{"no gauge"}, kJudgement.pace)), 0.60, kExact);
}

TEST(Pace, OfANymphIsHalvedAtAQuarterMetreASecondOfDrag) {
  const Speed easy = metres_per_second(0.6);
  EXPECT_NEAR(share_of_pace(moving(0.5, 0.25), Method::Indicator, easy, kJudgement.pace), 0.5, kExact);
  EXPECT_NEAR(share_of_pace(moving(0.5, 9.0), Method::TightLine, easy, kJudgement.pace), 1 / 1.16, kExact);
  EXPECT_EQ(share_of_pace(moving(0.5, 0.0), Method::Dry, easy, kJudgement.pace), 1.0);
}

TEST(Pace, OfAStripDoesNotHangDown) {
  EXPECT_EQ(share_of_pace(moving(0.3, 0.3, 0), Method::Strip, metres_per_second(0.6), kJudgement.pace), 1.0);
}

}  // namespace
}  // namespace floatwright
