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
        Mistake{"settings.json", "\"heat_stop_f\": 69", "\"heat_stop_f\": 75", "75"},
        Mistake{"settings.json", "\"swing\": 1.0", "\"swong\": 1.0", "swing"}));

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
