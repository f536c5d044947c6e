#include "adapters/in/files/tackle_file.hpp"

#include <fstream>
#include <iterator>

#include "tests/adapters/in/files/reading_support.hpp"

namespace floatwright {
namespace {

using testing::AllOf;
using testing::DoubleNear;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

Tackle all_listed(const LocatedJson& root, FileReading& reading) { return read_tackle(root, reading).all; }

ReadAnswer<Tackle> with_line(const std::string& keys) {
  return read_text(R"({ "schema_version": 1, "rods": [ { "id": "six", "line_number": 6, "length_ft": 9 } ],
"lines": [ { "id": "a", "on_rod": "six", "code": "WF-6-F/S", )" +
                       keys + R"( } ],
"flies": [ { "id": "f", "use": ["swing"], "sink_rate_in_s": 2 } ], "shot_gr": [5, 10] })",
                   all_listed);
}

TEST(TackleFile, ReadsTheDemoWithoutAProblem) {
  std::ifstream file(FLOATWRIGHT_SOURCE_DIR "/config/demo/tackle.json");
  const auto read = read_text(std::string(std::istreambuf_iterator<char>(file), {}), all_listed);
  EXPECT_THAT(read.problems, IsEmpty());
  EXPECT_THAT(read.value.rods, SizeIs(5));
  EXPECT_THAT(read.value.lines, SizeIs(12));
  EXPECT_EQ(read.value.lines[7].line_number, 7);
  EXPECT_TRUE(read.value.lines[1].spare_spool);
  EXPECT_THAT(read.value.flies[0].uses, ElementsAre(Method::Swing, Method::Strip));
}

TEST(TackleFile, TakesTheMeanOfTheTwoEndsOfADensityCompensatedTip) {
  const auto read =
      with_line(R"("kind": "sinking_tip", "tip_length_ft": 15, "sink_rate_butt_in_s": 5.5, "sink_rate_end_in_s": 6.5)");
  ASSERT_THAT(read.problems, IsEmpty());
  EXPECT_THAT(in_inches_per_second(*read.value.lines[0].sink_rate), DoubleNear(6.0, 1e-9));
}

TEST(TackleFile, RefusesOneEndAloneAndBothWays) {
  EXPECT_THAT(with_line(R"("kind": "sinking_tip", "sink_rate_butt_in_s": 5.5)").problems,
              ElementsAre(Mends("sink_rate_end_in_s")));
  EXPECT_THAT(with_line(R"("kind": "sinking_tip", "sink_rate_end_in_s": 5.5)").problems,
              ElementsAre(Mends("sink_rate_butt_in_s")));
  EXPECT_THAT(
      with_line(R"("kind": "sinking_tip", "sink_rate_in_s": 5, "sink_rate_butt_in_s": 5.5, "sink_rate_end_in_s": 6.5)")
          .problems,
      ElementsAre(Finds("at once")));
}

TEST(TackleFile, NamesTheNearestKindAndUse) {
  EXPECT_THAT(with_line(R"("kind": "sinking_tipp")").problems,
              ElementsAre(AllOf(StandsAt(2, "/lines/0/kind"), Mends("\"sinking_tip\""))));
}

// 1 grain = 64.79891 mg (NIST SP 811, Appendix B).
TEST(TackleFile, ReadsShotInEitherUnit) {
  const auto read = with_line(R"("kind": "floating")");
  ASSERT_THAT(read.value.shot, SizeIs(2));
  EXPECT_THAT(in_grams(read.value.shot[1]), DoubleNear(0.6479891, 1e-9));
}

TEST(TackleFile, RefusesNegativeLengthsAndRates) {
  EXPECT_THAT(with_line(R"("kind": "sinking_tip", "tip_length_ft": -10, "sink_rate_in_s": -4)").problems,
              ElementsAre(StandsAt(2, "/lines/0/tip_length_ft"), StandsAt(2, "/lines/0/sink_rate_in_s")));
}

}  // namespace
}  // namespace floatwright
