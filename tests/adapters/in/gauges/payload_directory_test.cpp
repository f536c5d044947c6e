#include "adapters/in/gauges/payload_directory.hpp"

#include <gmock/gmock.h>

#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"
#include "tests/adapters/in/gauges/temporary_folder.hpp"

namespace floatwright {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

double cfs(const Reading& row) { return row.si.value() / kCubicMetresPerCubicFoot; }

TEST(PayloadDirectory, ReadsEveryServicesFiles) {
  const TemporaryFolder folder;
  folder.put("a.json", features(feature("2026-05-13T12:00:00Z", "10")));
  folder.put("b.json", legacy(block(row("2026-05-13T12:00:00Z", "20"))));
  folder.put("notes.txt", "not a payload");
  folder.put(".hidden.json", "broken");
  const auto payloads = read_payload_directory(folder.path());
  EXPECT_THAT(payloads.troubles, IsEmpty());
  ASSERT_EQ(payloads.series.size(), 2u);
  EXPECT_EQ(payloads.series[0].source, (folder.path() / "a.json").string());
}

TEST(PayloadDirectory, TellsAFileThatDoesNotReadAndGoesOn) {
  const TemporaryFolder folder;
  folder.put("a.json", "{\"timeSeries\"");
  folder.put("b.json", features(feature("2026-05-13T12:00:00Z", "10")));
  const auto payloads = read_payload_directory(folder.path());
  EXPECT_EQ(payloads.series.size(), 1u);
  EXPECT_THAT(payloads.troubles, ElementsAre(AllOf(HasSubstr("a.json: line 1"), HasSubstr("cut short"))));
}

TEST(PayloadDirectory, RepeatsWhatWasDoubtfulInAFile) {
  const TemporaryFolder folder;
  folder.put("a.json", features(feature("2026-05-13T12:00:00Z", "10", "", "furlong")));
  EXPECT_THAT(read_payload_directory(folder.path()).troubles,
              ElementsAre(AllOf(HasSubstr("a.json: "), HasSubstr("\"furlong\""))));
}

TEST(PayloadDirectory, BelievesTheAnswerThatReachesFurther) {
  const std::string older =
      features(feature("2026-05-13T12:00:00Z", "10") + "," + feature("2026-05-13T12:15:00Z", "11"));
  const std::string newer =
      features(feature("2026-05-13T12:15:00Z", "12") + "," + feature("2026-05-13T12:30:00Z", "13"));
  for (const bool newer_first : {true, false}) {
    const TemporaryFolder folder;
    folder.put("a.json", newer_first ? newer : older);
    folder.put("b.json", newer_first ? older : newer);
    const auto payloads = read_payload_directory(folder.path());
    ASSERT_EQ(payloads.series.size(), 1u);
    const auto& rows = payloads.series[0].readings;
    ASSERT_EQ(rows.size(), 3u);
    EXPECT_NEAR(cfs(rows[0]), 10.0, 1e-9);
    EXPECT_NEAR(cfs(rows[1]), 12.0, 1e-9);
    EXPECT_NEAR(cfs(rows[2]), 13.0, 1e-9);
    EXPECT_THAT(payloads.series[0].source, HasSubstr(newer_first ? "a.json" : "b.json"));
  }
}

TEST(PayloadDirectory, IsToldWhenItIsNotThere) {
  EXPECT_THAT(read_payload_directory("/nowhere/at/all").troubles,
              ElementsAre(HasSubstr("/nowhere/at/all: can't be listed")));
}

}  // namespace
}  // namespace floatwright
