#include "adapters/in/files/judgement_file.hpp"

#include "tests/adapters/in/files/reading_support.hpp"

namespace floatwright {
namespace {

using testing::AllOf;
using testing::IsEmpty;
using testing::UnorderedElementsAre;

TEST(JudgementFile, KeepsWhatIsLeftOut) {
  const auto read = read_text(
      R"({ "zone": { "hold_height_m": 0.4, "reach_m": { "dry": 1.5 } }, "scatter": { "members": [-1, -0.5, 0, 0.5, 1] } })",
      read_judgement);
  EXPECT_THAT(read.problems, IsEmpty());
  EXPECT_EQ(read.value.zone.hold_height_m, 0.4);
  EXPECT_EQ(read.value.zone.reach_m.dry, 1.5);
  EXPECT_EQ(read.value.zone.reach_m.swing, Judgement{}.zone.reach_m.swing);
  EXPECT_EQ(read.value.scatter.members[0], -1.0);
  EXPECT_EQ(read.value.choice.tie, Judgement{}.choice.tie);
}

TEST(JudgementFile, RefusesUnknownNamesAndWrongLengths) {
  const auto read = read_text(
      "{ \"zone\": { \"hold_heigth_m\": 0.4,\n\"reach_by_clarity\": [ { \"at_fnu\": 5, \"share\": 1 } ] },\n"
      "\"scatter\": { \"members\": [1, 2] } }",
      read_judgement);
  EXPECT_THAT(read.problems, UnorderedElementsAre(StandsAt(2, "/zone/reach_by_clarity"),
                                                  AllOf(StandsAt(1, "/zone/hold_heigth_m"), Mends("\"hold_height_m\"")),
                                                  StandsAt(3, "/scatter/members")));
}

TEST(JudgementFile, RefusesWrongTypesAndNumbersOutOfTheirLimits) {
  const auto read =
      read_text("{ \"choice\": { \"tie\": -1,\n\"least_seconds\": \"six\" },\n\"zone\": 7 }", read_judgement);
  EXPECT_THAT(read.problems, UnorderedElementsAre(StandsAt(1, "/choice/tie"), StandsAt(2, "/choice/least_seconds"),
                                                  StandsAt(3, "/zone")));
  EXPECT_EQ(read.value.choice.tie, Judgement{}.choice.tie);
}

TEST(JudgementFile, RefusesATableThatRunsBackwards) {
  const auto read = read_text(
      "{ \"pace\": { \"swim_by_temperature\": [ { \"at_c\": 4, \"share\": 1 }, { \"at_c\": 3, \"share\": 1 },"
      "{ \"at_c\": 5, \"share\": 1 }, { \"at_c\": 6, \"share\": 1 } ] } }",
      read_judgement);
  EXPECT_THAT(read.problems, UnorderedElementsAre(StandsAt(1, "/pace/swim_by_temperature/1/at_c")));
}

}  // namespace
}  // namespace floatwright
