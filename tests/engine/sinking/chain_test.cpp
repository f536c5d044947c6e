// The chain in time, against what must hold whatever the numbers.
#include <gmock/gmock.h>

#include <cmath>
#include <limits>

#include "engine/sinking/cast_run.hpp"
#include "engine/sinking/simulated_cast.hpp"

namespace floatwright {
namespace {

using ::testing::DoubleNear;

LinePart sinking_part(Length length, Speed rate) {
  LinePart part{PartKind::Sinking, length, millimetres(1.0), {}, rate, rate};
  return part;
}

CastCase a_swing() {
  CastCase in;
  in.parts = {{PartKind::Leader, metres(1.0), millimetres(0.3), kilograms_per_cubic_metre(1140.0), {}, {}},
              sinking_part(metres(3.8), inches_per_second(5.0)),
              {PartKind::Floating, metres(20.0), millimetres(1.3), kilograms_per_cubic_metre(870.0), {}, {}}};
  in.fly = {newtons(0.001), inches_per_second(3.0), square_metres(8.6e-5)};
  in.depth = metres(1.5);
  in.surface_speed = surface_metres_per_second(1.0);
  in.line_out = metres(7.2);
  in.feed = seconds(3.0);
  return in;
}

TEST(Chain, LineThatNothingHoldsSinksAtItsOwnRateInStillWater) {
  CastCase in = a_swing();
  in.parts = {sinking_part(metres(30.0), inches_per_second(4.0))};
  in.fly = {};
  in.line_out = metres(20.0);
  in.depth = metres(50.0);
  in.surface_speed = {};
  const auto water = tabled_water(in.depth, in.surface_speed, in.profile, in.temperature);
  const WaterAndBoat place{&*water, in.boat};
  CastRun<Alone> run(in, {&place, 1}, kFine);
  while (run.time() < 8.0) run.advance();
  const auto& middle = run.chain().joint(20);  // 2.5 m from the free end
  EXPECT_THAT(of_lane(middle.velocity.down, 0), DoubleNear(inches_per_second(4.0).si(), 2e-4));  // 0.2 %
}

TEST(Chain, WatersAbreastFishAsEachAlone) {
  const CastCase in = a_swing();
  std::vector<TabledWater> made;
  for (std::size_t i = 0; i < kWatersAbreast; ++i)
    made.push_back(*tabled_water(metres(0.5 + 0.7 * static_cast<double>(i)), in.surface_speed, in.profile, in.temperature));
  std::vector<WaterAndBoat> places;
  for (const TabledWater& water : made)
    places.push_back({&water, metres_per_second(places.size() < 2 ? 0.0 : 0.3)});
  CastRun<Abreast> abreast(in, places, kCoarse);
  while (abreast.time() < 12.0) abreast.advance();
  for (std::size_t lane = 0; lane < places.size(); ++lane) {
    CastRun<Alone> alone(in, {&places[lane], 1}, kCoarse);
    while (alone.time() < 12.0) alone.advance();
    const CastRow a = abreast.row(lane), b = alone.row(0);
    EXPECT_THAT(a.fly_depth.si(), DoubleNear(b.fly_depth.si(), 2e-3)) << "m, " << places[lane].water->depth.si() << " m deep";
    EXPECT_THAT(in_degrees(a.bearing), DoubleNear(in_degrees(b.bearing), 0.1));
  }
}

TEST(Chain, NoPieceEndsAStepTooLong) {
  const CastCase in = a_swing();
  const auto water = tabled_water(in.depth, in.surface_speed, in.profile, in.temperature);
  const WaterAndBoat place{&*water, in.boat};
  CastRun<Alone> run(in, {&place, 1}, kFine);
  double most = 0.0;  // m
  while (run.time() < 20.0) {
    run.advance();
    for (std::size_t i = 0; i < run.chain().pieces(); ++i) {
      const auto chord = run.chain().joint(i + 1).at - run.chain().joint(i).at;
      most = std::max(most, std::sqrt(of_lane(dot(chord, chord), 0)) - of_lane(run.chain().length(i), 0));
    }
  }
  EXPECT_LT(most, 2.0 * kFine.stretch.si());
}

TEST(SimulatedCast, FlyDivesOnlyWhenTheLineComesTightAndRisesAgain) {
  const auto cast = simulated_cast(a_swing());
  ASSERT_TRUE(cast) << cast.why_absent();
  const auto& rows = cast->rows;
  EXPECT_LT(rows[40].fly_depth, 0.5 * rows[40].tip_depth);  // at 4 s still slack
  EXPECT_GT(cast->deepest_fly, 1.15 * cast->end_fly);
  EXPECT_THAT(in_degrees(rows.back().bearing), DoubleNear(0.0, 2.0));
}

TEST(SimulatedCast, RefusesInASentence) {
  const auto why = [](auto change) {
    CastCase in = a_swing();
    change(in);
    return simulated_cast(in).why_absent();
  };
  EXPECT_EQ(why([](CastCase& in) { in.parts.clear(); }), "the line has no parts");
  EXPECT_EQ(why([](CastCase& in) { in.parts[0].length = Length{}; }), "a part of the line has no length");
  EXPECT_EQ(why([](CastCase& in) { in.line_out = metres(25.0); }), "more line is out than the body is long");
  EXPECT_EQ(why([](CastCase& in) { in.depth = metres(-1.0); }), "the water has no depth");
  EXPECT_EQ(why([](CastCase& in) { in.slack = 3.0; }), "the slack is not within 0 and 0.57, which is half a circle");
  EXPECT_EQ(why([](CastCase& in) { in.bearing = degrees(200.0); }), "the bearing is not within 0 to 180 degrees");
}

TEST(ChainAbreast, ReadsTheBedsSpeedAtADepthThatIsNoNumber) {
  const CastCase in = a_swing();
  const auto water = tabled_water(in.depth, in.surface_speed, in.profile, in.temperature);
  const WaterAndBoat here{&*water, {}};
  const CastRun<Abreast> run(in, {&here, 1}, kCoarse);
  const double bed = water->stream.at(2.0 * in.depth).si(), surface = water->stream.at_surface().si();
  for (const float depth : {std::numeric_limits<float>::quiet_NaN(), HUGE_VALF, 1e30F})
    EXPECT_NEAR(of_lane(run.chain().stream(Abreast(depth)), 0), bed, 1e-6) << depth;
  EXPECT_NEAR(of_lane(run.chain().stream(Abreast(-HUGE_VALF)), 0), surface, 1e-6);
}

}  // namespace
}  // namespace floatwright
