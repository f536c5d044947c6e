// The shape that is drawn is the line's own: as long as the line, as deep as the solver says.
#include "engine/sinking/line_shape.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/sinking/indicator.hpp"
#include "tests/engine/tackle/rack.hpp"

namespace floatwright {
namespace {

const Tackle kTackle = rack::tackle();
const TabledWater kWater = *tabled_water(metres(1.5), surface_metres_per_second(0.9), {}, celsius(10.0));

CastSetting setting(std::optional<SetLeader> leader = std::nullopt) {
  static const DriftLimits limits;
  return {kWater, Speed{}, metres(12.0), feet(9.0), limits, leader};
}
Rig rig(std::size_t line, std::size_t fly) { return {line, std::nullopt, fly, Mass{}}; }
Technique swing() { return {Method::Swing, Mending::Tight, Duration{}, Speed{}, Platform::Anchored}; }
Technique strip() { return {Method::Strip, Mending::Tight, seconds(3.0), metres_per_second(0.3), Platform::Anchored}; }
Technique indicator() { return {Method::Indicator, Mending::Tight, Duration{}, Speed{}, Platform::Anchored}; }

double length_of(const LineShape& shape) {  // m
  double sum = 0.0;
  for (std::size_t i = 1; i < shape.points.size(); ++i)
    sum += std::hypot((shape.points[i].away - shape.points[i - 1].away).si(),
                      (shape.points[i].depth - shape.points[i - 1].depth).si());
  return sum;
}

TEST(LineShape, OfASwingIsAsLongAsTheCast) {
  const auto shape = line_shape(kTackle, rig(rack::kTip5, rack::kWeighted), swing(), setting(), metres(0.8));
  ASSERT_TRUE(shape) << shape.why_absent();
  EXPECT_NEAR(length_of(*shape) + shape->on_top.si(), 12.0, 0.05);  // chords are shorter than the line by that little
  EXPECT_NEAR(shape->points.front().depth.si(), 0.0, 0.01);
}

// The depth wanted is one that the fly passes: the moment found is nearer to it than a tenth of a metre.
TEST(LineShape, IsOfTheMomentAtWhichTheFlyIsAsDeepAsWanted) {
  const Rig heavy = rig(rack::kTip7, rack::kWeighted);
  const auto deep = line_shape(kTackle, heavy, swing(), setting(), metres(100.0));
  const auto shallow = line_shape(kTackle, heavy, swing(), setting(), metres(0.0));
  ASSERT_TRUE(deep && shallow);
  const Length between = (deep->points.back().depth + shallow->points.back().depth) * 0.5;
  EXPECT_GT(deep->points.back().depth, shallow->points.back().depth);
  EXPECT_NEAR(line_shape(kTackle, heavy, swing(), setting(), between)->points.back().depth.si(), between.si(), 0.1);
}

TEST(LineShape, OfAStripComesInWithTheLine) {
  const auto shape = line_shape(kTackle, rig(rack::kTip5, rack::kWeighted), strip(), setting(), metres(0.8));
  ASSERT_TRUE(shape) << shape.why_absent();
  EXPECT_LE(length_of(*shape) + shape->on_top.si(), 12.0 + 0.01);
}

TEST(LineShape, UnderAnIndicatorIsTheLeaderAsItDrifts) {
  const Length leader = feet(4.5);
  const Rig nymph = rig(rack::kNymphTaper, rack::kHeavyNymph);
  const auto shape = line_shape(kTackle, nymph, indicator(), setting(SetLeader{leader, {}}), Length{});
  ASSERT_TRUE(shape) << shape.why_absent();
  EXPECT_NEAR(length_of(*shape), leader.si(), 1e-6);
  const auto hung = hung_weight(kTackle.flies[rack::kHeavyNymph], Mass{}, kWater.properties);
  const CastWater water{kWater.depth, kWater.surface_speed, {}, Speed{}, celsius(10.0)};
  EXPECT_NEAR(shape->points.back().depth.si(), indicator_drift(leader, *hung, water).fly_depth.si(), 1e-6);
  EXPECT_NEAR((shape->on_top + leader).si(), 12.0, 1e-9);
}

TEST(LineShape, OfADryFlyIsNotDrawn) {
  Technique dry = swing();
  dry.method = Method::Dry;
  EXPECT_FALSE(line_shape(kTackle, rig(rack::kDoubleTaper, rack::kDry), dry, setting(), Length{}));
}

}  // namespace
}  // namespace floatwright
