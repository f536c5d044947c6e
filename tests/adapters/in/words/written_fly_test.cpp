#include "adapters/in/words/written_fly.hpp"

#include <gmock/gmock.h>

#include "engine/tackle/usual_flies.hpp"

namespace floatwright {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;

TEST(WrittenFly, IsAUsualClassByItsName) {
  for (const FlyClass& usual : usual_flies()) {
    const auto fly = fly_in("--fly", usual.name);
    ASSERT_TRUE(fly) << usual.name;
    EXPECT_EQ(fly->mass, usual.mass);
    EXPECT_EQ(fly->sink_rate, usual.sink_rate);
  }
}

TEST(WrittenFly, TakesItsOwnMassAndRateOverThoseOfItsClass) {
  const auto fly = fly_in("--fly", "weighted streamer 0.7 g");
  ASSERT_TRUE(fly);
  EXPECT_NEAR(in_grams(*fly->mass), 0.7, 1e-12);
  EXPECT_GT(fly->sink_rate, Speed{});
}

TEST(WrittenFly, MayBeAMassAndARateAlone) {
  const auto fly = fly_in("--fly", "0.6 g 4 in/s");
  ASSERT_TRUE(fly);
  EXPECT_NEAR(in_grams(*fly->mass), 0.6, 1e-12);
  EXPECT_NEAR(in_inches_per_second(fly->sink_rate), 4.0, 1e-12);
  EXPECT_THAT(fly->uses, Contains(Method::Swing));
}

TEST(WrittenFly, ThatFloatsIsFishedDry) {
  EXPECT_THAT(fly_in("--fly", "0.1 g 0 in/s")->uses, ElementsAre(Method::Dry));
}

TEST(WrittenFly, SaysWhatItLacks) {
  const std::pair<const char*, const char*> wrong[] = {{"weighty streamer", "nearest is \"weighted streamer\""},
                                                       {"", "its mass and sink rate"},
                                                       {"0.6 g", "its mass and sink rate"},
                                                       {"4 in/s", "its mass and sink rate"},
                                                       {"0.6 4 in/s", "no unit"},
                                                       {"0 g 4 in/s", "0.001 to 20 g"},
                                                       {"0.6 g 5 m/s", "1 m/s"},
                                                       {"0.6 g 4 in/s 3 ft", "says nothing of a fly"}};
  for (const auto& [text, why] : wrong) {
    const auto fly = fly_in("--fly", text);
    ASSERT_FALSE(fly) << text;
    EXPECT_EQ(fly.error().exit_code, 64);
    EXPECT_THAT(fly.error().what, HasSubstr(why)) << text;
  }
}

}  // namespace
}  // namespace floatwright
