#include "engine/temperature/river_temperatures.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

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

// Accesses at miles 45.6, 40, 35, 30 and 22; one gauge at 45.2 that reports temperature; Alder Creek joins at 38.
struct Warm {
  River river;
  std::vector<GaugeRecord> records;

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
  [[nodiscard]] Measured<PerCase<Temperature>> at(double mile, int hours_ahead) const {
    const RiverGraph graph = river_graph(river);
    const auto all = river_temperatures(river, graph, records, grid_around(), kNow);
    return temperature_at(all, *graph.at(river_mile(mile)), kNow + std::chrono::hours{hours_ahead});
  }
};

TEST(RiverTemperatures, AreTheGaugesOwnCurveAtTheGauge) {
  const auto t = Warm{}.at(45.3, 6);
  ASSERT_TRUE(t.has_value());
  EXPECT_NEAR(in_celsius(t->middle), daily_swing(-6), 1e-9);
  EXPECT_NEAR(in_kelvins(t->high - t->middle), 0.8, 1e-9);
}
TEST(RiverTemperatures, AreNotDelayedButLessSureWithDistance) {
  const auto t = Warm{}.at(36, 6);  // the reach from the creek to mile 35: its middle is 8.7 mi, 14.0 km, below
  ASSERT_TRUE(t.has_value());
  EXPECT_NEAR(in_celsius(t->middle), daily_swing(-6), 1e-9);
  EXPECT_NEAR(in_kelvins(t->high - t->middle), 0.8 + 0.5 + 0.1 * 8.7 * 1.609344, 1e-6);
  EXPECT_NEAR(in_kelvins(t->middle - t->low), 0.8 + 0.5 + 0.1 * 8.7 * 1.609344, 1e-6);
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
  warm.river.gauges.push_back(gauge_at("ferry", 27.5, 1500));
  GaugeRecord ferry;
  ferry.gauge = "ferry";
  ferry.temperature = temperatures(72, [](int) { return 14.0; });
  warm.records.push_back(ferry);
  const auto t = warm.at(36, 6);  // heron is nearer, by 0.3 mi, but the creek parts it
  ASSERT_TRUE(t.has_value());
  EXPECT_NEAR(in_celsius(t->middle), 14.0, 1e-9);
}
TEST(RiverTemperatures, AreNeverInventedWithoutAGauge) {
  Warm warm;
  warm.records[0].temperature = {};
  EXPECT_THAT(warm.at(45.3, 6).why_absent(), HasSubstr("no gauge reports water temperature"));
}

}  // namespace
}  // namespace floatwright
