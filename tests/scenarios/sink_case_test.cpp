// `sink --case`: exact cases in, plain numbers out, against closed forms; problems with file, line and pointer.
#include <fmt/format.h>
#include <gmock/gmock.h>

#include <chrono>
#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using Json = nlohmann::json;

class SinkCase : public ::testing::Test {
 protected:
  Ran solved(const std::string& text, const std::vector<std::string>& more = {"--as", "json"}) {
    write_text(file_, text);
    std::vector<std::string> words{"sink", "--case", file_.string()};
    words.insert(words.end(), more.begin(), more.end());
    return floatwright_says(words);
  }
  Json answer(const std::string& text) {
    const auto ran = solved(text);
    EXPECT_EQ(ran.exit_code, 0) << ran.err;
    return ran.exit_code == 0 ? Json::parse(ran.out) : Json();
  }

  ScratchFolder scratch_;
  std::filesystem::path file_ = scratch_.path() / "case.json";
};

std::string uniform(double speed, const std::string& parts, const std::string& fly, const std::string& more = "") {
  return fmt::format(
      R"({{ "water": {{ "depth_m": 50, "mean_speed_m_s": {}, "profile": {{ "uniform": true }} }}, "parts": [ {} ], "fly": {{ {} }}{} }})",
      speed, parts, fly, more);
}

// Pode 1951 (DTMB Report 687): a long line with no end load lies straight at cos(phi) = (-k + sqrt(k^2 + 4))/2, k =
// (Vs/U)^2. Within 0.7 % though the drag depends on the Reynolds number: a line that lies flat meets the water at about
// its own rate.
TEST_F(SinkCase, LaysALongLineAtTheCriticalAngle) {
  for (const double ratio : {0.1, 0.3, 0.5}) {
    const double speed = 0.1524 / ratio, k = ratio * ratio, length = 10.0;
    const Json found =
        answer(uniform(speed, R"({ "kind": "sinking", "length_m": 10, "diameter_mm": 1.0, "sink_rate_m_s": 0.1524 })",
                       R"("weight_in_water_n": 1e-9, "towed_drag_area_m2": 0)",
                       R"(, "hold": "butt_at_surface", "tangential_drag_coefficient": 0)"));
    const double angle = std::acos((-k + std::sqrt(k * k + 4.0)) / 2.0);  // rad
    EXPECT_NEAR(found.at("angle_at_surface_deg").get<double>(), angle * 180.0 / std::numbers::pi,
                0.007 * angle * 180.0 / std::numbers::pi)
        << ratio;
    EXPECT_NEAR(found.at("fly_depth_m").get<double>(), length * std::sin(angle), 0.007 * length * std::sin(angle))
        << ratio;
    EXPECT_EQ(found.at("shape").front().at(1), found.at("butt_depth_m")) << "from the surface end";
    EXPECT_NEAR(found.at("shape").back().at(1).get<double>(), found.at("fly_depth_m").get<double>(), 1e-6)
        << "down to the fly";
  }
}

// A ball on a thin, all but weightless line of no drag: tan(phi from vertical) = D/B, drop = L cos(phi); D/B 1 is 45
// degrees.
TEST_F(SinkCase, HangsABallAtTheAngleOfItsDragOverItsWeight) {
  // 0.5 x 999.70 kg/m3 x CdA x (0.5 m/s)^2 = 0.1 N: CdA = 8.0024e-4 m2 (water at 10 C, docs/equations.md).
  const Json found =
      answer(uniform(0.5, R"({ "kind": "leader", "length_m": 0.5, "diameter_mm": 0.01, "density_kg_m3": 1000 })",
                     R"("weight_in_water_n": 0.1, "towed_drag_area_m2": 8.0024e-4)", R"(, "hold": "butt_at_surface")"));
  EXPECT_NEAR(found.at("fly_depth_m").get<double>(), 0.5 * std::sqrt(0.5), 0.01);
  EXPECT_NEAR(found.at("tension_n").get<double>(), 0.1 * std::sqrt(2.0), 0.003);
}

TEST_F(SinkCase, SaysThatALineLiesOnTheBed) {
  const Json found = answer(
      R"({ "water": { "depth_m": 1, "mean_speed_m_s": 0.1 }, "parts": [ { "kind": "sinking", "length_m": 9, "diameter_mm": 1, "sink_rate_m_s": 0.2 } ],
    "fly": { "weight_in_water_n": 0.01, "towed_drag_area_m2": 1e-4 } })");
  EXPECT_TRUE(found.at("on_the_bed").get<bool>());
  EXPECT_LE(found.at("fly_depth_m").get<double>(), 1.0);
}

const std::string kCast = R"({ "water": { "depth_m": 2, "surface_speed_m_s": 0.8 }, "parts": [
  { "kind": "leader", "length_m": 1, "diameter_mm": 0.3, "density_kg_m3": 1140 },
  { "kind": "sinking", "length_m": 3.8, "diameter_mm": 1, "sink_rate_m_s": [0.12, 0.13] },
  { "kind": "floating", "length_m": 20, "diameter_mm": 1.3, "density_kg_m3": 870 } ],
  "fly": { "weight_in_water_n": 0.003, "sink_rate_m_s": 0.127, "towed_drag_area_m2": 1e-4 },
  "cast": { "bearing_deg": 70, "slack": 0.1, "feed_s": 3, "line_out_m": 8 } })";

TEST_F(SinkCase, SimulatesACastEveryTenthOfASecond) {
  const Json found = answer(kCast);
  const Json& path = found.at("path");
  ASSERT_EQ(path.size(), 601U) << "60 s";
  for (std::size_t i = 0; i < path.size(); ++i)
    EXPECT_NEAR(path.at(i).at("t_s").get<double>(), 0.1 * static_cast<double>(i), 1e-9);
  EXPECT_NEAR(path.front().at("bearing_deg").get<double>(), 70.0, 0.5);
  EXPECT_LT(path.back().at("bearing_deg").get<double>(), 10.0) << "it hangs downstream in the end";
  for (const char* second : {"2", "4", "6"}) {
    const Json& row = path.at(static_cast<std::size_t>(10 * std::stoi(second)));
    EXPECT_EQ(found.at("tip_depth_at_s").at(second), row.at("tip_depth_m"));
    EXPECT_EQ(found.at("fly_depth_at_s").at(second), row.at("fly_depth_m"));
  }
  double deepest = 0.0;
  for (const auto& row : path) deepest = std::max(deepest, row.at("fly_depth_m").get<double>());
  EXPECT_DOUBLE_EQ(found.at("deepest_fly_m").get<double>(), deepest);
  EXPECT_EQ(found.at("end_fly_m"), path.back().at("fly_depth_m"));
}

TEST_F(SinkCase, StandsAlone) {
  const auto ran = solved(kCast, {"--depth", "5 ft"});
  EXPECT_EQ(ran.exit_code, 64);
  EXPECT_THAT(ran.err, HasSubstr("--case holds rig, water and cast itself"));
}

TEST_F(SinkCase, IsSaidInWordsWithoutAs) {
  EXPECT_THAT(solved(kCast, {}).out, AllOf(HasSubstr("at its deepest"), HasSubstr("no band is put on an exact case")));
}

TEST_F(SinkCase, TellsEveryMistakeWithFileLineAndPointer) {
  const auto ran = solved(
      "{\n\"water\": { \"depth_m\": -1, \"mean_sped_m_s\": 1 },\n\"parts\": [ { \"kind\": \"rope\", \"length\": 3 } "
      "],\n\"fly\": 7 }");
  EXPECT_EQ(ran.exit_code, 78);
  EXPECT_EQ(ran.out, "");
  for (const char* part :
       {"case.json:2: /water/depth_m: found -1", "/water/mean_sped_m_s: found the unknown key", "\"mean_speed_m_s\"",
        "case.json:3: /parts/0/kind", "/parts/0/length: found the unknown key", "case.json:4: /fly: found 7"})
    EXPECT_THAT(ran.err, HasSubstr(part));
  EXPECT_EQ(solved("{ \"water\": ").exit_code, 78);
  EXPECT_EQ(solved("[]").exit_code, 78);
  EXPECT_EQ(floatwright_says({"sink", "--case", "/nowhere.json"}).exit_code, 66);
}

TEST_F(SinkCase, SaysThatALineLighterThanWaterHasNoDepth) {
  const auto ran =
      solved(uniform(1.0, R"({ "kind": "floating", "length_m": 5, "diameter_mm": 1.3, "density_kg_m3": 870 })",
                     R"("weight_in_water_n": 0, "towed_drag_area_m2": 1e-4)"));
  EXPECT_EQ(ran.exit_code, 65);
  EXPECT_THAT(ran.err, HasSubstr("lighter than water"));
}

// 100 parts, water that stands or runs at 4 m/s, depths of 0.1 and 30 m, a floating fly, a leader longer than the water
// is deep: an answer without a number that is none, or a sentence, and soon.
TEST_F(SinkCase, AnswersAtTheEdgesInABoundedTime) {
  std::string parts;
  for (int i = 0; i < 100; ++i)
    parts += std::string(i == 0 ? "" : ", ") + R"({ "kind": ")" + (i < 50 ? "sinking" : "floating") +
             R"(", "length_m": 0.2, "diameter_mm": 1, )" +
             (i < 50 ? R"("sink_rate_m_s": 0.15 })" : R"("density_kg_m3": 870 })");
  const std::string leader =
      R"({ "kind": "leader", "length_m": 14, "diameter_mm": 0.3, "density_kg_m3": 1140 }, )"
      R"({ "kind": "sinking", "length_m": 4, "diameter_mm": 1, "sink_rate_m_s": 0.15 }, { "kind": "floating", "length_m": 20, "diameter_mm": 1.3, "density_kg_m3": 870 })";
  for (const std::string& line : {parts, leader})
    for (const double speed : {0.0, 4.0})
      for (const double depth : {0.1, 30.0})
        for (const double weight : {-0.002, 0.003})
          for (const char* more : {"", R"(, "cast": { "line_out_m": 3, "feed_s": 2 })"}) {
            const auto began = std::chrono::steady_clock::now();
            const auto ran = solved(fmt::format(
                R"({{ "water": {{ "depth_m": {}, "surface_speed_m_s": {} }}, "parts": [ {} ], "fly": {{ "weight_in_water_n": {}, "towed_drag_area_m2": 1e-4 }}{} }})",
                depth, speed, line, weight, more));
            const std::string where =
                fmt::format("depth {}, speed {}, weight {}{}: {}", depth, speed, weight, more, ran.err);
            EXPECT_LT(std::chrono::steady_clock::now() - began, std::chrono::seconds(20)) << where;
            ASSERT_TRUE(ran.exit_code == 0 || (ran.exit_code == 65 && !ran.err.empty())) << where;
            if (ran.exit_code == 0) EXPECT_EQ(ran.out.find("null"), std::string::npos) << where;
          }
}

}  // namespace
}  // namespace floatwright::testing
