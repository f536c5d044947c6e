#include "adapters/in/files/sink_case_file.hpp"

#include <cmath>

#include "tests/adapters/in/files/everything.hpp"
#include "tests/adapters/in/files/reading_support.hpp"

namespace floatwright {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

// A sound case, of which a test changes the water, a part, the fly or what stands behind them.
std::string a_case(const std::string& water, const std::string& part = R"("diameter_mm": 1.0, "sink_rate_m_s": 0.1)",
                   const std::string& fly = R"("weight_in_water_n": 0.002, "towed_drag_area_m2": 1e-4)",
                   const std::string& more = "") {
  return "{ \"water\": { " + water + " },\n\"parts\": [ { \"kind\": \"sinking\", \"length_m\": 4, " + part +
         " } ],\n\"fly\": { " + fly + " }" + more + " }";
}
const std::string kWater = R"("depth_m": 2, "surface_speed_m_s": 1)";

SteadyCase steady(const std::string& text) {
  const auto read = read_text(text, read_sink_case);
  EXPECT_THAT(read.problems, IsEmpty());
  return std::get<SteadyCase>(read.value);
}

TEST(SinkCaseFile, ReadsTheExamplesThatAreShipped) {
  for (const char* name : {"tip_held_steady", "tip_cast_and_fed"}) {
    const auto loaded = load_sink_case(std::string(FLOATWRIGHT_SOURCE_DIR "/config/cases/") + name + ".json");
    EXPECT_THAT(loaded.problems, IsEmpty()) << name;
    ASSERT_TRUE(loaded.sink_case);
    EXPECT_EQ(std::holds_alternative<CastCase>(*loaded.sink_case), std::string(name) == "tip_cast_and_fed");
  }
}

TEST(SinkCaseFile, TakesAMeanSpeedThroughItsProfile) {
  // Mean over surface speed of a power law is 1/(1+p), of a uniform stream 1 (docs/equations.md; integral of z^p).
  const auto speed = [](const std::string& profile) {
    return in_metres_per_second(
        steady(a_case(R"("depth_m": 2, "mean_speed_m_s": 1, "profile": )" + profile)).surface_speed);
  };
  EXPECT_NEAR(speed(R"({ "power": 0.25 })"), 1.25, 1e-12);
  EXPECT_NEAR(speed(R"({ "uniform": true })"), 1.0, 1e-12);
  // Log law: 1/(1 - 1/ln(30 h/ks)) = 1/(1 - 1/ln 1200).
  EXPECT_NEAR(speed(R"({ "log_ks_m": 0.05 })"), 1.0 / (1.0 - 1.0 / std::log(1200.0)), 1e-12);
}

TEST(SinkCaseFile, TakesUnitsInSeveralSpellings) {
  const SteadyCase us = steady(a_case(R"("depth_ft": 10, "surface_speed_ft_s": 2, "temperature_f": 50)",
                                      R"("diameter_in": 0.04, "sink_rate_in_s": [4, 6])"));
  EXPECT_NEAR(us.depth.si(), 3.048, 1e-12);
  EXPECT_NEAR(in_metres_per_second(us.surface_speed), 0.6096, 1e-12);
  EXPECT_NEAR(in_celsius(us.temperature), 10.0, 1e-12);
  EXPECT_NEAR(us.parts[0].diameter.si(), 0.001016, 1e-12);
  EXPECT_NEAR(us.parts[0].sink_rate_butt->si(), 0.1016, 1e-12);
  EXPECT_NEAR(us.parts[0].sink_rate_end->si(), 0.1524, 1e-12);
}

TEST(SinkCaseFile, HoldsTheBodyPulledUnderUnlessTold) {
  EXPECT_EQ(steady(a_case(kWater)).end, SurfaceEnd::BodyPulledUnder);
  EXPECT_EQ(steady(a_case(kWater, R"("diameter_mm": 1, "density_kg_m3": 1500)",
                          R"("weight_in_water_n": 0.002, "towed_drag_area_m2": 0)", R"(, "hold": "butt_at_surface")"))
                .end,
            SurfaceEnd::ButtAtSurface);
}

TEST(SinkCaseFile, GivesATowedFlyAQuarterOfTheAreaThatItsSinkRateImplies) {
  // W = 1/2 rho CdA Vs^2 by the definition of a drag coefficient; rho of water at 10 C 999.70 kg/m3
  // (docs/equations.md).
  const SteadyCase read = steady(a_case(kWater, R"("diameter_mm": 1, "sink_rate_m_s": 0.1)",
                                        R"("weight_in_water_n": 0.002, "sink_rate_m_s": 0.1)"));
  EXPECT_NEAR(read.fly.towed_drag_area.si(), 0.25 * 2 * 0.002 / (999.70 * 0.01), 1e-9);
}

TEST(SinkCaseFile, ReadsACastWithItsPlatform) {
  const auto read = read_text(
      a_case(kWater, R"("diameter_mm": 1, "density_kg_m3": 870)",
             R"("weight_in_water_n": 0.002, "towed_drag_area_m2": 1e-4)",
             R"(, "platform": "drifting", "cast": { "bearing_deg": 45, "slack": 0.2, "feed_s": 3, "line_out_m": 12 })"),
      read_sink_case);
  EXPECT_THAT(read.problems, IsEmpty());
  const auto& cast = std::get<CastCase>(read.value);
  EXPECT_NEAR(in_degrees(cast.bearing), 45.0, 1e-12);
  EXPECT_NEAR(cast.boat.si(), 1.0, 1e-12) << "a drifting boat goes with the surface";
  EXPECT_NEAR(cast.parts.back().length.si(), 15.0, 1e-12) << "12 m out and 3 s fed at 1 m/s come off the reel";
}

TEST(SinkCaseFile, LetsALineThatStandsStillBeCast) {
  const auto cast = [](const std::string& velocity) {
    return read_text(a_case(kWater, R"("diameter_mm": 1, "density_kg_m3": 870)",
                            R"("weight_in_water_n": 0.002, "towed_drag_area_m2": 1e-4)",
                            R"(, "line_velocity_m_s": )" + velocity + R"(, "cast": { "line_out_m": 3 })"),
                     read_sink_case);
  };
  EXPECT_THAT(cast("[0, 0]").problems, IsEmpty());
  EXPECT_THAT(cast("[0.5, 0]").problems, testing::SizeIs(1));
}

struct Wrong {
  std::string water, part, fly, more, pointer, found;
};
class WrongCase : public testing::TestWithParam<Wrong> {};

TEST_P(WrongCase, IsToldWithItsPlace) {
  const auto& [water, part, fly, more, pointer, found] = GetParam();
  const auto read = read_text(
      a_case(water.empty() ? kWater : water, part.empty() ? R"("diameter_mm": 1, "sink_rate_m_s": 0.1)" : part,
             fly.empty() ? R"("weight_in_water_n": 0.002, "towed_drag_area_m2": 1e-4)" : fly, more),
      read_sink_case);
  ASSERT_THAT(read.problems, Not(IsEmpty()));
  EXPECT_THAT(read.problems, testing::Contains(AllOf(testing::Field(&Problem::pointer, pointer),
                                                     testing::Field(&Problem::found, HasSubstr(found)))));
  for (const Problem& problem : read.problems) EXPECT_GT(problem.line, 0);
}

INSTANTIATE_TEST_SUITE_P(
    Of, WrongCase,
    testing::Values(
        Wrong{R"("depth": 2, "surface_speed_m_s": 1)", "", "", "", "/water/depth", "unknown key"},
        Wrong{R"("depth_m": 2)", "", "", "", "/water", "no speed"},
        Wrong{R"("depth_m": 2, "surface_speed_m_s": 1, "mean_speed_m_s": 1)", "", "", "", "/water", "at once"},
        Wrong{R"("depth_m": 0, "surface_speed_m_s": 1)", "", "", "", "/water/depth_m", "0"},
        Wrong{R"("depth_m": 2, "surface_speed_m_s": -1)", "", "", "", "/water/surface_speed_m_s", "-1"},
        Wrong{R"("depth_m": 2, "surface_speed_m_s": 1, "profile": { })", "", "", "", "/water/profile",
              "none or several"},
        Wrong{R"("depth_m": 2, "surface_speed_m_s": 1, "profile": { "uniform": false })", "", "", "",
              "/water/profile/uniform", "false"},
        Wrong{R"("depth_m": 2, "surface_speed_m_s": 1, "profile": { "log_ks_m": 2 })", "", "", "", "/water/profile",
              "as rough as"},
        Wrong{"", R"("diameter_mm": 1)", "", "", "/parts/0", "neither a density nor a sink rate"},
        Wrong{"", R"("diameter_mm": 1, "density_kg_m3": 1200, "sink_rate_m_s": 0.1)", "", "", "/parts/0", "at once"},
        Wrong{"", R"("diameter_mm": 1, "sink_rate_m_s": [0.1])", "", "", "/parts/0", "not two numbers"},
        Wrong{"", R"("diameter_mm": 1, "sink_rate_m_s": 0.1, "length_ft": 3)", "", "", "/parts/0/length_m", "at once"},
        Wrong{"", "", R"("weight_in_water_n": 0.002)", "", "/fly", "neither a sink rate nor a drag area"},
        Wrong{"", "", R"("weight_in_water_n": "heavy", "towed_drag_area_m2": 1e-4)", "", "/fly/weight_in_water_n",
              "heavy"},
        Wrong{"", "", "", R"(, "hold": "held")", "/hold", "held"},
        Wrong{"", "", "", R"(, "line_velocity_m_s": [1])", "/line_velocity_m_s", "not two numbers"},
        Wrong{"", "", "", R"(, "platform": "anchored")", "/platform", "without \"cast\""},
        Wrong{"", "", "", R"(, "cast": { "line_out_m": 3 }, "hold": "butt_at_surface")", "/hold", "beside \"cast\""},
        Wrong{"", "", "", R"(, "cast": { })", "/cast", "line_out"},
        Wrong{"", "", "", R"(, "cast": { "line_out_m": 3, "bearing_deg": 200 })", "/cast/bearing_deg", "200"}));

TEST(SinkCaseFile, SaysThatAFileIsNotThere) {
  const auto loaded = load_sink_case("/nowhere/case.json");
  EXPECT_EQ(loaded.exit_code, 66);
  EXPECT_FALSE(loaded.sink_case);
  ASSERT_FALSE(loaded.problems.empty());
}

}  // namespace
}  // namespace floatwright
