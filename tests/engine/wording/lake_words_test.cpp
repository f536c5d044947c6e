// What is said of a lake by its profile. Limits of warm and cold water are those of rivers (engine/trip/heat.hpp); water is
// densest at 3.98 C (CIPM formula, Tanaka et al. 2001, from memory), so that winter has the colder water on top.
#include "engine/wording/lake_words.hpp"

#include <gmock/gmock.h>

namespace floatwright {
namespace {

using ::testing::AllOf;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

LakeAsked asked(const std::vector<std::pair<double, double>>& feet_and_fahrenheit) {
  Lake lake;
  lake.id = "mirror";
  lake.name = "Mirror Lake";
  for (const auto& [depth, warmth] : feet_and_fahrenheit) lake.profile.push_back({feet(depth), fahrenheit(warmth)});
  if (!lake.profile.empty()) lake.profile_on = std::chrono::year{2027} / 5 / 9;
  const auto layer = layer_to_fish(lake);
  return {lake, layer};
}

std::string words(const std::vector<std::pair<double, double>>& profile) { return lake_words(asked(profile), UnitSystem::Us); }
std::vector<std::string> cautions(const std::vector<std::pair<double, double>>& profile) {
  return lake_cautions(asked(profile), UnitSystem::Us);
}

TEST(LakeWords, NameTheLayerInTheReadersUnits) {
  const auto mild = asked({{0, 58}, {20, 52}, {40, 48}});
  EXPECT_THAT(lake_words(mild, UnitSystem::Us), AllOf(HasSubstr("50 to 61 F"), HasSubstr("profile of 9 May 2027")));
  EXPECT_THAT(lake_words(mild, UnitSystem::Metric), HasSubstr("10 to 16 C"));
  EXPECT_THAT(lake_cautions(mild, UnitSystem::Us), IsEmpty());
}

TEST(LakeWords, TellOfAWinterLakeWhereItIsWarmest) {
  const std::vector<std::pair<double, double>> winter{{0, 34}, {10, 37}, {40, 39}};
  EXPECT_THAT(words(winter), AllOf(HasSubstr("no water of 50 to 61 F"), HasSubstr("the warmest is 39 F at 40 ft"),
                                   HasSubstr("under colder water, as in winter")));
  EXPECT_THAT(cautions(winter), AllOf(Contains(HasSubstr("life jackets ON")), Contains(HasSubstr("Nothing here says that ice bears"))));
}

TEST(LakeWords, OfACoolSpringLakeDoNotSpeakOfIce) {
  const std::vector<std::pair<double, double>> spring{{0, 46}, {30, 42}};
  EXPECT_THAT(words(spring), AllOf(HasSubstr("the warmest is 46 F at the top"), Not(HasSubstr("winter"))));
  EXPECT_THAT(cautions(spring), ElementsAre(HasSubstr("life jackets ON")));
}

TEST(LakeWords, OfAWarmShallowLakeSayWhereItIsCoolestAndToLeaveTheTrout) {
  const std::vector<std::pair<double, double>> pond{{0, 74}, {8, 68}};
  EXPECT_THAT(words(pond), HasSubstr("the coolest is 68 F at 8 ft"));
  EXPECT_THAT(cautions(pond), ElementsAre(AllOf(HasSubstr("TOO WARM TO FISH FOR TROUT"), HasSubstr("74 F"), HasSubstr("limit 70 F"))));
}

// The layer is cool, but a fish is drawn up through what lies over it.
TEST(LakeWords, WarnOfWarmWaterOverACoolLayer) {
  const std::vector<std::pair<double, double>> summer{{0, 68}, {15, 66}, {25, 54}, {50, 46}};
  EXPECT_THAT(words(summer), HasSubstr("fish 19"));
  EXPECT_THAT(cautions(summer), ElementsAre(AllOf(HasSubstr("land fish quickly"), HasSubstr("limit 67 F"))));
}

TEST(LakeWords, WithoutAProfileAskForAMeasurement) {
  EXPECT_THAT(words({}), AllOf(HasSubstr("no temperature profile"), HasSubstr("counting")));
  EXPECT_THAT(cautions({}), ElementsAre(AllOf(HasSubstr("measure before you launch"), HasSubstr("50 F"), HasSubstr("70 F"))));
}

}  // namespace
}  // namespace floatwright
