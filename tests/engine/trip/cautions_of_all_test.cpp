// What is told of a day without a float: the cautions of all its stretches.
#include "engine/trip/cautions_of_all.hpp"

#include <gmock/gmock.h>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

using ::testing::SizeIs;

Caution cold(double f) {
  Caution caution{.kind = CautionKind::ColdWater, .weight = 86};
  caution.temperature = fahrenheit(f);
  return caution;
}

Caution wading(const std::string& where, double product) {
  Caution caution{.kind = CautionKind::Wading, .weight = 84, .where = where};
  caution.product = DepthTimesSpeed::from_si(product);
  caution.product_limit = DepthTimesSpeed::from_si(0.6);
  caution.depth = feet(2.0);
  caution.depth_limit = feet(4.0);
  return caution;
}

Caution heat(CautionKind kind, const std::string& where, int hour) {
  Caution caution{.kind = kind, .weight = 76, .where = where};
  caution.from = Instant{std::chrono::hours{hour}};
  return caution;
}

std::vector<Caution> of(std::vector<Caution> first, std::vector<Caution> second) {
  std::vector<PlannedStretch> stretches(2);
  stretches[0].cautions = std::move(first);
  stretches[1].cautions = std::move(second);
  return cautions_of_all(stretches);
}

TEST(CautionsOfAll, TellOfTheTripTheWorstOnce) {
  const auto water = of({cold(55.0)}, {cold(48.0)});
  ASSERT_THAT(water, SizeIs(1));
  EXPECT_NEAR(in_fahrenheit(*water[0].temperature), 48.0, 1e-9);

  const auto waded = of({wading("Mill run", 0.4), wading("Long pool", 0.9)}, {wading("Ferry flat", 0.5)});
  ASSERT_THAT(waded, SizeIs(2));
  EXPECT_EQ(waded[0].where, "Ferry flat") << "the most within the limits";
  EXPECT_EQ(waded[1].where, "Long pool") << "beyond them";

  const auto warm = of({heat(CautionKind::HeatStop, "Mill run", 14), heat(CautionKind::HeatCaution, "Mill run", 11)},
                       {heat(CautionKind::HeatStop, "Long pool", 12)});
  ASSERT_THAT(warm, SizeIs(2)) << "a stop says all that a caution says";
  EXPECT_EQ(warm[0].where, "Long pool") << "the first";
  EXPECT_EQ(warm[1].where, "Mill run");
}

TEST(CautionsOfAll, TellOfEachPlaceOnceHeaviestFirst) {
  const Caution ledge{.kind = CautionKind::Portage, .weight = 100, .where = "Boulder garden", .about = "The Ledge"};
  const Caution shelf{.kind = CautionKind::Portage, .weight = 100, .where = "Willow run", .about = "The Shelf"};
  const auto all = of({cold(55.0), ledge}, {ledge, shelf});
  ASSERT_THAT(all, SizeIs(3));
  EXPECT_EQ(all[0].about, "The Ledge");
  EXPECT_EQ(all[1].about, "The Shelf");
  EXPECT_EQ(all[2].kind, CautionKind::ColdWater);
}

TEST(CautionsOfAll, AreNoneWhereNothingWasLookedAt) { EXPECT_THAT(cautions_of_all({}), SizeIs(0)); }

}  // namespace
}  // namespace floatwright
