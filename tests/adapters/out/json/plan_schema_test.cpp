// The document against its published schema, judged by the package python3-jsonschema (Draft 2020-12). `format` is not
// checked there, so the schema has patterns.
#include <gmock/gmock.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <nlohmann/json.hpp>

#include "adapters/out/json/plan_json.hpp"
#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;
using Json = nlohmann::ordered_json;

constexpr const char* kJudge =
    "import json,sys\n"
    "try:\n"
    "  import jsonschema\n"
    "except ImportError:\n"
    "  sys.exit('install the package python3-jsonschema')\n"
    "schema=json.load(open(sys.argv[1]))\n"
    "V=jsonschema.Draft202012Validator\n"
    "V.check_schema(schema)\n"
    "errors=[f'{e.json_path}: {e.message[:200]}' for e in V(schema).iter_errors(json.load(open(sys.argv[2])))]\n"
    "print('\\n'.join(errors[:10]) or 'valid')\n";

// What the validator printed: "valid", or one line an error.
std::string judged(const std::string& document) {
  const std::string test = ::testing::UnitTest::GetInstance()->current_test_info()->name();
  const std::string folder = std::string(FLOATWRIGHT_BINARY_DIR) + "/";
  const std::string plan = folder + "plan_" + test + ".json", judge = folder + "judge_" + test + ".py";
  std::ofstream(plan, std::ios::binary) << document;
  std::ofstream(judge, std::ios::binary) << kJudge;
  const std::string schema = std::string(FLOATWRIGHT_SOURCE_DIR) + "/config/schemas/plan.schema.json";
  FILE* pipe = popen(("python3 '" + judge + "' '" + schema + "' '" + plan + "' 2>&1").c_str(), "r");
  if (pipe == nullptr) return "python3 could not be started";
  std::string said;
  std::array<char, 512> part{};
  while (fgets(part.data(), static_cast<int>(part.size()), pipe) != nullptr) said += part.data();
  pclose(pipe);
  return said;
}

Json sample() { return Json::parse(plan_json(sample_plan(), sample_inputs())); }

TEST(PlanSchema, AcceptsTheSamplePlan) { EXPECT_EQ(judged(plan_json(sample_plan(), sample_inputs())), "valid\n"); }

TEST(PlanSchema, AcceptsAPlanOfNothing) {
  DayPlan plan = sample_plan();
  plan.nothing = true;
  plan.stretches.clear();
  plan.hours.clear();
  plan.readings.clear();
  plan.reading_gauges.clear();
  plan.outlooks.clear();
  plan.sun_known = false;
  plan.missing_gauges = {"heron", "ferry"};
  plan.why_no_stretch = "no gauge answered";
  EXPECT_EQ(judged(plan_json(plan, sample_inputs())), "valid\n");
}

TEST(PlanSchema, AcceptsAPlanWithEveryThingUnknown) {
  DayPlan plan = sample_plan();
  for (PlannedReach& reach : plan.stretches[0].reaches) {
    reach.discharge = Absent{"no gauge on this branch"};
    reach.temperature = Absent{"no thermometer within 20 km"};
    for (PlannedWater& water : reach.waters) {
      water.depth = Absent{"flow not known"};
      water.choice = {};
      water.choice.why_none = "flow not known";
    }
  }
  plan.readings[0].si = Absent{"ice"};
  EXPECT_EQ(judged(plan_json(plan, sample_inputs())), "valid\n");
}

TEST(PlanSchema, RefusesAKeyThatItDoesNotKnow) {
  Json document = sample();
  document["stretches"][0]["stars"] = 5;
  EXPECT_THAT(judged(document.dump()), HasSubstr("stars"));
}

TEST(PlanSchema, RefusesADocumentWithoutItsReadings) {
  Json document = sample();
  document.erase("readings");
  EXPECT_THAT(judged(document.dump()), HasSubstr("'readings' is a required property"));
}

TEST(PlanSchema, RefusesATimeWithoutItsZone) {
  Json document = sample();
  document["stretches"][0]["launch"] = "2027-05-14T07:30:00";
  EXPECT_THAT(judged(document.dump()), HasSubstr("$.stretches[0].launch"));
}

TEST(PlanSchema, RefusesAnUnknownVerdictAndABandWithoutItsMiddle) {
  Json document = sample();
  document["stretches"][0]["verdict"] = "go";
  document["stretches"][0]["reaches"][0]["waters"][0]["depth_m"].erase("best");
  const std::string said = judged(document.dump());
  EXPECT_THAT(said, HasSubstr("$.stretches[0].verdict"));
  EXPECT_THAT(said, HasSubstr("depth_m"));
}

}  // namespace
}  // namespace floatwright::testing
