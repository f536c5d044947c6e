// American fly line standard (AFTMA 1961, now AFFTA), single-handed lines: mass of the first 30 ft without the level
// tip. Targets and ranges as in four of five reproductions read; codes as printed there.
#include <gtest/gtest.h>

#include "engine/tackle/line_code.hpp"

namespace floatwright {
namespace {

TEST(FlyLineStandard, TargetGrainsOfNumbersOneToFifteen) {
  const double targets[] = {60, 80, 100, 120, 140, 160, 185, 210, 240, 280, 330, 380, 450, 500, 550};
  for (int number = 1; number <= 15; ++number) {
    ASSERT_TRUE(standard_mass(number));
    EXPECT_NEAR(in_grains(*standard_mass(number)), targets[number - 1], 1e-9) << "number " << number;
  }
}

// Grams by the exact grain, 3 decimals.
TEST(FlyLineStandard, TargetsInGrams) {
  const std::pair<int, double> rows[] = {{5, 9.072},   {6, 10.368},  {7, 11.988},  {8, 13.608},
                                         {10, 18.144}, {12, 24.624}, {14, 32.399}, {15, 35.639}};
  for (const auto& [number, mass] : rows)
    EXPECT_NEAR(in_grams(*standard_mass(number)), mass, 6e-4) << "number " << number;
}

TEST(FlyLineStandard, HasNoNumberBeyondOneToFifteen) {
  EXPECT_FALSE(standard_mass(0));
  EXPECT_FALSE(standard_mass(16));
}

// Example of the standard: DT-9-F weighs 230 to 250 grains.
TEST(FlyLineStandard, DoubleTaperNineFloating) {
  const auto code = read_line_code("DT-9-F");
  ASSERT_TRUE(code);
  EXPECT_EQ(*code, (LineCode{Taper::DoubleTaper, 9, LineFunction::Floating}));
  const double mass = in_grains(*standard_mass(code->number));
  EXPECT_GE(mass, 230.0);
  EXPECT_LE(mass, 250.0);
}

TEST(FlyLineStandard, CodesOfEveryTaperAndFunction) {
  EXPECT_EQ(read_line_code("L-4-F")->taper, Taper::Level);
  EXPECT_EQ(read_line_code("ST-7-S")->taper, Taper::SingleTaper);
  EXPECT_EQ(read_line_code("WF-7-I")->function, LineFunction::Intermediate);
  EXPECT_EQ(read_line_code("WF-6-F/S")->function, LineFunction::FloatingWithSinkingTip);
  EXPECT_EQ(read_line_code("WF-6-F/T")->function, LineFunction::FloatingWithSinkingTip);
  EXPECT_EQ(read_line_code("wf12f")->number, 12);
}

TEST(FlyLineStandard, WhatIsNoCodeDoesNotRead) {
  for (const char* text :
       {"", "WF", "6", "WF-6", "6-F", "WF-0-F", "WF-16-F", "WF-123-F", "XX-6-F", "WF-6-Q", "WF-6-6-F"}) {
    EXPECT_FALSE(read_line_code(text)) << text;
  }
}

}  // namespace
}  // namespace floatwright
