#include "adapters/in/archive/archive.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <gmock/gmock.h>

#include <cmath>

#include "tests/adapters/in/archive/archive_file.hpp"

namespace floatwright::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Optional;
using ::testing::SizeIs;

class ArchiveOnDisk : public ArchiveFile {
 protected:
  void store(const std::vector<GaugeSeries>& series, Instant fetched_at = at(100)) {
    stored_ = writing().store(series, fetched_at).value();
  }
  [[nodiscard]] std::vector<GaugeSeries> all(Instant issued_until = Instant::max()) const {
    return reading().series_of(kStation, Instant::min(), Instant::max(), issued_until).value();
  }

  Stored stored_;
};

MATCHER_P(SaysTheSame, wanted, "") {
  const auto same_series = [](const SeriesAbout& a, const SeriesAbout& b) {
    return a.series_id == b.series_id && a.variable == b.variable && a.parameter == b.parameter &&
           a.statistic == b.statistic && a.sensor == b.sensor && a.unit == b.unit && a.primary == b.primary &&
           a.daily == b.daily && a.begin == b.begin && a.end == b.end && a.longest_gap == b.longest_gap;
  };
  return arg.station == wanted.station && arg.name == wanted.name && arg.site_type == wanted.site_type &&
         arg.state == wanted.state && arg.latitude_deg == wanted.latitude_deg &&
         arg.longitude_deg == wanted.longitude_deg && arg.zone == wanted.zone &&
         arg.daylight_saving == wanted.daylight_saving && arg.drainage_area == wanted.drainage_area &&
         arg.altitude == wanted.altitude && std::ranges::equal(arg.series, wanted.series, same_series);
}

MATCHER_P3(Counts, added, changed, same, "") {
  return arg.added == std::size_t(added) && arg.changed == std::size_t(changed) && arg.same == std::size_t(same);
}

TEST_F(ArchiveOnDisk, GivesBackASeriesAsItWasStored) {
  GaugeSeries flow = flow_of({{at(0), 41.5, {Mark::Provisional}},
                              {at(15), std::nullopt, {Mark::Provisional, Mark::Ice, Mark::Unknown}},
                              {at(30), -2.25, {Mark::Approved, Mark::Revised}}});
  flow.sensor = "RIGHT BANK";
  flow.station_name = "Lantern River at Cutbank";
  flow.source = "a.json";
  flow.unknown_codes = {"GHNOTASSCPKQ", "xx"};
  store({flow});
  EXPECT_THAT(stored_, Counts(3, 0, 0));
  EXPECT_THAT(all(), ElementsAre(SameSeries(flow)));
}

TEST_F(ArchiveOnDisk, KeepsSeriesApartByIdQuantityAndDay) {
  GaugeSeries flow = flow_of({{at(0), 40.0, {}}}), stage = flow, daily = flow, other = flow;
  stage.variable = Variable::GaugeHeight;
  daily.daily = true;
  other.series_id = "second";
  store({flow, stage, daily, other});
  EXPECT_THAT(stored_, Counts(4, 0, 0));
  EXPECT_THAT(all(), SizeIs(4));
}

TEST_F(ArchiveOnDisk, GivesOnlyTheSpanThatWasAskedBothEndsIncluded) {
  store({flow_of({{at(0), 1.0, {}}, {at(15), 2.0, {}}, {at(30), 3.0, {}}, {at(45), 4.0, {}}})});
  const auto got = reading().series_of(kStation, at(15), at(30)).value();
  ASSERT_THAT(got, SizeIs(1));
  EXPECT_THAT(got[0].readings, ElementsAre(SameRow(Reading{at(15), 2.0, {}}), SameRow(Reading{at(30), 3.0, {}})));
  EXPECT_THAT(reading().series_of(kStation, at(50), at(60)).value(), IsEmpty());
  EXPECT_THAT(reading().series_of("usgs:00000002", at(0), at(60)).value(), IsEmpty());
}

TEST_F(ArchiveOnDisk, SkipsWhatItHoldsAlready) {
  store({flow_of({{at(0), 1.0, {}}, {at(15), std::nullopt, {Mark::Ice}}})});
  store({flow_of({{at(0), 1.0, {}}, {at(15), std::nullopt, {Mark::Ice}}, {at(30), 3.0, {}}})});
  EXPECT_THAT(stored_, Counts(1, 0, 2));
  EXPECT_THAT(reading().revisions_of(kStation, at(0), at(60)).value(), IsEmpty());
}

TEST_F(ArchiveOnDisk, KeepsWhatARowWasBeforeItsNumberChanged) {
  store({flow_of({{at(0), 1.0, {Mark::Provisional}}})}, at(100));
  store({flow_of({{at(0), 1.5, {Mark::Approved}}})}, at(200));
  store({flow_of({{at(0), std::nullopt, {Mark::Approved, Mark::Equipment}}})}, at(300));
  EXPECT_THAT(stored_, Counts(0, 1, 0));
  const auto revisions = reading().revisions_of(kStation, at(0), at(0)).value();
  ASSERT_THAT(revisions, SizeIs(2));
  EXPECT_THAT(revisions[0].was, SameRow(Reading{at(0), 1.0, {Mark::Provisional}}));
  EXPECT_EQ(revisions[0].fetched_at, at(100));
  EXPECT_EQ(revisions[0].changed_at, at(200));
  EXPECT_THAT(revisions[1].was, SameRow(Reading{at(0), 1.5, {Mark::Approved}}));
  EXPECT_EQ(revisions[1].fetched_at, at(200));
  EXPECT_EQ(revisions[1].series_id, "flow");
}

TEST_F(ArchiveOnDisk, KeepsAMarkThatIceOrEquipmentGotLaterAsARevision) {
  store({flow_of({{at(0), 1.0, {Mark::Provisional}}})});
  store({flow_of({{at(0), 1.0, {Mark::Provisional, Mark::Ice}}})});
  EXPECT_THAT(reading().revisions_of(kStation, at(0), at(0)).value(), SizeIs(1));
}

TEST_F(ArchiveOnDisk, TakesApprovalOfTheSameNumberForAChangeThatNeedsNoRevision) {
  store({flow_of({{at(0), 1.0, {Mark::Provisional, Mark::Estimated}}})});
  store({flow_of({{at(0), 1.0, {Mark::Approved, Mark::Estimated}}})});
  EXPECT_THAT(stored_, Counts(0, 1, 0));
  EXPECT_EQ(all()[0].readings[0].marks, (Marks{Mark::Approved, Mark::Estimated}));
  EXPECT_THAT(reading().revisions_of(kStation, at(0), at(0)).value(), IsEmpty());
}

TEST_F(ArchiveOnDisk, LosesNothingToAClockThatRanAnHourFast) {
  store({flow_of({{at(0), 1.0, {}}})}, at(60 + 5));                 // an hour fast
  store({flow_of({{at(0), 2.0, {}}, {at(15), 3.0, {}}})}, at(20));  // put right: fetched "before" what is held
  EXPECT_THAT(stored_, Counts(1, 1, 0));
  EXPECT_THAT(all()[0].readings, ElementsAre(SameRow(Reading{at(0), 2.0, {}}), SameRow(Reading{at(15), 3.0, {}})));
  EXPECT_THAT(reading().revisions_of(kStation, at(0), at(0)).value(), SizeIs(1));
}

TEST_F(ArchiveOnDisk, SortsRowsThatComeInNoOrderAndTakesTheLastOfOneInstant) {
  store({flow_of({{at(30), 3.0, {}}, {at(0), 1.0, {}}, {at(30), 4.0, {}}})});
  EXPECT_THAT(all()[0].readings, ElementsAre(SameRow(Reading{at(0), 1.0, {}}), SameRow(Reading{at(30), 4.0, {}})));
}

TEST_F(ArchiveOnDisk, TakesAnyInstantAndAnyNumber) {
  const GaugeSeries odd = flow_of({{Instant::min(), 1e308, {}}, {at(0), 5e-324, {}}, {Instant::max(), 3.0, {}}});
  store({odd});
  EXPECT_THAT(all(), ElementsAre(SameSeries(odd)));
}

TEST_F(ArchiveOnDisk, RefusesWhatIsNoNumberAndStoresNothingOfThatAnswer) {
  const auto refused = writing().store({flow_of({{at(0), 1.0, {}}}), flow_of({{at(15), NAN, {}}})}, at(100));
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().exit_code, kExitBadData);
  EXPECT_THAT(refused.error().what, HasSubstr("flow of usgs:00000001 at 2027-05-13T00:15:00Z"));
  EXPECT_THAT(all(), IsEmpty());
}

TEST_F(ArchiveOnDisk, KeepsForecastsApartFromReadingsAndGivesTheNewestIssue) {
  store({flow_of({{at(0), 1.0, {}}}), forecast(at(0), 10.0), forecast(at(60), 20.0), forecast(at(30), 15.0)});
  const auto got = all();
  ASSERT_THAT(got, SizeIs(2));
  EXPECT_EQ(got[0].issued, std::nullopt);
  EXPECT_EQ(got[1].issued, at(60));
  EXPECT_EQ(got[1].readings[0].si, 20.0);
  EXPECT_EQ(all(at(59))[1].issued, at(30)) << "an issue that a run made for an earlier instant can't have known";
}

TEST_F(ArchiveOnDisk, RemovesForecastsSupersededForLongByTheirIssuesAndNotByTheClock) {
  const Instant late = at(0) + kSupersededForecastsKept;
  store({forecast(at(0), 1.0), forecast(at(1), 2.0)}, late);
  store({forecast(late, 3.0)}, at(0) + std::chrono::days{36500});
  EXPECT_EQ(all(at(0))[0].issued, at(0)) << "60 days and not more";
  store({forecast(late + std::chrono::minutes{1}, 3.0)}, late);
  EXPECT_THAT(all(at(0)), IsEmpty());
  EXPECT_EQ(all(at(1))[0].issued, at(1));
  store({forecast(at(0) + std::chrono::days{36500}, 9.0)}, late);
  EXPECT_EQ(all(at(1))[0].issued, at(1)) << "an issue from a day that has not come takes nobody's place";
  EXPECT_THAT(reading().integrity().value(), IsEmpty());
}

TEST_F(ArchiveOnDisk, NotesWhatWasAskedAndJoinsSpansThatMeet) {
  Archive archive = writing();
  const auto note = [&](int from, int to, int asked_at, const char* service = "usgs-water-data") {
    ASSERT_TRUE(archive.note_asked({kStation, service, at(from), at(to), at(asked_at)}));
  };
  note(0, 10, 10);
  note(20, 30, 31);
  note(0, 5, 7, "usgs-legacy");
  const auto apart = archive.asked(kStation).value();
  EXPECT_THAT(apart, SizeIs(3));
  note(10, 25, 40);
  const auto joined = archive.asked(kStation).value();
  ASSERT_THAT(joined, SizeIs(2));
  EXPECT_EQ(joined[1].from, at(0));
  EXPECT_EQ(joined[1].to, at(30));
  EXPECT_EQ(joined[1].at, at(31)) << "the end of the span was asked then; filling up behind it makes it no fresher";
  note(25, 30, 20);
  EXPECT_EQ(archive.asked(kStation).value()[1].at, at(20)) << "a clock put right";
  EXPECT_THAT(archive.asked("usgs:00000002").value(), IsEmpty());
}

TEST_F(ArchiveOnDisk, KeepsTheNewestThousandValidators) {
  Archive archive = writing();
  EXPECT_EQ(archive.validator("https://gauges.invalid/a").value().etag, "");
  ASSERT_TRUE(archive.keep_validator("https://gauges.invalid/a", {"\"1\"", ""}));
  ASSERT_TRUE(archive.keep_validator("https://gauges.invalid/a", {"\"2\"", "Thu, 13 May 2027 00:00:00 GMT"}));
  EXPECT_EQ(archive.validator("https://gauges.invalid/a").value().etag, "\"2\"");
  EXPECT_EQ(archive.validator("https://gauges.invalid/a").value().last_modified, "Thu, 13 May 2027 00:00:00 GMT");
  SQLite::Database{file_, SQLite::OPEN_READWRITE}.exec(
      "WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < 997) "
      "INSERT INTO validators (url, etag, last_modified) SELECT 'https://gauges.invalid/' || i, 'x', '' FROM n");
  ASSERT_TRUE(archive.keep_validator("https://gauges.invalid/b", {"b", ""}));
  EXPECT_EQ(archive.validator("https://gauges.invalid/a").value().etag, "\"2\"") << "the thousandth";
  ASSERT_TRUE(archive.keep_validator("https://gauges.invalid/c", {"c", ""}));
  EXPECT_EQ(archive.validator("https://gauges.invalid/a").value().etag, "") << "one too many";
  EXPECT_EQ(archive.validator("https://gauges.invalid/0").value().etag, "x");
}

TEST_F(ArchiveOnDisk, KeepsWhatIsSaidOfAStation) {
  SeriesAbout flow;
  flow.series_id = "f3";
  flow.variable = Variable::Flow;
  flow.parameter = "00060";
  flow.statistic = "00011";
  flow.sensor = "RIGHT BANK";
  flow.unit = "ft^3/s";
  flow.primary = true;
  flow.begin = at(0);
  flow.longest_gap = std::chrono::hours{3};
  SeriesAbout other;
  other.series_id = "a1";
  other.daily = true;
  other.end = at(15);
  StationAbout said{kStation,
                    "Lantern River at Cutbank",
                    "Stream",
                    "Montana",
                    45.5,
                    -111.25,
                    "MST",
                    true,
                    Area::from_si(2.5e9),
                    Length::from_si(1400),
                    {flow, other}};
  Archive archive = writing();
  ASSERT_TRUE(archive.keep_about(said));
  EXPECT_THAT(archive.about(kStation).value(), Optional(SaysTheSame(said)));
  EXPECT_EQ(archive.about("usgs:00000002").value(), std::nullopt);

  const StationAbout less{kStation, "", "", "", {}, {}, "", {}, {}, {}, {other}};
  ASSERT_TRUE(archive.keep_about(less));
  EXPECT_THAT(archive.about(kStation).value(), Optional(SaysTheSame(less))) << "of what it said before nothing is left";
}

// The statements of version 1 as they were written, and a file as it was left by them.
constexpr const char* kVersion1 = R"sql(
CREATE TABLE series (
  id           INTEGER PRIMARY KEY,
  station      TEXT NOT NULL,
  series_id    TEXT NOT NULL,
  variable     TEXT NOT NULL,
  daily        INTEGER NOT NULL CHECK (daily IN (0, 1)),
  issued       INTEGER,
  sensor       TEXT NOT NULL,
  station_name TEXT NOT NULL,
  source       TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX series_key ON series (station, series_id, variable, daily, ifnull(issued, 'observed'));
CREATE TABLE unknown_codes (
  series INTEGER NOT NULL REFERENCES series (id),
  code   TEXT NOT NULL,
  PRIMARY KEY (series, code)
) STRICT, WITHOUT ROWID;
CREATE TABLE readings (
  series     INTEGER NOT NULL REFERENCES series (id),
  instant    INTEGER NOT NULL,
  si         REAL,
  marks      INTEGER NOT NULL,
  fetched_at INTEGER NOT NULL,
  PRIMARY KEY (series, instant)
) STRICT, WITHOUT ROWID;
CREATE TABLE revisions (
  id         INTEGER PRIMARY KEY,
  series     INTEGER NOT NULL REFERENCES series (id),
  instant    INTEGER NOT NULL,
  si         REAL,
  marks      INTEGER NOT NULL,
  fetched_at INTEGER NOT NULL,
  changed_at INTEGER NOT NULL
) STRICT;
CREATE INDEX revisions_of_series ON revisions (series, instant);
CREATE TABLE asked (
  station   TEXT NOT NULL,
  service   TEXT NOT NULL,
  span_from INTEGER NOT NULL,
  span_to   INTEGER NOT NULL,
  at        INTEGER NOT NULL,
  PRIMARY KEY (station, service, span_from)
) STRICT, WITHOUT ROWID;
CREATE TABLE validators (
  id            INTEGER PRIMARY KEY,
  url           TEXT NOT NULL UNIQUE,
  etag          TEXT NOT NULL,
  last_modified TEXT NOT NULL
) STRICT;
INSERT INTO series VALUES (1, 'usgs:00000001', 'flow', 'discharge', 0, NULL, '', '', '');
INSERT INTO readings VALUES (1, 1810166400, 40.25, 17, 1810170000);
INSERT INTO asked VALUES ('usgs:00000001', 'usgs-water-data', 1810166400, 1810166400, 1810170000);
PRAGMA user_version = 1;
PRAGMA application_id = 1719104097;
)sql";

TEST_F(ArchiveOnDisk, OfVersion1IsReadAsItIsAndTakenOverWhenItIsWritten) {
  std::filesystem::create_directories(file_.parent_path());
  SQLite::Database{file_, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE}.exec(kVersion1);
  const GaugeSeries kept = flow_of({{at(0), 40.25, {Mark::Provisional, Mark::Ice}}});
  EXPECT_THAT(all(), ElementsAre(SameSeries(kept)));
  EXPECT_EQ(reading().about(kStation).value(), std::nullopt);

  StationAbout said;
  said.station = kStation;
  ASSERT_TRUE(writing().keep_about(said));
  EXPECT_THAT(all(), ElementsAre(SameSeries(kept)));
  EXPECT_THAT(reading().about(kStation).value(), Optional(SaysTheSame(said)));
  EXPECT_EQ(reading().asked(kStation).value().at(0).to, at(0));
  EXPECT_THAT(reading().integrity().value(), IsEmpty());
  EXPECT_THAT(writing().notes(), IsEmpty());
}

// Marks are numbers on disk: one that changed its bit would make ice of equipment. The bits as they were written first.
TEST(MarksOnDisk, KeepTheirBits) {
  EXPECT_EQ(Marks{Mark::Provisional}.bits(), 1);
  EXPECT_EQ(Marks{Mark::Approved}.bits(), 2);
  EXPECT_EQ(Marks{Mark::Revised}.bits(), 4);
  EXPECT_EQ(Marks{Mark::Estimated}.bits(), 8);
  EXPECT_EQ(Marks{Mark::Ice}.bits(), 16);
  EXPECT_EQ(Marks{Mark::Equipment}.bits(), 32);
  EXPECT_EQ(Marks{Mark::Backwater}.bits(), 64);
  EXPECT_EQ(Marks{Mark::Discontinued}.bits(), 128);
  EXPECT_EQ(Marks{Mark::Unavailable}.bits(), 256);
  EXPECT_EQ(Marks{Mark::Stale}.bits(), 512);
  EXPECT_EQ(Marks{Mark::SuspectSpike}.bits(), 1024);
  EXPECT_EQ(Marks{Mark::Unknown}.bits(), 2048);
}

}  // namespace
}  // namespace floatwright::testing
