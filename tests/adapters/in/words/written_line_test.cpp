#include "adapters/in/words/written_line.hpp"

#include <gmock/gmock.h>

namespace floatwright {
namespace {

using testing::HasSubstr;

WrittenLine written(std::string_view text) {
  const auto line = line_in("--line", text);
  EXPECT_TRUE(line) << text << ": " << (line ? "" : line.error().what);
  return line.value_or(WrittenLine{});
}

TEST(WrittenLine, KnowsEveryKindOfLine) {
  const std::pair<const char*, LineKind> kinds[] = {
      {"floating", LineKind::Floating},
      {"weight-forward floating line", LineKind::Floating},
      {"floating nymph taper", LineKind::NymphTaper},
      {"double taper", LineKind::DoubleTaper},
      {"floating shooting head", LineKind::ShootingHead},
      {"floating with sinking leader 10 ft 4 in/s", LineKind::FloatingWithSinkingLeader},
      {"sinking tip 12.5 ft 5 in/s", LineKind::SinkingTip},
      {"looped head, tip 10 ft 7 in/s", LineKind::LoopedHead},
      {"clear tip 12 ft 1.5 in/s", LineKind::ClearTip},
      {"full sinking line 3 in/s", LineKind::FullSinking},
      {"thin nymph line", LineKind::ThinNymphLine},
      {"mono rig", LineKind::MonoRig},
      {"sinking_tip 12.5 ft 5 in/s", LineKind::SinkingTip},
      {"WF-6-F", LineKind::Floating},
      {"DT-5-F", LineKind::DoubleTaper},
      {"WF-7-S 3 in/s", LineKind::FullSinking},
      {"WF-6-F/S 12.5 ft 5 in/s", LineKind::SinkingTip},
  };
  for (const auto& [text, kind] : kinds) EXPECT_EQ(written(text).line.kind, kind) << text;
}

TEST(WrittenLine, TakesTheEndsOfADensityCompensatedPart) {
  const Line line = written("sinking tip 15 ft 4 to 6 in/s").line;
  EXPECT_NEAR(in_inches_per_second(*line.sink_rate_butt), 4.0, 1e-12);
  EXPECT_NEAR(in_inches_per_second(*line.sink_rate_end), 6.0, 1e-12);
  EXPECT_NEAR(in_inches_per_second(*line.sink_rate), 5.0, 1e-12);
  EXPECT_NEAR(in_feet(*line.tip_length), 15.0, 1e-12);
}

// A level line sinks where weight in water and the drag of Cheng 2013 balance; sphere and cylinder checks have their
// own files. Worked values of such cylinders at 10 C: 1.0 mm of 1300 kg/m3 sinks 0.05337 m/s.
TEST(WrittenLine, ReckonsTheRateFromWeightAndDiameter) {
  // 1300 kg/m3 x pi/4 mm2 = 1.0210e-3 kg/m = 1.0210 g/m.
  const Line line = written("sinking tip 12.5 ft 1.0210 g/m 1.0 mm").line;
  EXPECT_NEAR(line.sink_rate->si(), 0.05337, 0.0003);
  EXPECT_TRUE(line.sinking_weight);
}

TEST(WrittenLine, PutsTheTipOfALoopedHeadOnItsLoop) {
  const WrittenLine head = written("looped head tip 10 ft 7 in/s");
  ASSERT_TRUE(head.tip);
  EXPECT_NEAR(in_feet(head.tip->length), 10.0, 1e-12);
  EXPECT_NEAR(in_inches_per_second(head.tip->sink_rate), 7.0, 1e-12);
  EXPECT_FALSE(head.line.tip_length);
}

TEST(WrittenLine, TakesItsNumberFromTheCodeOrFromWords) {
  EXPECT_EQ(written("WF-8-F").line.line_number, 8);
  EXPECT_EQ(written("floating 5-wt").line.line_number, 5);
  EXPECT_EQ(written("floating").line.line_number, 6) << "the usual one";
}

TEST(WrittenLine, SaysWhatIsMissingOrTooMuch) {
  const std::pair<const char*, const char*> wrong[] = {
      {"", "what kind of line"},
      {"sinkin tip 12.5 ft 5 in/s", "nearest kind is \"sinking tip\""},
      {"sinking tip 5 in/s", "how long its sinking part is"},
      {"sinking tip 12.5 ft", "how fast it sinks"},
      {"sinking tip 12.5 5 in/s", "no unit"},
      {"sinking tip 0 ft 5 in/s", "thick"},
      {"sinking tip 12.5 ft 0 in/s", "lines sink at"},
      {"sinking tip 12.5 ft -5 in/s", "lines sink at"},
      {"sinking tip 12.5 ft 90 in/s", "lines sink at"},
      {"sinking tip 200 ft 5 in/s", "0.3 to 30 m"},
      {"floating 5 in/s", "floats all along"},
      {"full sinking 30 ft 3 in/s", "sinks all along"},
      {"sinking tip 12.5 ft 1.0 mm", "what a foot of it weighs"},
      {"sinking tip 12.5 ft 3 gr/ft 1.5 mm", "floats"},
      {"sinking tip 12.5 ft 5 in/s 3 in/s", "two sink rates"},
      {"sinking tip 12.5 ft 13 ft 5 in/s", "one length"},
      {"sinking tip 12.5 ft 5 in/s 50 F", "says nothing of a line"},
      {"XX-6-Q", "no line's code"},
      {"floating 22-wt", "1 to 15"},
  };
  for (const auto& [text, why] : wrong) {
    const auto line = line_in("--line", text);
    ASSERT_FALSE(line) << text;
    EXPECT_EQ(line.error().exit_code, 64);
    EXPECT_THAT(line.error().what, HasSubstr(why)) << text;
  }
}

}  // namespace
}  // namespace floatwright
