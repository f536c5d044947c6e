#include <gmock/gmock.h>

#include "adapters/in/gauges/payload.hpp"
#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

GaugeAnswer answer_of(const std::string& bytes) { return answer_or_told(read_payload(bytes, "a.json")); }

const std::string kNoonText = "2026-05-13T12:00:00.000-06:00";

TEST(UsgsLegacy, MakesASeriesOfEachMethod) {
  const auto answer = answer_of(legacy(block("", 7) + "," + block(row(kNoonText, "\"100\""), 8, "RADAR")));
  ASSERT_EQ(answer.series.size(), 2u);
  EXPECT_EQ(answer.series[0].series_id, "USGS:00000001:00060:00000:7");
  EXPECT_THAT(answer.series[0].readings, IsEmpty());
  EXPECT_EQ(answer.series[1].sensor, "RADAR");
  EXPECT_EQ(answer.series[1].station, "usgs:00000001");
  EXPECT_DOUBLE_EQ(answer.series[1].readings.at(0).si.value(), 100.0 * kCubicMetresPerCubicFoot);
}

TEST(UsgsLegacy, ReadsTheMissingCodeFromTheAnswer) {
  for (const char* code : {"-777", "-777.0", "\"-777\""}) {
    const auto answer = answer_of(legacy(block(row(kNoonText, "\"-777.00\"")), "ft3/s", code));
    EXPECT_FALSE(answer.series.at(0).readings.at(0).si) << code;
  }
  EXPECT_FALSE(answer_of(legacy(block(row(kNoonText, "\"-999999\"")), "ft3/s", "null")).series.at(0).readings.at(0).si);
}

// JSON promises no order of keys (RFC 8259, section 4).
TEST(UsgsLegacy, ReadsValuesThatStandBeforeTheirUnitAndTheirMissingCode) {
  const auto answer = answer_of(
      R"({"value":{"timeSeries":[{"values":[{"method":[{"methodID":3}],"value":[)" + row(kNoonText, "\"10\"") + "," +
      row("2026-05-13T12:15:00.000-06:00", "\"-777\"") +
      R"(]}],"variable":{"noDataValue":-777,"options":{"option":[{"optionCode":"00003","name":"Other"},)"
      R"({"optionCode":"00000","name":"Statistic"}]},"unit":{"unitCode":"ft"},"variableCode":[{"value":"00065"}]},)"
      R"("sourceInfo":{"siteCode":[{"agencyCode":"USGS","value":"00000001"}],"siteName":"Lantern"}}]}})");
  ASSERT_EQ(answer.series.size(), 1u);
  EXPECT_EQ(answer.series[0].series_id, "USGS:00000001:00065:00000:3");
  EXPECT_EQ(answer.series[0].station_name, "Lantern");
  ASSERT_EQ(answer.series[0].readings.size(), 2u);
  EXPECT_DOUBLE_EQ(answer.series[0].readings[0].si.value(), 10.0 * kMetresPerFoot);
  EXPECT_FALSE(answer.series[0].readings[1].si);
}

TEST(UsgsLegacy, TellsTimesThatNoSeriesOfItsKindCanHave) {
  const auto answer = answer_of(legacy(block(row("2026-05-13T00:00:00.000", "1") + "," + row("1881-00-00", "2") + "," +
                                             row("2026-05-14T07:00:00.000", "3"))));
  EXPECT_TRUE(answer.series.at(0).daily);
  EXPECT_EQ(answer.series[0].readings.size(), 1u);
  EXPECT_THAT(answer.notes,
              testing::IsSupersetOf({HasSubstr("1 row left out: the time can't be read, first \"1881-00-00\""),
                                     HasSubstr("first \"2026-05-14T07:00:00.000\"")}));
}

TEST(UsgsLegacy, ReadsACodeInPlaceOfANumberAsMissing) {
  const auto answer = answer_of(legacy(block(row(kNoonText, "\"Ice\"") + "," + row("2026-05-13T13:00Z", "\"***\""))));
  const auto& rows = answer.series.at(0).readings;
  EXPECT_FALSE(rows.at(0).si);
  EXPECT_TRUE(rows.at(0).marks.contains(Mark::Unavailable));
  EXPECT_FALSE(rows.at(1).si);
  EXPECT_TRUE(rows.at(1).marks.contains(Mark::Ice));
}

TEST(UsgsLegacy, TakesQualifiersAsListTextOrNull) {
  for (const char* codes : {R"(["P","e"])", R"("P e")", R"(["P", null, "e"])"}) {
    const auto answer = answer_of(legacy(block(row(kNoonText, "1", codes))));
    EXPECT_EQ(answer.series.at(0).readings.at(0).marks, (Marks{Mark::Provisional, Mark::Estimated})) << codes;
  }
  EXPECT_THAT(answer_of(legacy(block(row(kNoonText, "1", "null")))).series.at(0).readings.at(0).marks, IsEmpty());
}

TEST(UsgsLegacy, KeepsNegativeFlowAsSent) {
  const auto answer = answer_of(legacy(block(row(kNoonText, "\"-12\""))));
  EXPECT_DOUBLE_EQ(answer.series.at(0).readings.at(0).si.value(), -12.0 * kCubicMetresPerCubicFoot);
}

TEST(UsgsLegacy, LeavesOutARowWithoutItsZone) {
  const auto answer = answer_of(legacy(block(row(kNoonText, "1") + "," + row("2026-05-13T12:15:00.000", "2"))));
  EXPECT_EQ(answer.series.at(0).readings.size(), 1u);
  EXPECT_THAT(answer.notes, ElementsAre(HasSubstr("/value/timeSeries/0/values/0/value/1/dateTime")));
}

TEST(UsgsLegacy, SortsRowsAndKeepsTheLaterOfTwoThatDiffer) {
  const auto answer = answer_of(legacy(block(row("2026-05-13T13:00Z", "3") + "," + row("2026-05-13T12:00Z", "1") + "," +
                                             row("2026-05-13T14:00+01:00", "4"))));
  const auto& rows = answer.series.at(0).readings;
  ASSERT_EQ(rows.size(), 2u);
  EXPECT_DOUBLE_EQ(rows[1].si.value(), 4.0 * kCubicMetresPerCubicFoot);
  EXPECT_THAT(answer.notes, ElementsAre(HasSubstr("the one written last was kept")));
}

TEST(UsgsLegacy, LeavesOutASeriesInAnUnknownUnitAndNamesIt) {
  const auto answer = answer_of(legacy(block(row(kNoonText, "1")), "ac-ft"));
  EXPECT_THAT(answer.series, IsEmpty());
  EXPECT_THAT(answer.notes, ElementsAre(HasSubstr("USGS:00000001:00060:00000:1: 1 row left out: the unit \"ac-ft\"")));
}

TEST(UsgsLegacy, TellsCodesThatItDoesNotKnow) {
  const auto answer = answer_of(legacy(block(row(kNoonText, "1", R"(["P","Xyz"])"))));
  EXPECT_THAT(answer.series.at(0).unknown_codes, ElementsAre("Xyz"));
  EXPECT_THAT(answer.notes, ElementsAre(HasSubstr("codes that are not known here, kept as a doubt: Xyz")));
}

}  // namespace
}  // namespace floatwright
