#include "engine/choice/lake_layer.hpp"

#include <gtest/gtest.h>

namespace floatwright {
namespace {

Lake lake(std::vector<std::pair<double, double>> metres_and_celsius) {
  Lake made;
  for (const auto& [depth, warmth] : metres_and_celsius) made.profile.push_back({metres(depth), celsius(warmth)});
  return made;
}

// A summer's lake: warm above, a drop from 5 to 8 m, cold below.
const std::vector<std::pair<double, double>> kSummer{{0, 20}, {5, 18}, {8, 12}, {15, 8}};

TEST(LakeLayer, IsTheCoolWaterDownToTheEndOfTheSteepestDrop) {
  const auto layer = layer_to_fish(lake(kSummer));
  ASSERT_TRUE(layer);
  EXPECT_NEAR(layer->from.si(), 6.0, 1e-9) << "16 C is a third of the way from 18 to 12 C";
  EXPECT_NEAR(layer->to.si(), 8.0, 1e-9);
}

TEST(LakeLayer, GoesOnDownWhereNothingDrops) {
  const auto layer = layer_to_fish(lake({{0, 14}, {10, 12}, {20, 8}}));
  ASSERT_TRUE(layer);
  EXPECT_NEAR(layer->from.si(), 0.0, 1e-9);
  EXPECT_NEAR(layer->to.si(), 15.0, 1e-9) << "10 C half way from 12 to 8 C";
}

TEST(LakeLayer, EndsAtTheWeed) {
  Lake weedy = lake({{0, 14}, {10, 12}});
  weedy.weed_top = metres(3.0);
  EXPECT_NEAR(layer_to_fish(weedy)->to.si(), 3.0, 1e-9);
}

TEST(LakeLayer, IsNotMadeUpWithoutAProfile) {
  EXPECT_FALSE(layer_to_fish(Lake{}));
  EXPECT_FALSE(layer_to_fish(lake({{0, 8}, {10, 6}}))) << "nowhere so warm";
  Lake weedy = lake(kSummer);
  weedy.weed_top = metres(4.0);
  EXPECT_FALSE(layer_to_fish(weedy)) << "the cool water lies in the weed";
}

}  // namespace
}  // namespace floatwright
