// Whatever comes, the answer is a failure with a place or readings with a note; never a crash, never a wrong number.
#include <gmock/gmock.h>

#include "adapters/in/gauges/payload.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"

namespace floatwright {
namespace {

using testing::HasSubstr;

std::string failure_of(const std::string& bytes, const std::optional<std::string>& service = std::nullopt) {
  const auto answer = read_payload(bytes, "a.json", service);
  return answer ? "no failure" : answer.error().what;
}

const std::string kGood = features(feature("2026-05-13T12:00:00Z", "\"100\""));

TEST(BrokenPayload, IsToldWhenEmpty) {
  EXPECT_EQ(failure_of(""), "a.json: empty; ask the service again");
  EXPECT_EQ(failure_of(" \n"), "a.json: empty; ask the service again");
}

TEST(BrokenPayload, IsToldWhenAWebPage) {
  EXPECT_THAT(failure_of("<!DOCTYPE html><html></html>"), HasSubstr("a web page or XML, not JSON"));
}

TEST(BrokenPayload, IsToldWithLineAndColumnWhereverItWasCut) {
  for (std::size_t length = 1; length < kGood.size(); ++length)
    EXPECT_THAT(failure_of(kGood.substr(0, length)), HasSubstr("a.json: line 1, column ")) << length;
}

TEST(BrokenPayload, IsToldWhenARecordedAnswerWasCut) {
  const std::string whole = recorded("usgs-legacy/iv_03213700_discharge_15min_2016-09_approved.json");
  ASSERT_FALSE(whole.empty());
  for (std::size_t length = 1; length < whole.size() - 1; length += 997)
    EXPECT_THAT(failure_of(whole.substr(0, length)), HasSubstr("cut short")) << length;
}

TEST(BrokenPayload, NeverReadsPastOneBrokenByte) {
  const std::string whole = kGood;
  for (std::size_t at = 0; at < whole.size(); ++at) {
    std::string bytes = whole;
    bytes[at] = '\xff';
    EXPECT_NE(failure_of(bytes), "no failure") << at;
  }
}

TEST(BrokenPayload, IsToldWhenTextFollowsTheEnd) {
  EXPECT_THAT(failure_of(kGood + "\n{}"), HasSubstr("a.json: line 2, column 1: not JSON"));
}

TEST(BrokenPayload, NamesAKeyThatStandsTwice) {
  EXPECT_EQ(failure_of(features(feature("2026-05-13T12:00:00Z", "\"100\"", R"(,"value":"900")"))),
            "a.json: /features/0/properties/value: this key stands twice in one object, so its value is not certain");
}

TEST(BrokenPayload, IsRefusedWhenNestedTenThousandDeep) {
  const std::string deep(10000, '[');
  EXPECT_THAT(failure_of(deep), HasSubstr("nested deeper than 64 levels"));
  EXPECT_THAT(failure_of(R"({"type":"FeatureCollection","features":)" + deep), HasSubstr("nested deeper"));
  std::string objects;
  for (int i = 0; i < 10000; ++i) objects += R"({"timeSeries":)";
  EXPECT_THAT(failure_of(objects), HasSubstr("nested deeper"));
}

TEST(BrokenPayload, IsRefusedWhenANumberIsTooLargeOrNoNumber) {
  EXPECT_THAT(failure_of(features(feature("2026-05-13T12:00:00Z", "1e999"))),
              HasSubstr("a number too large to be one"));
  EXPECT_THAT(failure_of(features(feature("2026-05-13T12:00:00Z", "NaN"))), HasSubstr("not JSON"));
}

TEST(BrokenPayload, IsRefusedWhenItsShapeIsAnother) {
  EXPECT_THAT(failure_of("[]"), HasSubstr("no answer of a service that is read here (wsc-realtime, "));
  EXPECT_THAT(failure_of("3"), HasSubstr("no answer of a service"));
  EXPECT_THAT(failure_of(R"({"type":"FeatureCollection"})"), HasSubstr("no list of features at /features"));
  EXPECT_THAT(failure_of(R"({"type":"FeatureCollection","features":{}})"), HasSubstr("/features is no list"));
  EXPECT_THAT(failure_of(R"({"type":"FeatureCollection","features":[1]})"), HasSubstr("no readings"));
  EXPECT_THAT(failure_of(R"({"timeSeries":[]})"), HasSubstr("no list of series at /value/timeSeries"));
  EXPECT_THAT(failure_of(R"({"value":{"timeSeries":{}}})"), HasSubstr("no list of series"));
  EXPECT_THAT(failure_of(R"({"value":{"timeSeries":[null]}})"),
              HasSubstr("no station number at /value/timeSeries/0/sourceInfo/siteCode/0/value"));
  EXPECT_THAT(failure_of(legacy("{}")), HasSubstr("no list of values at /value/timeSeries/0/values/0/value"));
}

TEST(BrokenPayload, NamesTheServicesThereAreForOneThereIsNot) {
  EXPECT_THAT(failure_of(kGood, "usgs"),
              HasSubstr("no gauge service \"usgs\"; there are wsc-realtime, "));
}

TEST(BrokenPayload, IsReadAsTheServiceThatWasAskedFor) {
  EXPECT_THAT(failure_of(kGood, "usgs-legacy"), HasSubstr("no list of series"));
  EXPECT_EQ(failure_of(kGood, "usgs-water-data"), "no failure");
}

TEST(BrokenPayload, ShowsNoControlCharactersInItsMessage) {
  const auto answer = read_payload(features(feature("\\u001b[31m", "\"100\"")), "a.json");
  ASSERT_TRUE(answer.has_value());
  ASSERT_EQ(answer->notes.size(), 1u);
  EXPECT_EQ(answer->notes[0].find('\x1b'), std::string::npos);
}

}  // namespace
}  // namespace floatwright
