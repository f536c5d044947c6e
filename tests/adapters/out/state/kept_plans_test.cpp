#include "adapters/out/state/kept_plans.hpp"

#include <gmock/gmock.h>

#include "tests/support/run_program.hpp"

namespace floatwright::testing {
namespace {

using std::chrono::day;
using std::chrono::May;
using std::chrono::year;

constexpr std::chrono::year_month_day kDay{year{2027}, May, day{14}};

HandedOut plan(const std::string& boat, std::chrono::year_month_day of = kDay) {
  StretchHandedOut stretch{"mill", "ferry", "Mill \"Bridge\"", "Vieux Bac \xC3\xA9", Instant{Period{1000}}, Instant{Period{2000}},
                           std::nullopt, Discharge::from_si(52.25), celsius(8.125),
                           {{"six", "six_tip", "", "streamer", grams(0.3)}}};
  return {Instant{Period{500}}, of, boat, stretch, {{CautionKind::DamRise, "Alder Bar", "Heron Dam", Instant{Period{1500}}}}};
}

class KeptPlans : public ::testing::Test {
 protected:
  [[nodiscard]] PlanDrawer drawer() const { return {scratch_.path() / "state", scratch_.path() / "lantern"}; }
  [[nodiscard]] std::filesystem::path only_file() const {
    return std::filesystem::directory_iterator{scratch_.path() / "state/plans"}->path();
  }
  [[nodiscard]] std::size_t files() const {
    const std::filesystem::directory_iterator all{scratch_.path() / "state/plans"};
    return static_cast<std::size_t>(std::distance(begin(all), end(all)));
  }
  ScratchFolder scratch_;
};

TEST_F(KeptPlans, AreNoneBeforeTheFirst) { EXPECT_TRUE(kept_plans(drawer(), kDay).value().empty()); }

TEST_F(KeptPlans, ComeBackAsTheyWere) {
  ASSERT_TRUE(keep_plans(drawer(), {plan("")}));
  const auto kept = kept_plans(drawer(), kDay).value();
  ASSERT_EQ(kept.size(), 1u);
  const HandedOut written = plan("");
  const StretchHandedOut &was = *written.stretch, &is = *kept[0].stretch;
  EXPECT_EQ(kept[0].made_at, written.made_at);
  EXPECT_EQ(kept[0].day, kDay);
  EXPECT_EQ(is.from_name, was.from_name);
  EXPECT_EQ(is.to_name, was.to_name);
  EXPECT_EQ(is.launch, was.launch);
  EXPECT_FALSE(is.stop_by);
  EXPECT_EQ(is.flow->si(), was.flow->si());
  EXPECT_EQ(in_celsius(*is.water), in_celsius(*was.water));
  EXPECT_EQ(is.rods.at(0).fly, "streamer");
  EXPECT_EQ(is.rods.at(0).shot.si(), was.rods.at(0).shot.si());
  EXPECT_EQ(kept[0].cautions.at(0).kind, CautionKind::DamRise);
  EXPECT_EQ(kept[0].cautions.at(0).at, Instant{Period{1500}});
}

TEST_F(KeptPlans, AreOneABoatAndTheLatestStays) {
  ASSERT_TRUE(keep_plans(drawer(), {plan("one"), plan("two")}));
  HandedOut later = plan("two");
  later.made_at = Instant{Period{900}};
  ASSERT_TRUE(keep_plans(drawer(), {later}));
  const auto kept = kept_plans(drawer(), kDay).value();
  ASSERT_EQ(kept.size(), 2u);
  EXPECT_EQ(kept[0].whose, "one");
  EXPECT_EQ(kept[1].made_at, Instant{Period{900}});
}

TEST_F(KeptPlans, OfAnotherConfigurationAreOthers) {
  ASSERT_TRUE(keep_plans(drawer(), {plan("")}));
  EXPECT_TRUE(kept_plans({drawer().state, scratch_.path() / "heron"}, kDay).value().empty());
}

TEST_F(KeptPlans, AreThrownAwayAfterAWeek) {
  using std::chrono::days;
  using std::chrono::sys_days;
  ASSERT_TRUE(keep_plans(drawer(), {plan("", sys_days{kDay} - days{8})}));
  ASSERT_TRUE(keep_plans(drawer(), {plan("", sys_days{kDay} - days{7})}));
  ASSERT_TRUE(keep_plans(drawer(), {plan("")}));
  EXPECT_EQ(files(), 2u);
}

TEST_F(KeptPlans, ThatAreNoPlansAreToldAndReplaced) {
  ASSERT_TRUE(keep_plans(drawer(), {plan("")}));
  for (const char* text : {"", "{", "[]", "{\"schema_version\": 1}", "{\"schema_version\": 2, \"plans\": []}",
                           "{\"schema_version\": 1, \"plans\": [{\"made_at\": \"x\"}]}", "\xFF\xFE"}) {
    write_text(only_file(), text);
    const auto kept = kept_plans(drawer(), kDay);
    ASSERT_FALSE(kept) << text;
    EXPECT_THAT(kept.error().what, ::testing::HasSubstr(only_file().string()));
  }
  ASSERT_TRUE(keep_plans(drawer(), {plan("")}));
  EXPECT_EQ(kept_plans(drawer(), kDay).value().size(), 1u);
}

}  // namespace
}  // namespace floatwright::testing
