#include <gmock/gmock.h>

#include "engine/tackle/tackle.hpp"
#include "tests/engine/tackle/rack.hpp"

namespace floatwright {
namespace {

using testing::HasSubstr;

std::string why_not(const Tackle& tackle, const Rig& rig, Method method) {
  return rig_verdict(tackle, rig, method).ruled_out.value_or("");
}
std::string why_not(const Rig& rig, Method method) { return why_not(rack::tackle(), rig, method); }

TEST(Rigs, ALineTwoNumbersOverItsRodIsOut) {
  Tackle tackle = rack::tackle();
  tackle.lines[rack::kFloating].line_number = 7;
  EXPECT_EQ(why_not(tackle, {rack::kFloating, {}, rack::kWeighted, {}}, Method::Swing), "");
  tackle.lines[rack::kFloating].line_number = 8;
  EXPECT_THAT(why_not(tackle, {rack::kFloating, {}, rack::kWeighted, {}}, Method::Swing),
              HasSubstr("too heavy for the number 6 rod"));
}

TEST(Rigs, ALineOnNoRodIsOut) {
  Tackle tackle = rack::tackle();
  tackle.lines[rack::kFloating].on_rod.clear();
  EXPECT_THAT(why_not(tackle, {rack::kFloating, {}, rack::kWeighted, {}}, Method::Swing), HasSubstr("no rod"));
}

TEST(Rigs, ALoopedHeadSwingsWithATipThatItCarries) {
  EXPECT_EQ(why_not({rack::kLooped, 0, rack::kWeighted, {}}, Method::Swing), "");
  EXPECT_THAT(why_not({rack::kLooped, 1, rack::kWeighted, {}}, Method::Swing), HasSubstr("heavier than"));
  EXPECT_THAT(why_not({rack::kLooped, {}, rack::kWeighted, {}}, Method::Swing), HasSubstr("needs a tip"));
  EXPECT_THAT(why_not({rack::kLooped, 0, rack::kWeighted, {}}, Method::Strip), HasSubstr("for the swing"));
  EXPECT_THAT(why_not({rack::kTip5, 0, rack::kWeighted, {}}, Method::Swing), HasSubstr("no loop"));
}

TEST(Rigs, AFlyWithoutMassIsOut) {
  Tackle tackle = rack::tackle();
  tackle.flies[rack::kWeighted].mass.reset();
  EXPECT_THAT(why_not(tackle, {rack::kTip5, {}, rack::kWeighted, {}}, Method::Swing), HasSubstr("No mass"));
}

// 15 % and 10 % of a number 6 line's 160 grains (10.37 g) are 1.56 g and 1.04 g.
TEST(Rigs, AFlyOverFifteenPerCentOfTheLineIsOutAndOverTenHardToCast) {
  Tackle tackle = rack::tackle();
  const auto verdict = [&](double mass) {
    tackle.flies[rack::kWeighted].mass = grams(mass);
    return rig_verdict(tackle, {rack::kTip5, {}, rack::kWeighted, {}}, Method::Swing);
  };
  EXPECT_FALSE(verdict(1.0).warning);
  EXPECT_EQ(verdict(1.1).warning, "hard to cast");
  EXPECT_FALSE(verdict(1.5).ruled_out);
  EXPECT_THAT(verdict(1.6).ruled_out.value_or(""), HasSubstr("15 %"));
}

TEST(Rigs, AThinLineNeedsWeightAndHasNoFifteenPerCentRule) {
  EXPECT_THAT(why_not({rack::kThin, {}, rack::kNymph, {}}, Method::TightLine), HasSubstr("0.4 g"));
  EXPECT_EQ(why_not({rack::kThin, {}, rack::kNymph, grams(0.2)}, Method::TightLine), "");
  EXPECT_EQ(why_not({rack::kThin, {}, rack::kHeavyNymph, grams(2.0)}, Method::TightLine), "");
}

// Common practice, no source: nobody throws a streamer or a dry fly on a line without weight or taper.
TEST(Rigs, AThinLineIsFishedTightOnly) {
  for (const Method method : {Method::Swing, Method::Strip, Method::Indicator, Method::Dry})
    for (const Rig& rig : rigs_for(rack::tackle(), method)) EXPECT_NE(rig.line, std::size_t{rack::kThin});
}

TEST(Rigs, AnIndicatorGoesOnFloatingNymphTaperAndDoubleTaperLinesOnly) {
  const Tackle tackle = rack::tackle();
  for (const Rig& rig : rigs_for(tackle, Method::Indicator)) {
    const LineKind kind = tackle.lines[rig.line].kind;
    EXPECT_TRUE(kind == LineKind::Floating || kind == LineKind::NymphTaper || kind == LineKind::DoubleTaper);
  }
  EXPECT_THAT(why_not({rack::kTip5, {}, rack::kNymph, {}}, Method::Indicator), HasSubstr("An indicator goes on"));
}

TEST(Rigs, NoDryFlyOnALineThatSinks) {
  for (const std::size_t line : {rack::kTip5, rack::kFull, rack::kSinkingLeader}) {
    EXPECT_THAT(why_not({line, {}, rack::kDry, {}}, Method::Dry), HasSubstr("drown"));
  }
  EXPECT_EQ(why_not({rack::kDoubleTaper, {}, rack::kDry, {}}, Method::Dry), "");
}

TEST(Rigs, ShotIsOfferedInSumsOfAtMostTwoPiecesUnderAnIndicator) {
  const Tackle tackle = rack::tackle();
  std::vector<double> shots;
  for (const Rig& rig : rigs_for(tackle, Method::Indicator)) {
    if (rig.line == rack::kFloating && rig.fly == rack::kNymph) shots.push_back(in_grams(rig.shot));
  }
  EXPECT_THAT(shots, testing::ElementsAre(0.0, testing::DoubleNear(0.2, 1e-9), testing::DoubleNear(0.4, 1e-9),
                                          testing::DoubleNear(0.6, 1e-9), testing::DoubleNear(0.8, 1e-9)));
  for (const Rig& rig : rigs_for(tackle, Method::Swing)) EXPECT_EQ(rig.shot, Mass{});
}

TEST(Rigs, EveryMethodHasRigsOnAFullRack) {
  for (const Method method : {Method::Swing, Method::Strip, Method::Indicator, Method::TightLine, Method::Dry}) {
    EXPECT_FALSE(rigs_for(rack::tackle(), method).empty());
  }
}

TEST(SinkingPart, IsTheTipTheLoopedTipTheWholeLineOrNothing) {
  const Tackle tackle = rack::tackle();
  EXPECT_NEAR(in_feet(sinking_part(tackle, {rack::kTip5, {}, 0, {}}).length), 12.5, 1e-9);
  EXPECT_NEAR(in_inches_per_second(sinking_part(tackle, {rack::kLooped, 0, 0, {}}).sink_rate), 3.0, 1e-9);
  EXPECT_TRUE(sinking_part(tackle, {rack::kFull, {}, 0, {}}).whole_line);
  EXPECT_EQ(sinking_part(tackle, {rack::kFloating, {}, 0, {}}).length, Length{});
}

TEST(SinkingPart, OfADensityCompensatedTipHasTheMeanOfItsEnds) {
  Tackle tackle = rack::tackle();
  Line& line = tackle.lines[rack::kTip5];
  line.sink_rate.reset();
  line.sink_rate_butt = inches_per_second(5.5), line.sink_rate_end = inches_per_second(6.5);
  const SinkingPart part = sinking_part(tackle, {rack::kTip5, {}, 0, {}});
  EXPECT_NEAR(in_inches_per_second(part.sink_rate), 6.0, 1e-9);
  EXPECT_GT(part.end, part.butt);
}

}  // namespace
}  // namespace floatwright
