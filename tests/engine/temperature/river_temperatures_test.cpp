#include "engine/temperature/river_temperatures.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "engine/units/unit.hpp"
#include "warm_record.hpp"

namespace floatwright {
namespace {

using ::testing::HasSubstr;

GaugeSite gauge_at(const std::string& id, std::optional<double> mile, double area_mi2) {
  GaugeSite site;
  site.id = id;
  if (mile) site.place = river_mile(*mile);
  site.drainage_area = square_miles(area_mi2);
  return site;
}
Access access_at(double mile) {
  Access access;
  access.place = river_mile(mile);
  return access;
}

// The same flow in every reach and hour; 0: not known.
RiverFlows flows_of(const RiverGraph& graph, double m3_s) {
  RiverFlows flows;
  flows.grid = grid_around();
  flows.known.assign(graph.reaches.size(), m3_s > 0.0);
  const std::vector<Discharge> row(flows.grid.count, cubic_metres_per_second(m3_s));
  flows.flow.middle.assign(graph.reaches.size(), row);
  return flows;
}

// Accesses at miles 45.6, 40, 35, 30 and 22; one gauge at 45.2 that reports temperature; Alder Creek joins at 38.
struct Warm {
  River river;
  std::vector<GaugeRecord> records;
  double flow_m3_s = 0.0;

  explicit Warm(double alder_area_mi2 = 100) {
    river.name = "Lantern River";
    river.time_zone = "America/Denver";
    river.gauges = {gauge_at("heron", 45.2, 980)};
    for (const double mile : {45.6, 40.0, 35.0, 30.0, 22.0}) river.accesses.push_back(access_at(mile));
    river.tributaries = {{"alder", "Alder Creek", river_mile(38), square_miles(alder_area_mi2), ""}};
    GaugeRecord record;
    record.gauge = "heron";
    record.temperature = temperatures(72, daily_swing);
    records = {record};
  }
  void add(const GaugeSite& site, const Series<Temperature>& water) {
    river.gauges.push_back(site);
    GaugeRecord record;
    record.gauge = site.id;
    record.temperature = water;
    records.push_back(record);
  }
  [[nodiscard]] RiverTemperatures all(const RiverGraph& graph) const {
    return river_temperatures({river, graph, records, flows_of(graph, flow_m3_s), grid_around(), kNow});
  }
  [[nodiscard]] Measured<PerCase<Temperature>> at(double mile, int hours_ahead) const {
    const RiverGraph graph = river_graph(river);
    return temperature_at(all(graph), *graph.at(river_mile(mile)), kNow + std::chrono::hours{hours_ahead});
  }
  [[nodiscard]] TemperatureSource source(double mile) const {
    const RiverGraph graph = river_graph(river);
    return all(graph).source[*graph.at(river_mile(mile))];
  }
};

TEST(RiverTemperatures, AreTheGaugesOwnCurveAtTheGauge) {
  const auto t = Warm{}.at(45.3, 6);
  ASSERT_TRUE(t.has_value());
  EXPECT_NEAR(in_celsius(t->middle), daily_swing(-6), 1e-9);
  EXPECT_NEAR(in_kelvins(t->high - t->middle), 1.0, 1e-9);
}
TEST(RiverTemperatures, AreNotDelayedButLessSureWithDistance) {
  const auto t = Warm{}.at(36, 6);  // the reach from the creek to mile 35: its middle is 8.7 mi, 14.0 km, below
  ASSERT_TRUE(t.has_value());
  EXPECT_NEAR(in_celsius(t->middle), daily_swing(-6), 1e-9);
  EXPECT_NEAR(in_kelvins(t->high - t->middle), 1.0 + 0.5 + 0.1 * 8.7 * 1.609344, 1e-6);
  EXPECT_NEAR(in_kelvins(t->middle - t->low), 1.0 + 0.5 + 0.1 * 8.7 * 1.609344, 1e-6);
}
TEST(RiverTemperatures, AreUnknownPastTwentyKilometres) {
  const auto t = Warm{}.at(25, 6);
  ASSERT_FALSE(t.has_value());
  EXPECT_THAT(t.why_absent(), HasSubstr("no gauge near enough measures water temperature"));
}
TEST(RiverTemperatures, AreUnknownPastALargeTributary) {
  EXPECT_TRUE(Warm{240}.at(36, 6).has_value());   // 240/1220: 19.7 %
  EXPECT_FALSE(Warm{250}.at(36, 6).has_value());  // 250/1230: 20.3 %
  EXPECT_THAT(Warm{250}.at(36, 6).why_absent(), HasSubstr("Alder Creek, 20 % of the flow, parts it from gauge heron"));
}
TEST(RiverTemperatures, JudgeATributaryByItsFlowWhereBothAreRead) {
  Warm warm{400};
  warm.river.gauges.push_back(gauge_at("alder", std::nullopt, 400));
  warm.river.tributaries[0].gauge = "alder";
  GaugeRecord alder;
  alder.discharge = {{kNow}, {cubic_metres_per_second(5)}};
  warm.records.push_back(alder);
  warm.records[0].discharge = {{kNow}, {cubic_metres_per_second(50)}};
  EXPECT_TRUE(warm.at(36, 6).has_value());
  warm.records[1].discharge.values[0] = cubic_metres_per_second(20);
  EXPECT_FALSE(warm.at(36, 6).has_value());
}
TEST(RiverTemperatures, AreUnknownPastATributaryOfUnknownSize) {
  Warm warm;
  warm.river.tributaries[0].drainage_area.reset();
  EXPECT_THAT(warm.at(36, 6).why_absent(), HasSubstr("whose size is not known"));
}
TEST(RiverTemperatures, AreUnknownAcrossADamOrALake) {
  Warm dammed;
  Dam dam;
  dam.name = "Mill Dam";
  dam.place = river_mile(42);
  dammed.river.dams = {dam};
  EXPECT_THAT(dammed.at(41, 6).why_absent(), HasSubstr("Mill Dam parts it from gauge heron"));
  EXPECT_TRUE(dammed.at(43, 6).has_value());
  Warm ponded;
  Lake lake;
  lake.name = "Mill Pond";
  lake.from = river_mile(43);
  lake.to = river_mile(42);
  ponded.river.lakes = {lake};
  EXPECT_FALSE(ponded.at(41, 6).has_value());
}
TEST(RiverTemperatures, TakeTheNextGaugeWhereTheNearestIsParted) {
  Warm warm{400};
  warm.add(gauge_at("ferry", 27.5, 1500), temperatures(72, [](int) { return 14.0; }));
  const auto t = warm.at(36, 6);  // heron is nearer, by 0.3 mi, but the creek parts it
  ASSERT_TRUE(t.has_value());
  EXPECT_NEAR(in_celsius(t->middle), 14.0, 1e-9);
}
TEST(RiverTemperatures, AreNeverInventedWithoutAGauge) {
  Warm warm;
  warm.records[0].temperature = {};
  EXPECT_THAT(warm.at(45.3, 6).why_absent(), HasSubstr("no gauge reports water temperature"));
}

// Heron and Ferry, 28 km apart, five degrees apart, with flow between them.
struct Between : Warm {
  explicit Between(double alder_area_mi2 = 100) : Warm(alder_area_mi2) {
    flow_m3_s = 40.0;
    records[0].temperature = temperatures(24 * 6, daily_swing);
    add(gauge_at("ferry", 27.5, 1500), temperatures(24 * 6, [](int h) { return daily_swing(h) + 5.0; }));
  }
};
TEST(RiverTemperatures, AreFollowedFromGaugeToGauge) {
  const Between river;
  EXPECT_EQ(river.source(36).gauge, 0U);
  EXPECT_EQ(river.source(36).down_to, 1U);
  double above = in_celsius(river.at(45.0, 6)->middle);
  for (const double mile : {38.5, 34.0, 28.0}) {
    const double here = in_celsius(river.at(mile, 6)->middle);
    EXPECT_GT(here, above) << mile;
    above = here;
  }
  EXPECT_LT(above, daily_swing(-6) + 5.0);
  EXPECT_FALSE(river.source(25).down_to.has_value());  // below the last gauge: its own curve
}
TEST(RiverTemperatures, AreNotFollowedAcrossWaterOfUnknownWarmth) {
  Between river;
  river.river.tributaries[0].gauge = "alder";
  river.river.gauges.push_back(gauge_at("alder", std::nullopt, 400));
  GaugeRecord alder;
  alder.discharge = {{kNow}, {cubic_metres_per_second(10)}};  // of 40
  river.records.push_back(alder);
  EXPECT_FALSE(river.source(36).down_to.has_value());
  river.records[2].temperature = temperatures(24 * 6, [](int) { return 20.0; });
  EXPECT_TRUE(river.source(36).down_to.has_value());
}
TEST(RiverTemperatures, ComeFromAReleaseOfKnownTemperature) {
  Between river;
  Dam dam;
  dam.name = "Heron Dam";
  dam.place = river_mile(47);
  dam.release_depth = metres(20);
  river.river.dams = {dam};
  Lake lake;
  lake.name = "Heron Lake";
  lake.from = river_mile(55);
  lake.to = river_mile(47);
  lake.profile = {{metres(0), celsius(16)}, {metres(30), celsius(6)}};
  lake.profile_on = std::chrono::year{2027} / 5 / 1;
  river.river.lakes = {lake};
  EXPECT_EQ(river.source(46.5).dam, 0U);
  EXPECT_EQ(river.source(46.5).down_to, 0U);
  EXPECT_GE(in_kelvins(river.at(46.5, 6)->high - river.at(46.5, 6)->low), 0.5);
}
TEST(RiverTemperatures, AreTheSameInWhateverOrderTheGaugesAreTyped) {
  const Between river;
  Between turned;
  std::swap(turned.river.gauges[0], turned.river.gauges[1]);
  std::swap(turned.records[0], turned.records[1]);
  for (const double mile : {45.0, 36.0, 28.0, 25.0})
    EXPECT_EQ(river.at(mile, 6)->high, turned.at(mile, 6)->high) << mile;
}
TEST(RiverTemperatures, AreTheLevelOnlyWhereDailyMeansAreAll) {
  Warm warm;
  warm.records[0].temperature = {};
  const Instant today = std::chrono::floor<std::chrono::days>(kNow);
  for (int d = 10; d > 0; --d) {
    warm.records[0].daily_temperature.times.push_back(today - std::chrono::days{d});
    warm.records[0].daily_temperature.values.push_back(celsius(12.0));
  }
  const auto t = warm.at(45.3, 6);
  EXPECT_NEAR(in_celsius(t->middle), 12.0, 1e-9);
  EXPECT_NEAR(in_kelvins(t->high - t->middle), 3.0 + 1.5 * std::sqrt(2.0), 1e-9);  // two days on from yesterday's mean
  EXPECT_TRUE(warm.source(45.3).daily_means);
}
TEST(RiverTemperatures, GrowUnsureFasterInHeadwaters) {
  Warm warm;
  warm.river.gauges[0].drainage_area = square_kilometres(60);
  warm.river.gauges.push_back(gauge_at("mouth", 22.0, 30));
  warm.river.gauges.back().drainage_area = square_kilometres(90);
  warm.river.tributaries.clear();
  warm.records.emplace_back();
  const auto t = warm.at(36, 6);  // the reach from mile 40 to 35: its middle is 7.7 mi below
  EXPECT_NEAR(in_kelvins(t->high - t->middle), 1.0 + 0.5 + 0.4 * 7.7 * 1.609344, 1e-6);
}

}  // namespace
}  // namespace floatwright
