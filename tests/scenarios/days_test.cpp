// Ten invented days, read as a guide would: each page is golden, and whatever the page says, no plan may advise what its own
// cautions forbid. The days are written by fixtures/days/make_days.py.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>
#include <set>

#include "tests/scenarios/scenario.hpp"
#include "tests/support/schema.hpp"

namespace floatwright::testing {
namespace {

using Json = nlohmann::json;
using ::testing::HasSubstr;
using ::testing::Not;

struct Day {
  std::string name;
  int exit_code = 0;
  std::set<std::string> cautions;  // all that are told, of the day and of every stretch
  std::set<std::string> no_line{};  // reaches with a water that no line aboard reaches, of every stretch that may be floated
};

const std::vector<Day> kDays = {
    {"low_clear", 0, {"boat_limit", "cold_water", "dark", "forecast_doubt", "guessed_depth", "hazard", "portage"}},
    {"melt", 0, {"cold_water", "forecast_doubt", "portage"}, {"below Alder Bar"}},
    {"ramp", 0, {"cold_water", "dam_drop", "dam_rise", "fast_rise", "forecast_doubt", "portage"}},
    {"rain", 0, {"cold_water", "dark", "fast_rise", "forecast_doubt", "portage", "rain"}},
    {"heat", 0, {"closure_likely", "forecast_doubt", "heat_caution", "heat_stop", "portage"}},
    {"ice", 75, {"cold_water", "dark", "forecast_doubt", "ice", "portage", "rules_old"}},
    {"stale", 75, {"dark", "forecast_doubt", "heat_unknown", "missing_gauge", "old_reading", "portage"}},
    {"hatch", 0, {"closure", "cold_water", "dark", "forecast_doubt", "portage"}},
    {"wind", 0, {"cold_water", "dark", "forecast_doubt", "portage", "wind", "wood_after_high_water"}},
    {"two_anglers", 0, {"cold_water", "forecast_doubt", "heat_caution", "portage", "wading"}},
};

class InventedDay : public ::testing::TestWithParam<Day> {
 protected:
  void SetUp() override {
    const auto config = scratch_.path() / "config";
    const auto made = run_program({"/usr/bin/python3", (kRoot / "fixtures/days/make_days.py").string(), GetParam().name, config.string()});
    ASSERT_EQ(made.exit_code, 0) << made.err;
    const auto ran = floatwright_says({"plan", "--config", config.string(), "--offline", "--now", made.out.substr(0, made.out.find('\n')),
                                       "--as", "plan,sheet,mail,json", "--out", out().string()},
                                      {{"STATE_DIRECTORY=" + (scratch_.path() / "state").string()}});
    ASSERT_EQ(ran.exit_code, GetParam().exit_code) << ran.err;
    plan_ = Json::parse(text_of(file("-plan.json")));
  }

  [[nodiscard]] std::filesystem::path out() const { return scratch_.path() / "out"; }
  [[nodiscard]] std::filesystem::path file(const std::string& ending) const {
    for (const auto& entry : std::filesystem::directory_iterator(out()))
      if (entry.path().string().ends_with(ending)) return entry.path();
    return out() / ("no file" + ending);
  }
  [[nodiscard]] const Json& floated() const { return plan_.at("stretches").at(0); }
  [[nodiscard]] std::vector<Json> cautions() const {
    std::vector<Json> all = plan_.at("cautions");
    for (const Json& stretch : plan_.at("stretches"))
      for (const Json& caution : stretch.at("cautions")) all.push_back(caution);
    return all;
  }
  // The subject and the lines that a telephone shows.
  [[nodiscard]] std::string mail() const {
    return run_program({"/usr/bin/python3", "-c",
                        "import email.policy,sys\n"
                        "m=email.message_from_bytes(open(sys.argv[1],'rb').read(),policy=email.policy.default)\n"
                        "print(m['Subject']+'\\n'+m.get_body(('plain',)).get_content().replace('\\r','').split('\\n\\n')[0])",
                        file("-mail.eml").string()})
        .out;
  }
  [[nodiscard]] std::string sheet() const {
    return run_program({"/usr/bin/pdftotext", "-layout", file("-sheet.pdf").string(), "-"}).out;
  }

  void keeps_to_the_schema() const;
  void tells_its_cautions_each_with_its_basis() const;
  void says_where_no_line_reaches() const;
  void advises_nothing_that_its_own_cautions_forbid() const;
  void prints_a_sheet_of_one_page_with_every_alarm() const;

  ScratchFolder scratch_;
  Json plan_;
};

void expect_golden(const std::string& name, const std::string& page) {
  const auto golden = kRoot / "fixtures/golden/days" / (name + ".txt");
  if (std::filesystem::exists(golden) && page == text_of(golden)) return;
  const auto fresh = std::filesystem::path{FLOATWRIGHT_BINARY_DIR} / ("day_" + name + ".txt");
  write_text(fresh, page);
  ADD_FAILURE() << "the page differs from " << golden << "; read " << fresh << " aloud, and copy it over if it is better\n"
                << run_program({"/usr/bin/diff", "-u", golden.string(), fresh.string()}).out;
}

bool meet(const Json& row, const Json& when) {
  return !when.is_null() && !when.at("from").is_null() && !when.at("to").is_null() &&
         row.at("arrive").get<std::string>() <= when.at("to").get<std::string>() &&
         row.at("leave").get<std::string>() >= when.at("from").get<std::string>();
}

void InventedDay::keeps_to_the_schema() const {
  EXPECT_EQ(judged_by_schema("plan", text_of(file("-plan.json"))), "valid");
}

void InventedDay::tells_its_cautions_each_with_its_basis() const {
  std::set<std::string> told;
  for (const Json& caution : cautions()) {
    told.insert(caution.at("what"));
    EXPECT_NE(caution.at("basis"), "") << caution.dump();
  }
  EXPECT_EQ(told, GetParam().cautions);
}

void InventedDay::says_where_no_line_reaches() const {
  std::set<std::string> found;
  for (const Json& stretch : plan_.at("stretches"))
    for (const Json& reach : stretch.at("reaches"))
      for (const Json& water : reach.at("waters"))
        if (water.at("choice").is_null() && water.at("why_none").get<std::string>().starts_with("No line aboard reaches"))
          found.insert(reach.at("name"));
  EXPECT_EQ(found, GetParam().no_line);
}

// Whatever else it says: nobody stands where the water comes up, fishes where the law or the heat forbids it, throws a dry
// fly into water near freezing, or is on the water after sunset.
void InventedDay::advises_nothing_that_its_own_cautions_forbid() const {
  EXPECT_LE(floated().at("end").get<std::string>(), plan_.at("sun").at("set").get<std::string>());
  for (const Json& reach : floated().at("reaches")) {
    const auto& stop = floated().at("stop_fishing_by");
    for (const Json& water : reach.at("waters")) {
      const Json& choice = water.at("choice");
      if (choice.is_null()) continue;
      const std::string at = reach.at("name").get<std::string>() + ": " + choice.at("reason").get<std::string>();
      EXPECT_TRUE(reach.at("closed_why").is_null()) << at;
      if (!stop.is_null()) EXPECT_LT(reach.at("arrive").get<std::string>(), stop.get<std::string>()) << at;
      const auto& warmth = reach.at("water_temperature_c");
      if (!warmth.is_null() && warmth.at("best") < 4.0) EXPECT_NE(choice.at("method"), "dry") << at;
      if (choice.at("platform") != "anchored" && choice.at("platform") != "wading") continue;
      for (const Json& caution : floated().at("cautions"))
        if (caution.at("what") == "fast_rise" && caution.at("where") == reach.at("name"))
          EXPECT_FALSE(meet(reach, caution.at("when"))) << at;
    }
  }
}

void InventedDay::prints_a_sheet_of_one_page_with_every_alarm() const {
  const std::string text = sheet();
  EXPECT_THAT(run_program({"/usr/bin/pdfinfo", file("-sheet.pdf").string()}).out, ::testing::ContainsRegex("Pages: +1\n"));
  for (const char* words : {"WATCH", "RULES", "HELP"}) EXPECT_THAT(text, HasSubstr(words));
  if (floated().at("verdict") == "ruled_out") {
    EXPECT_THAT(text, ::testing::AllOf(HasSubstr("NO PLAN"), Not(HasSubstr("PUT IN"))));
    return;
  }
  for (const char* words : {"PUT IN", "RIG THESE", "take out", "bottom Y/N"}) EXPECT_THAT(text, HasSubstr(words));
  if (!floated().at("stop_fishing_by").is_null()) EXPECT_THAT(text, HasSubstr("STOP FISHING"));
  if (GetParam().exit_code == 75)
    EXPECT_THAT(text, ::testing::AnyOf(HasSubstr("OLD READINGS"), HasSubstr("NO READING"), HasSubstr("Ice at the gauge, flow not")));
}

// One run a day serves all that is asked of it.
TEST_P(InventedDay, IsTheGoldenPageAndKeepsItsWord) {
  expect_golden(GetParam().name, text_of(file("-plan.txt")) + "\nMAIL\n" + mail());
  keeps_to_the_schema();
  tells_its_cautions_each_with_its_basis();
  says_where_no_line_reaches();
  advises_nothing_that_its_own_cautions_forbid();
  prints_a_sheet_of_one_page_with_every_alarm();
}

INSTANTIATE_TEST_SUITE_P(Days, InventedDay, ::testing::ValuesIn(kDays),
                         [](const auto& day) { return day.param.name; });

// The evening before a day on the demo's lake: each sinking line of the rack with its counts.
struct LakeDay {
  const char* name;
  bool profile;
};
class InventedLakeDay : public ::testing::TestWithParam<LakeDay> {};

TEST_P(InventedLakeDay, IsTheGoldenPage) {
  const DemoCopy demo;
  if (!GetParam().profile) {
    auto river = nlohmann::ordered_json::parse(text_of(demo.config() / "river.json"), nullptr, true, true);
    river["lakes"][0].erase("profile");
    river["lakes"][0].erase("profile_on");
    write_text(demo.config() / "river.json", river.dump(1));
  }
  const auto ran = floatwright_says({"sink", "--still", "--lake", "heron_lake", "--config", demo.config().string()});
  ASSERT_EQ(ran.exit_code, 0) << ran.err;
  expect_golden(GetParam().name, ran.out);
}

INSTANTIATE_TEST_SUITE_P(Days, InventedLakeDay, ::testing::Values(LakeDay{"lake", true}, LakeDay{"lake_without_profile", false}),
                         [](const auto& day) { return std::string{day.param.name}; });

// Every caution that the program knows is told on some day, so that each has been read where it stands; of flow that is not
// known tells SpotPlan.
TEST(InventedDays, BetweenThemTellEveryCaution) {
  std::set<std::string> told;
  for (const Day& day : kDays) told.insert(day.cautions.begin(), day.cautions.end());
  const auto schema = Json::parse(text_of(kRoot / "config/schemas/plan.schema.json"));
  for (const Json& kind : schema.at("/$defs/caution/properties/what/enum"_json_pointer))
    if (kind != "unknown_flow") EXPECT_TRUE(told.contains(kind)) << kind;
}

}  // namespace
}  // namespace floatwright::testing
