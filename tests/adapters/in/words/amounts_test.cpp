#include "adapters/in/words/amounts.hpp"

#include <gmock/gmock.h>

namespace floatwright {
namespace {

using testing::HasSubstr;

constexpr Allowed<Length> kDepths{metres(0.1), metres(30.0)};

TEST(Amounts, TakeBothEndsOfTheirRange) {
  EXPECT_DOUBLE_EQ(length_in({"--depth", "5 ft"}, "0.1 m", kDepths)->si(), 0.1);
  EXPECT_DOUBLE_EQ(length_in({"--depth", "5 ft"}, "30 m", kDepths)->si(), 30.0);
  EXPECT_DOUBLE_EQ(in_celsius(*temperature_in({"--temperature", "50 F"}, "32 F", {celsius(0.0), celsius(30.0)})), 0.0);
  EXPECT_DOUBLE_EQ(duration_in({"--count", "6 s"}, "0 s", {Duration{}, minutes(5.0)})->si(), 0.0);
}

TEST(Amounts, SayWhatMayStandThereInBothSystems) {
  const auto refused = length_in({"--depth", "5 ft"}, "31 m", kDepths);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().exit_code, 64);
  EXPECT_THAT(refused.error().what,
              testing::AllOf(HasSubstr("--depth"), HasSubstr("31 m"), HasSubstr("98.4 ft"), HasSubstr("30 m")));
  EXPECT_FALSE(length_in({"--depth", "5 ft"}, "-1 m", kDepths));
}

TEST(Amounts, RefuseAnotherKindOrMoreThanOne) {
  for (const char* text : {"3 ft/s", "3 ft 4 ft", "3 to 4 ft", "deep", "about 3 ft", ""}) {
    const auto refused = length_in({"--depth", "5 ft"}, text, kDepths);
    ASSERT_FALSE(refused) << text;
    EXPECT_THAT(refused.error().what, HasSubstr("a length with its unit, such as \"5 ft\""));
  }
}

}  // namespace
}  // namespace floatwright
