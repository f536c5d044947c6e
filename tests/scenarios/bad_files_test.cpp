// A person's files with mistakes in them: told all at once with file, line and place, exit code 78, and no plan.
#include <gmock/gmock.h>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;

int line_of(const std::filesystem::path& file, const std::string& what) {
  const auto text = text_of(file);
  return 1 + static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(text.find(what)), '\n'));
}

std::string at_line(const std::string& file, int line) { return file + ":" + std::to_string(line) + ":"; }

TEST(BadFiles, AreToldAllAtOnce) {
  const DemoCopy demo;
  demo.replace("river.json", "\"snow_fed\"", "\"snow_fad\"");
  demo.replace("tackle.json", "\"line_number\": 5", "\"line_number\": \"five\"");
  demo.replace("settings.json", "\"rods_aboard\": 3", "\"rods_aboard\": -3");
  const auto ran = demo.check();
  EXPECT_EQ(ran.exit_code, 78);
  EXPECT_THAT(ran.out, AllOf(HasSubstr("snow_fad"), HasSubstr("snow_fed"), HasSubstr("\"five\""), HasSubstr("-3")));
  EXPECT_THAT(ran.out, HasSubstr(at_line("river.json", line_of(demo.config() / "river.json", "snow_fad"))));
  EXPECT_THAT(ran.out, HasSubstr(at_line("tackle.json", line_of(demo.config() / "tackle.json", "\"five\""))));
  EXPECT_THAT(ran.out, HasSubstr("/rods/1/line_number"));
}

struct Mistake {
  std::string file, from, to, told;
};

class OneMistake : public ::testing::TestWithParam<Mistake> {};

TEST_P(OneMistake, IsToldAndStopsThePlan) {
  const auto& mistake = GetParam();
  const DemoCopy demo;
  demo.replace(mistake.file, mistake.from, mistake.to);
  const auto checked = demo.check();
  EXPECT_EQ(checked.exit_code, 78) << checked.out << checked.err;
  EXPECT_THAT(checked.out, HasSubstr(mistake.told));
  EXPECT_THAT(checked.out, HasSubstr(mistake.file + ":"));
  const auto planned = demo.plan();
  EXPECT_EQ(planned.exit_code, 78);
  EXPECT_EQ(planned.out, "");
}

INSTANTIATE_TEST_SUITE_P(
    BadFiles, OneMistake,
    ::testing::Values(
        Mistake{"river.json", "\"depth_ft\": 4.0", "\"depth_ft\": 4.0, \"depth_m\": 1.2", "depth_m"},
        Mistake{"river.json", "\"mile\": 40.2", "\"mile\": \"forty\"", "forty"},
        Mistake{"river.json", "\"mile\": 40.2", "\"mile\": 240.2", "240.2"},
        Mistake{"river.json", "\"depth_ft\": 4.0", "\"depth_ft\": -4.0", "-4"},
        Mistake{"river.json", "\"depth_ft\": 4.0", "\"depth_ft\": 1e999", "1e999"},
        Mistake{"river.json", "\"depth_ft\": 4.0", "\"depth_ft\": NaN", "NaN"},
        Mistake{"river.json", "\"snow_fed\": true,", "\"snow_fed\": true, \"snow_fed\": false,", "snow_fed"},
        Mistake{"river.json", "\"leaves_at_mile\": 38.6, \"returns_at_mile\": 37.4", "\"leaves_at_mile\": 37.4, \"returns_at_mile\": 38.6",
                "/side_channels/0"},
        Mistake{"river.json", "America/Denver", "America/Lantern", "America/Lantern"},
        Mistake{"river.json", "usgs:00000001", "nowhere:1", "nowhere"},
        Mistake{"river.json", "\"gauge\": \"alder\"", "\"gauge\": \"elder\"", "elder"},
        Mistake{"river.json", "heron_releases.csv", "no_such.csv", "no_such.csv"},
        Mistake{"heron_releases.csv", "2027-05-07T21:00-06:00,1350", "2027-05-06T21:00-06:00,1350", "2027-05-06T21:00"},
        Mistake{"tackle.json", "\"WF-6-F/S\"", "\"WF6\"", "WF6"},
        Mistake{"tackle.json", "\"on_rod\": \"thin\"", "\"on_rod\": \"thick\"", "thick"},
        Mistake{"tackle.json", "\"kind\": \"nymph_taper\"", "\"kind\": \"nymph_tapir\"", "nymph_taper"},
        Mistake{"tackle.json", "\"rods\": [", "\"rods\": [], \"kept\": [", "found no rod"},
        Mistake{"settings.json", "\"rods_aboard\": 3", "\"rods_aboard\": 0", "rods_aboard"},
        Mistake{"settings.json", "\"latest_off\": \"19:00\"", "\"latest_off\": \"07:00\"", "launch before off"},
        Mistake{"settings.json", "\"earliest_launch\": \"07:30\"", "\"earliest_launch\": \"25:00\"", "25:00"},
        Mistake{"settings.json", "\"heat_stop_f\": 69", "\"heat_stop_f\": 75", "75"},
        Mistake{"settings.json", "\"swing\": 1.0", "\"swong\": 1.0", "swing"}));

// What makes a plan poorer and not impossible: told with file and place, and planned all the same.
struct Doubt {
  std::string file, from, to, pointer, told;
};

class OneDoubt : public ::testing::TestWithParam<Doubt> {};

TEST_P(OneDoubt, IsToldAndStillPlanned) {
  const auto& doubt = GetParam();
  const DemoCopy demo;
  demo.replace(doubt.file, doubt.from, doubt.to);
  const std::string before = text_of(demo.config() / doubt.file);
  const auto planned = demo.plan();
  EXPECT_EQ(planned.exit_code, 0) << planned.err;
  EXPECT_THAT(planned.err, AllOf(HasSubstr(doubt.file + ":"), HasSubstr("warning: " + doubt.pointer + ": found "),
                                 HasSubstr(doubt.told), HasSubstr("allowed: ")));
  EXPECT_THAT(planned.out, HasSubstr("FLOAT "));
  EXPECT_EQ(text_of(demo.config() / doubt.file), before);
}

const std::string kMillNote = R"({ "from": "mill", "to": "bar", "at_flow_cfs": 900, "float_time_h": 3.4,
      "waters": [ { "water": "run", "fishing_time": 1.0, "depth_ft": 3.0, "surface_speed_ft_s": 2.0 } ] },
    )";
const std::string kRiffle =
    R"({ "seen_on": "2026-05-20", "at_flow_cfs": 1800, "depth_ft": 2.0, "surface_speed_ft_s": 3.8 })";

INSTANTIATE_TEST_SUITE_P(
    BadFiles, OneDoubt,
    ::testing::Values(
        Doubt{"river.json", "\"boat_limits\": { \"least_flow_cfs\": 600, \"most_flow_cfs\": 5200 },", "", "/boat_limits",
              "no flow range for the boat"},
        Doubt{"river.json", "{ \"from\": \"bar\", \"to\": \"ferry\"", kMillNote + "{ \"from\": \"bar\", \"to\": \"ferry\"",
              "/notes/2", "only /notes/1 is read"},
        Doubt{"river.json", kRiffle,
              kRiffle + R"(, { "seen_on": "2026-06-02", "at_flow_cfs": 1800, "depth_ft": 6.0, "surface_speed_ft_s": 3.8 })",
              "/reaches/0/waters/0", "6 ft deep"},
        Doubt{"river.json", kRiffle,
              kRiffle + R"(, { "seen_on": "2026-06-02", "at_flow_cfs": 900, "depth_ft": 3.0, "surface_speed_ft_s": 3.0 })",
              "/reaches/0/waters/0", "deeper with more flow"}));

TEST(BadFiles, WithoutAFlyForAMethodAreToldOf) {
  const DemoCopy demo;
  demo.replace("settings.json", "\"indicator\": 0.7", "\"indicator\": 0.7, \"tight_line\": 0.5");
  for (int nymph = 0; nymph < 2; ++nymph)
    demo.replace("tackle.json", "[\"indicator\", \"tight_line\"]", "[\"indicator\"]");
  const auto ran = demo.check();
  EXPECT_EQ(ran.exit_code, 0);
  EXPECT_THAT(ran.out, AllOf(HasSubstr("tackle.json:"), HasSubstr("warning: /flies: found no fly for tight_line")));
}

// Not one trailer gets to the water, or the boat fits no stretch: every stretch stands with its limit, and nothing is
// recommended.
TEST(BadFiles, WithNoRoadToAnyAccessMakeNoFloat) {
  const DemoCopy demo;
  for (const char* name : {"Heron Ramp", "Mill Bridge", "Alder Bar", "Old Ferry", "Quarry Landing"}) {
    const std::string key = std::string("\"name\": \"") + name + "\",";
    demo.replace("river.json", key, key + " \"trailer\": false,");
  }
  const auto ran = demo.plan();
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_THAT(ran.out, AllOf(HasSubstr("NO PLAN"), HasSubstr("no trailer can be brought to the water"),
                             HasSubstr("Mill Bridge"), ::testing::Not(HasSubstr("FLOAT "))));
}

TEST(BadFiles, OfOneAccessWithoutARoadFloatPastIt) {
  const DemoCopy demo;
  demo.replace("river.json", "{ \"id\": \"bar\",", "{ \"id\": \"bar\", \"trailer\": false,");
  const auto ran = demo.plan();
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_THAT(ran.out, AllOf(HasSubstr("FLOAT  Mill Bridge (mile 40.2) to Old Ferry"),
                             HasSubstr("no trailer can be brought to")));
}

TEST(BadFiles, OfTheWorstKindNeverCrash) {
  const DemoCopy demo;
  const std::vector<std::string> texts{"", "{", "null", "[1,2", std::string(10000, '['), "{\"river\": \"\xff\xfe\"}",
                                       "<html>not here</html>", std::string(1, '\0'), "{\"schema_version\": 1e400}"};
  for (const auto& text : texts) {
    write_text(demo.config() / "river.json", text);
    const auto ran = demo.check();
    EXPECT_EQ(ran.exit_code, 78) << text.substr(0, 40) << "\n" << ran.out << ran.err;
    EXPECT_THAT(ran.out, HasSubstr("river.json"));
  }
}

TEST(BadFiles, MissingOnesAreNamed) {
  const DemoCopy demo;
  std::filesystem::remove(demo.config() / "tackle.json");
  const auto ran = demo.check();
  EXPECT_EQ(ran.exit_code, 66);
  EXPECT_THAT(ran.out + ran.err, HasSubstr("tackle.json"));
}

TEST(BadFiles, AStretchThatNobodyDescribedIsWarnedOfAndStillPlanned) {
  const DemoCopy demo;
  const auto text = text_of(demo.config() / "river.json");
  const auto note = text.find("    { \"from\": \"ferry\"");
  const auto comma = text.rfind(',', note);
  const auto end = text.find("] }", note) + 3;
  write_text(demo.config() / "river.json", text.substr(0, comma) + text.substr(end));
  const auto ran = demo.check();
  EXPECT_EQ(ran.exit_code, 0) << ran.out << ran.err;
  EXPECT_THAT(ran.out, HasSubstr("river.json"));
  EXPECT_EQ(demo.plan().exit_code, 0);
}

}  // namespace
}  // namespace floatwright::testing
