#include <gmock/gmock.h>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/payload.hpp"
#include "adapters/in/gauges/usgs_water_data/read_answer.hpp"
#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"

namespace floatwright {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

GaugeAnswer answer_of(const std::string& bytes) { return answer_or_told(read_payload(bytes, "a.json")); }

const std::string kNoonText = "2026-05-13T12:00:00+00:00";

TEST(UsgsWaterData, TakesValuesAsTextOrAsNumbers) {
  for (const char* value : {"\"1850\"", "1850", "1850.0"}) {
    const auto answer = answer_of(features(feature(kNoonText, value)));
    ASSERT_EQ(answer.series.size(), 1u);
    EXPECT_DOUBLE_EQ(answer.series[0].readings.at(0).si.value(), 1850.0 * kCubicMetresPerCubicFoot) << value;
    EXPECT_EQ(answer.series[0].source, "a.json");
  }
}

TEST(UsgsWaterData, TakesNullEmptyAndTheOldCodeForMissing) {
  for (const char* value : {"null", "\"\"", "\"-999999\"", "-999999", "-999999.0"}) {
    const auto answer = answer_of(features(feature(kNoonText, value)));
    ASSERT_EQ(answer.series.size(), 1u) << value;
    EXPECT_FALSE(answer.series[0].readings.at(0).si) << value;
  }
}

TEST(UsgsWaterData, TakesQualifiersAsListTextOrNull) {
  for (const char* qualifier : {R"(["ESTIMATED"])", R"("ESTIMATED")", R"("['ESTIMATED']")"}) {
    const auto answer = answer_of(features(feature(kNoonText, "1", std::string{R"(,"qualifier":)"} + qualifier)));
    EXPECT_EQ(answer.series.at(0).readings.at(0).marks, (Marks{Mark::Provisional, Mark::Estimated})) << qualifier;
  }
  const auto answer = answer_of(features(feature(kNoonText, "1", R"(,"qualifier":null)")));
  EXPECT_EQ(answer.series.at(0).readings.at(0).marks, (Marks{Mark::Provisional}));
}

TEST(UsgsWaterData, LeavesOutARowThatCannotBeReadAndNamesItsPlace) {
  const auto answer =
      answer_of(features(feature(kNoonText, "\"12.5cfs\"") + "," + feature("2026-02-30T00:00:00Z", "1") + "," +
                         feature("2026-05-13T12:15:00Z", "\"1e999\"") + "," + feature("2026-05-13T12:30:00Z", "true") +
                         "," + feature("2026-05-13T12:45:00Z", "\"7\"")));
  ASSERT_EQ(answer.series.size(), 1u);
  EXPECT_EQ(answer.series[0].readings.size(), 1u);
  const std::string name = "series " + kSeriesId + ": 1 row left out: ";
  EXPECT_THAT(answer.notes,
              ElementsAre(name + "the time can't be read, first \"2026-02-30T00:00:00Z\" (first at "
                                 "/features/1/properties/time)",
                          name + "the value \"12.5cfs\" is not a finite number (first at /features/0/properties/value)",
                          name + "the value \"1e999\" is not a finite number (first at /features/2/properties/value)",
                          name + "the value is of the wrong kind (boolean) (first at /features/3/properties/value)"));
}

TEST(UsgsWaterData, TellsAFewOfManyReasonsAndCodes) {
  std::string rows;
  for (int i = 0; i < 100; ++i) {
    const std::string word = "w" + std::to_string(i);
    rows += (rows.empty() ? "" : ",") + feature(kNoonText, "\"" + word + "\"") + "," +
            feature(kNoonText, "1", R"(,"qualifier":[")" + word + R"("])");
  }
  const auto answer = answer_of(features(rows));
  EXPECT_THAT(answer.notes, Contains(HasSubstr("92 rows left out: for more reasons than are told here")));
  EXPECT_THAT(answer.notes, Contains(HasSubstr("and 80 more")));
  EXPECT_LT(answer.notes.size(), 12u);
}

TEST(UsgsWaterData, KeepsTheRowChangedLastOfTwoThatDiffer) {
  const std::string older = feature(kNoonText, "5", R"(,"last_modified":"2026-05-13T13:00:00.5+00:00")");
  const std::string newer = feature(kNoonText, "6", R"(,"last_modified":"2026-05-14T13:00:00.5+00:00")");
  for (const std::string& both : {older + "," + newer, newer + "," + older}) {
    const auto answer = answer_of(features(both));
    ASSERT_EQ(answer.series.at(0).readings.size(), 1u);
    EXPECT_DOUBLE_EQ(answer.series[0].readings[0].si.value(), 6.0 * kCubicMetresPerCubicFoot);
    EXPECT_THAT(answer.notes, ElementsAre(HasSubstr("1 row of one instant with differing content")));
  }
}

TEST(UsgsWaterData, LeavesOutASeriesInAnUnknownUnitAndNamesIt) {
  const auto answer = answer_of(features(feature(kNoonText, "5", "", "furlong")));
  EXPECT_THAT(answer.series, IsEmpty());
  EXPECT_THAT(answer.notes, ElementsAre(HasSubstr("the unit \"furlong\" of parameter 00060 is not known")));
}

TEST(UsgsWaterData, TellsAParameterItDoesNotUseOnce) {
  const std::string one = feature(kNoonText, "5", "", "uS/cm", "00095");
  const auto answer = answer_of(features(one + "," + one));
  EXPECT_THAT(answer.notes, ElementsAre("parameter 00095: 2 rows left out: it is not used here"));
}

TEST(UsgsWaterData, SaysOnceThatNtuAreNotFnu) {
  const std::string rows =
      feature(kNoonText, "5", "", "NTU", "00076") + "," + feature("2026-05-13T12:15:00Z", "6", "", "NTU", "00076");
  const auto answer = answer_of(features(rows));
  EXPECT_EQ(answer.series.at(0).readings.size(), 2u);
  EXPECT_THAT(answer.notes, ElementsAre(HasSubstr("NTU (white light) is given as FNU (infrared), uncorrected")));
}

TEST(UsgsWaterData, IsAnswerEnoughWhenEmpty) {
  const auto answer = answer_of(features("", R"(,"numberReturned":0)"));
  EXPECT_THAT(answer.series, IsEmpty());
  EXPECT_THAT(answer.notes, IsEmpty());
}

TEST(UsgsWaterData, TellsWhenFewerRowsCameThanAnnounced) {
  const auto answer = answer_of(features(feature(kNoonText, "5"), R"(,"numberReturned":2)"));
  EXPECT_THAT(answer.notes, ElementsAre("the answer says it holds 2 rows and holds 1"));
}

TEST(UsgsWaterData, GivesTheAddressOfTheNextPage) {
  const auto page = read_usgs_water_data(
      features(feature(kNoonText, "5"), R"(,"links":[{"rel":"self","href":"/a"},{"rel":"next","href":"/b"}])"), "a");
  ASSERT_TRUE(page.has_value());
  EXPECT_EQ(page->next, "/b");
}

}  // namespace
}  // namespace floatwright
