// `season` on the demo's invented years: what it says, and what it does with records and tackle that fall short.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "tests/scenarios/scenario.hpp"
#include "tests/support/schema.hpp"

namespace floatwright::testing {
namespace {

using nlohmann::json;
using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

// Dry flies and an indicator need no fishing tables; two waters of one stretch keep it short.
class SeasonDemo : public DemoCopy {
 public:
  SeasonDemo() {
    replace("settings.json", R"("swing": 1.0, "strip": 1.0, "dry": 0.9, "indicator": 0.7)", R"("dry": 0.9, "indicator": 0.7)");
    replace("tackle.json", R"("id": "dry_floater",)", R"("id": "dry_floater", "owned": false,)");
  }
  [[nodiscard]] Ran season(std::vector<std::string> more = {}, std::string payload = (kRoot / "config/demo/years").string()) const {
    std::vector<std::string> words{"season", "--config", config().string(), "--payload", std::move(payload), "--now", kDemoNow};
    words.insert(words.end(), more.begin(), more.end());
    return floatwright_says(words);
  }
};

TEST(Season, SaysWhatEachLineCoversAndWhatAnotherWouldAdd) {
  const SeasonDemo demo;
  const auto ran = demo.season({"--since", "P90D"});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_THAT(ran.out, AllOf(HasSubstr("WHICH LINES EARN THEIR PLACE: Lantern River"), HasSubstr("WHAT EACH LINE COVERS"),
                             HasSubstr("THE FEW THAT COVER MOST"), HasSubstr("WHAT ANOTHER LINE WOULD ADD"),
                             HasSubstr("less than a year"), HasSubstr("a licensed guide on the water")));
  EXPECT_THAT(ran.out, Not(HasSubstr("commonly sold")));
  EXPECT_THAT(ran.err, HasSubstr("shorter than a year"));
  for (std::size_t at = 0, end = 0; (end = ran.out.find('\n', at)) != std::string::npos; at = end + 1)
    EXPECT_LE(end - at, 80u) << ran.out.substr(at, end - at);
}

TEST(Season, PrintsADocumentThatItsSchemaTakesAndThatAddsUp) {
  const SeasonDemo demo;
  const auto ran = demo.season({"--since", "P90D", "--as", "json", "--quiet"});
  ASSERT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_EQ(judged_by_schema("season", ran.out), "valid");
  const auto found = json::parse(ran.out);
  double share = 0.0;
  for (const auto& step : found.at("discharge_steps")) share += step.at("share").get<double>();
  EXPECT_NEAR(share, 1.0, 1e-9);
  const auto& record = found.at("record");
  EXPECT_NEAR(record.at("reach_days_judged").get<double>() + record.at("reach_days_no_line_reaches").get<double>() +
                  record.at("reach_days_water_unknown").get<double>(),
              record.at("reach_days_fishable").get<double>(), 1e-6);
  for (const auto& line : found.at("lines")) {
    EXPECT_LE(line.at("covers").get<double>(), found.at("all_cover").get<double>() + 1e-9);
    EXPECT_LE(line.at("covered_by_no_other_owned").get<double>(), line.at("covers").get<double>() + 1e-9);
  }
  EXPECT_THAT(demo.season({"--since", "P90D", "--as", "svg", "--quiet"}).out, StartsWith("<svg"));
}

// What is only considered is in no plan, and one considered line stands for itself alone.
TEST(Season, LeavesAPlanWithoutTheLineThatIsNotOwned) {
  const DemoCopy demo;
  demo.replace("tackle.json", R"("id": "six_tip_5",)", R"("id": "six_tip_5", "owned": false,)");
  const auto plan = demo.plan({"--as", "json"});
  EXPECT_THAT(plan.out, Not(HasSubstr("six_tip_5"))) << plan.err;
  EXPECT_THAT(plan.out, HasSubstr("six_tip_4"));
}

TEST(Season, TellsWhatItCannotJudge) {
  const SeasonDemo demo;
  EXPECT_EQ(demo.season({"--since", "2030-01-01"}).exit_code, 64);
  EXPECT_THAT(demo.season({"--since", "2030-01-01"}).err, HasSubstr("span of time"));
  ScratchFolder empty;
  const auto nothing = demo.season({}, empty.path().string());
  EXPECT_EQ(nothing.exit_code, 69);
  EXPECT_THAT(nothing.err, HasSubstr("no flow on record"));
  EXPECT_EQ(demo.season({}, "/no/such/place").exit_code, 66);
  demo.replace("tackle.json", R"("id": "dry_floater",)", R"("id": "dry_taper",)");
  const auto twice = demo.season();
  EXPECT_EQ(twice.exit_code, 78);
  EXPECT_THAT(twice.err, HasSubstr("\"dry_taper\", which /lines/"));
}

}  // namespace
}  // namespace floatwright::testing
