#include "engine/water/surface_rise.hpp"

#include <gmock/gmock.h>

#include <cmath>

#include "engine/water/gauge_near.hpp"
#include "engine/water/lane.hpp"
#include "tests/engine/river/lantern.hpp"

namespace floatwright {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

Reach stem(double from_mile, double to_mile) {
  Reach reach;
  reach.from = river_mile(from_mile);
  reach.to = river_mile(to_mile);
  return reach;
}

// 2 ft at 900 cfs, 3 ft at 1800, 5 ft at 4500.
Rating rating() {
  Rating r;
  r.points = {{stage_feet(2.0), cubic_feet_per_second(900)},
              {stage_feet(3.0), cubic_feet_per_second(1800)},
              {stage_feet(5.0), cubic_feet_per_second(4500)}};
  return r;
}

// A triangle with sides of 10 to 1, 6 ft to the banks.
SurveyedSection triangle(std::optional<double> slope = 0.002) {
  return {{{feet(0.0), feet(6.0)}, {feet(60.0), feet(0.0)}, {feet(120.0), feet(6.0)}}, slope, 0.035};
}

River with_rating() {
  River river = lantern_river();
  river.gauges[2].rating = rating();
  return river;
}

PerCase<Discharge> flows(double low, double middle, double high) {
  return {cubic_feet_per_second(low), cubic_feet_per_second(middle), cubic_feet_per_second(high)};
}

TEST(GaugeNear, IsTheNearestOfOneFlow) {
  // The gauge at mile 28.9; Alder Creek joins at 35.0, so the reach above it carries another flow.
  const auto below = gauges_of_one_flow(lantern_river(), stem(33.0, 32.0));
  ASSERT_EQ(below.size(), 1u);
  EXPECT_EQ(below[0].gauge, 2u);
  EXPECT_NEAR(in_miles(below[0].away), 3.1, 1e-9);
  EXPECT_THAT(gauges_of_one_flow(lantern_river(), stem(36.0, 35.5)), IsEmpty());
  EXPECT_THAT(gauges_of_one_flow(lantern_river(), stem(35.5, 35.0)), IsEmpty());
  EXPECT_EQ(gauges_of_one_flow(lantern_river(), stem(35.0, 34.0)).size(), 1u);
}

TEST(GaugeNear, IsNoneInASideChannelOrBeyondADam) {
  Reach branch = stem(38.6, 37.4);
  branch.side_channel = 0;
  EXPECT_THAT(gauges_of_one_flow(lantern_river(), branch), IsEmpty());
  EXPECT_THAT(gauges_of_one_flow(lantern_river(), stem(48.0, 46.5)), IsEmpty());
}

TEST(SurfaceRise, IsThatOfTheGaugesStage) {
  const River river = with_rating();
  const SurfaceLaw law = surface_law_of(river, stem(30.0, 29.0));
  EXPECT_NEAR(in_feet(surface_rise(law, Channel{}, cubic_feet_per_second(1800), cubic_feet_per_second(4500))), 2.0, 1e-9);
  EXPECT_NEAR(in_feet(surface_rise(law, Channel{}, cubic_feet_per_second(1800), cubic_feet_per_second(1350))), -0.5, 1e-9);
}

TEST(SurfaceRise, IsTheChannelsWhereTheRatingDoesNotReach) {
  const River river = with_rating();
  const Discharge low = cubic_feet_per_second(1800), flood = cubic_feet_per_second(9000);
  const Length rise = surface_rise(surface_law_of(river, stem(30.0, 29.0)), Channel{}, low, flood);
  EXPECT_DOUBLE_EQ(rise.si(), (mean_depth(Channel{}, flood) - mean_depth(Channel{}, low)).si());
  EXPECT_TRUE(surface_law_of(river, stem(34.0, 33.0)).empty());  // 4.1 miles off
}

TEST(SurfaceRise, OfASurveyedSectionIsThatOfItsSurface) {
  // A triangle under Manning carries y^(8/3): twice the flow at 2^(3/8) of the depth (exact).
  River river = lantern_river();
  river.reaches[1].sections = {triangle()};
  Reach reach = stem(38.6, 37.4);
  reach.named_reach = 1;
  const SurfaceLaw law = surface_law_of(river, reach);
  const Discharge q = cubic_feet_per_second(200);
  const Length before = surface_height(law, q).value();
  EXPECT_NEAR(surface_height(law, 2.0 * q).value() / before, std::pow(2.0, 3.0 / 8.0), 1e-9);
  EXPECT_THAT(surface_height(law, cubic_feet_per_second(90000)).why_absent(), HasSubstr("over the banks"));
}

TEST(SurveyedSection, HasTheExponentsOfItsShape) {
  // Triangle under Manning: w and d as Q^(3/8), v as Q^(1/4) (exact; the factor 4/3 of celerity is 1/(1 - 1/4)).
  const Channel channel = channel_of_sections({triangle()}, {});
  EXPECT_NEAR(channel.b, 3.0 / 8.0, 1e-9);
  EXPECT_NEAR(channel.f, 3.0 / 8.0, 1e-9);
  EXPECT_NEAR(channel.m, 1.0 / 4.0, 1e-9);
  EXPECT_LT(channel.least, channel.most);
  EXPECT_FALSE(channel.guessed);
}

TEST(SurveyedSection, AddsUpTheThreadsOfADividedRiver) {
  // Two equal triangles side by side, parted by an island of 5 ft under the same banks, carry twice what one does.
  SurveyedSection two = triangle();
  two.points.back() = {feet(110.0), feet(5.0)};
  two.points.push_back({feet(160.0), feet(0.0)});
  two.points.push_back({feet(220.0), feet(6.0)});
  for (const double y : {0.5, 3.0, 4.9}) {
    EXPECT_NEAR(water_below(two, 0.002, feet(y)).flow / water_below(triangle(), 0.002, feet(y)).flow, 2.0, 1e-12) << y;
  }
}

TEST(SurveyedSection, KeepsTheWaterBetweenItsBanks) {
  // Low ground behind the right bank stays dry, and the bank is the lower of the two.
  SurveyedSection leveed = triangle();
  leveed.points.front().height = feet(9.0);
  leveed.points.push_back({feet(200.0), feet(1.0)});
  EXPECT_DOUBLE_EQ(in_feet(bank_height(leveed)), 6.0);
  EXPECT_NEAR(in_feet(water_below(leveed, 0.002, feet(5.0)).top_width), 50.0 + 60.0 * 5.0 / 9.0, 1e-9);
}

TEST(SurveyedSection, TakesTheSlopeOfItsReach) {
  EXPECT_EQ(slope_of(triangle(), 0.01), 0.002);
  EXPECT_EQ(slope_of(triangle({}), 0.01), 0.01);
  EXPECT_FALSE(slope_of(triangle({}), {}));
}

TEST(LaneByRating, RisesAsTheGaugeDoes) {
  const River river = with_rating();
  const Water run = water(WaterType::Run, 1.0, 4.0, 3.0, 1800);
  const Lane there = lane(run, Channel{}, flows(1800, 3150, 4500), surface_law_of(river, stem(30.0, 29.0))).value();
  EXPECT_NEAR(in_feet(there.depth.low), 4.0, 1e-9);
  EXPECT_NEAR(in_feet(there.depth.middle), 5.0, 1e-9);
  EXPECT_NEAR(in_feet(there.depth.high), 6.0, 1e-9);
  EXPECT_FALSE(there.beyond);
}

TEST(LaneByRating, SaysWhereTheRatingEnds) {
  const River river = with_rating();
  const Water run = water(WaterType::Run, 1.0, 4.0, 3.0, 1800);
  const PerCase<Discharge> high = flows(1800, 3150, 4600);
  const Lane there = lane(run, Channel{}, high, surface_law_of(river, stem(30.0, 29.0))).value();
  ASSERT_TRUE(there.beyond);
  EXPECT_EQ(there.beyond->of, KnownFlows::Of::Rating);
  EXPECT_NEAR(in_cubic_feet_per_second(there.beyond->to), 4500, 1e-6);
  EXPECT_DOUBLE_EQ(there.depth.middle.si(), lane(run, Channel{}, high).value().depth.middle.si());
}

TEST(LaneBySection, IsUnknownOverTheBanks) {
  River river = lantern_river();
  river.reaches[1].sections = {triangle()};
  Reach reach = stem(38.6, 37.4);
  reach.named_reach = 1;
  const Water run = water(WaterType::Run, 1.0, 4.0, 3.0, 300);
  const SurfaceLaw law = surface_law_of(river, reach);
  EXPECT_TRUE(lane(run, Channel{}, flows(200, 300, 400), law).has_value());
  EXPECT_THAT(lane(run, Channel{}, flows(200, 300, 90000), law).why_absent(), HasSubstr("over the banks"));
}

TEST(Lane, SaysWhatWasMeasuredOfAChannelThatIsAskedBeyondIt) {
  const std::vector<ChannelMeasurement> two{
      {cubic_feet_per_second(1000), feet(140), feet(2.6), mean_feet_per_second(2.75)},
      {cubic_feet_per_second(2000), feet(155), feet(3.5), mean_feet_per_second(3.69)}};
  const Water run = water(WaterType::Run, 1.0, 4.0, 3.0, 1800);
  EXPECT_FALSE(lane(run, channel_through(two), flows(1100, 1500, 1900)).value().beyond);
  const auto beyond = lane(run, channel_through(two), flows(1100, 1500, 2500)).value().beyond;
  ASSERT_TRUE(beyond);
  EXPECT_EQ(beyond->of, KnownFlows::Of::Channel);
  EXPECT_NEAR(in_cubic_feet_per_second(beyond->from), 1000, 1e-6);
  EXPECT_NEAR(in_cubic_feet_per_second(beyond->to), 2000, 1e-6);
}

// In the order of trust.
TEST(ChannelOfAReach, IsTheLawOfAGaugeThatSpeaksForIt) {
  River river = lantern_river();
  river.fitted_channels = {{"ferry", 10.0, 0.1, 0.2, 0.5, 0.5, 0.4, cubic_metres_per_second(5), cubic_metres_per_second(200)}};
  Reach near = stem(30.0, 29.0), far = stem(34.0, 33.0);
  EXPECT_DOUBLE_EQ(channel_of(river, near, cubic_feet_per_second(1800)).f, 0.5);
  EXPECT_FALSE(channel_of(river, near, cubic_feet_per_second(1800)).guessed);
  EXPECT_TRUE(channel_of(river, far, cubic_feet_per_second(1800)).guessed);  // 4 miles off and no note
  EXPECT_DOUBLE_EQ(channel_of(river, far, cubic_feet_per_second(1800)).f, 0.5);
  far.note = 2;
  EXPECT_DOUBLE_EQ(channel_of(river, far, cubic_feet_per_second(1800)).f, 0.40);
  near.named_reach = 0;
  EXPECT_DOUBLE_EQ(channel_of(river, near, cubic_feet_per_second(1800)).f, 0.40);
  river.reaches[0].channel.clear();
  river.reaches[0].sections = {triangle()};
  EXPECT_NEAR(channel_of(river, near, cubic_feet_per_second(1800)).f, 3.0 / 8.0, 1e-9);
}

}  // namespace
}  // namespace floatwright
