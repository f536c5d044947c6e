// Days of several boats on the small river: three rods for all of them.
#include "engine/plan_boats.hpp"

#include <gmock/gmock.h>

#include <algorithm>
#include <set>

#include "tests/engine/trip/small_river.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

BoatOrder boat(const std::string& name, std::optional<std::string> from = {}, std::optional<std::string> to = {}) {
  BoatOrder order;
  order.name = name;
  order.guide = name + "'s guide";
  order.from = std::move(from);
  order.to = std::move(to);
  return order;
}

std::vector<BoatOrder> three_boats() { return {boat("a", "upper", "middle"), boat("b", "middle", "lower"), boat("c")}; }

std::multiset<std::size_t> rods_in(const std::vector<BoatDay>& days) {
  std::multiset<std::size_t> all;
  for (const BoatDay& day : days)
    for (const PlannedStretch& stretch : day.plan.stretches)
      if (&stretch == &day.plan.stretches.front()) all.insert(stretch.rods.rods.begin(), stretch.rods.rods.end());
  return all;
}

// What a page would tell, as far as people act on it.
void expect_the_same_day(const DayPlan& one, const DayPlan& other) {
  ASSERT_EQ(one.stretches.size(), other.stretches.size());
  for (std::size_t s = 0; s < one.stretches.size(); ++s) {
    const PlannedStretch &a = one.stretches[s], &b = other.stretches[s];
    EXPECT_EQ(a.from + a.to, b.from + b.to);
    EXPECT_EQ(a.why, b.why);
    EXPECT_EQ(a.verdict, b.verdict);
    EXPECT_EQ(a.launch, b.launch);
    EXPECT_EQ(a.off_by, b.off_by);
    EXPECT_EQ(a.worth, b.worth);
    EXPECT_EQ(a.rods.rods, b.rods.rods);
    EXPECT_EQ(a.rigged, b.rigged);
    ASSERT_EQ(a.reaches.size(), b.reaches.size());
    for (std::size_t r = 0; r < a.reaches.size(); ++r) {
      ASSERT_EQ(a.reaches[r].waters.size(), b.reaches[r].waters.size());
      for (std::size_t w = 0; w < a.reaches[r].waters.size(); ++w) {
        const WaterChoice &x = a.reaches[r].waters[w].choice, &y = b.reaches[r].waters[w].choice;
        ASSERT_EQ(x.best.has_value(), y.best.has_value());
        EXPECT_EQ(x.why_none, y.why_none);
        if (x.best) {
          EXPECT_EQ(x.best->rig, y.best->rig);
          EXPECT_EQ(x.best->seconds, y.best->seconds);
        }
      }
    }
  }
}

TEST(PlanBoats, OfOneBoatIsItsDay) {
  const DayInputs in = small_day();
  const auto days = plan_boats(in, {boat("only")});
  ASSERT_EQ(days.size(), 1u);
  expect_the_same_day(days[0].plan, plan_day(in));
  EXPECT_THAT(days[0].in.settings.preferences.rods_elsewhere, IsEmpty());
}

TEST(PlanBoats, PutARodInOneBoatOnly) {
  for (int most = 1; most <= 3; ++most) {
    DayInputs in = small_day();
    in.settings.preferences.rods_aboard = most;
    const auto rods = rods_in(plan_boats(in, three_boats()));
    EXPECT_THAT(rods, testing::Not(IsEmpty()));
    for (const std::size_t rod : rods) EXPECT_EQ(rods.count(rod), 1u) << "rod " << rod;
  }
}

TEST(PlanBoats, PlanEachBoatAsTheDayOfItsInputs) {
  for (const BoatDay& day : plan_boats(small_day(), three_boats())) expect_the_same_day(day.plan, plan_day(day.in));
}

TEST(PlanBoats, SayWhichBoatsGotNoRod) {
  std::vector<BoatOrder> boats = three_boats();
  for (const char* name : {"d", "e", "f"}) boats.push_back(boat(name, "upper", "lower"));
  const auto days = plan_boats(small_day(), boats);
  EXPECT_LE(rods_in(days).size(), 3u);
  int without = 0;
  for (const BoatDay& day : days) {
    const PlannedStretch& floated = day.plan.stretches.front();
    if (!floated.rods.rods.empty()) continue;
    ++without;
    EXPECT_EQ(floated.reaches.front().waters.front().choice.why_none, "No rod left in the pool fishes here.");
    EXPECT_FALSE(floated.reaches.front().waters.front().choice.best);
  }
  EXPECT_GE(without, 3);
}

TEST(PlanBoats, FloatEachBoatWhereAndWhenItWasAskedFor) {
  auto boats = three_boats();
  boats[1].launch = hours(9.25);
  const auto days = plan_boats(small_day(), boats);
  EXPECT_EQ(days[0].plan.stretches.front().from, "upper");
  EXPECT_EQ(days[0].plan.stretches.front().to, "middle");
  EXPECT_EQ(days[1].plan.stretches.front().launch, local(9, 15));
  EXPECT_EQ(days[1].in.settings.who, "b's guide");
  EXPECT_GT(days[2].plan.stretches.size(), 1u);
}

TEST(PlanBoats, KeepAStretchThatWasNamedWhateverItsLength) {
  DayInputs in = small_day();
  in.settings.least_stretch = miles(10.0);
  const auto days = plan_boats(in, {boat("a", "upper", "middle"), boat("c")});
  EXPECT_NE(days[0].plan.stretches.front().verdict, Verdict::RuledOut);
  EXPECT_EQ(days[1].plan.stretches.front().from + days[1].plan.stretches.front().to, "upperlower");
}

TEST(PlanBoats, PutOffALaunchBeforeFirstLightAndSaySo) {
  auto boats = three_boats();
  boats[0].launch = hours(3.0);
  const PlannedStretch floated = plan_boats(small_day(), boats)[0].plan.stretches.front();
  EXPECT_GT(floated.launch, local(4));
  EXPECT_THAT(floated.notes, testing::Contains(testing::HasSubstr("before first light")));
}

TEST(PlanBoats, FishOnlyTheMethodsOfTheBoat) {
  auto boats = three_boats();
  boats[0].methods = {{Method::Indicator, 1.0}};
  const std::vector<BoatDay> days = plan_boats(small_day(), boats);
  std::size_t fished = 0;
  for (const PlannedReach& reach : days[0].plan.stretches.front().reaches) {
    for (const PlannedWater& water : reach.waters) {
      if (!water.choice.best) continue;
      EXPECT_EQ(water.choice.best->technique.method, Method::Indicator);
      ++fished;
    }
  }
  EXPECT_GT(fished, 0u);
}

TEST(PlanBoats, GiveTheSameAnswerInWhateverOrderTheWorkIsDone) {
  const auto backwards = [](std::size_t count, const std::function<void(std::size_t)>& work) {
    for (std::size_t i = count; i-- > 0;) work(i);
  };
  const auto days = plan_boats(small_day(), three_boats()), others = plan_boats(small_day(), three_boats(), backwards);
  for (std::size_t i = 0; i < days.size(); ++i) expect_the_same_day(days[i].plan, others[i].plan);
  expect_the_same_day(plan_day(small_day()), plan_day(small_day(), backwards));
}

std::vector<std::size_t> rods_of(const std::vector<BoatDay>& days, const std::string& name) {
  const auto day = std::ranges::find_if(days, [&](const BoatDay& one) { return one.in.settings.boat == name; });
  return day->plan.stretches.front().rods.rods;
}

// Two boats that want the same, and one rod too few: the one named first has it, wherever it is listed.
TEST(PlanBoats, ThatWishAlikeAreServedByName) {
  std::vector<BoatOrder> boats{boat("z", "upper", "lower"), boat("m", "middle", "lower"), boat("a", "upper", "lower")};
  for (BoatOrder& each : boats) each.rods_aboard = 1;
  DayInputs in = small_day();
  in.settings.preferences.methods = {{Method::Indicator, 1.0}};  // two of the three rods
  const auto days = plan_boats(in, boats);
  std::swap(boats.front(), boats.back());
  const auto turned = plan_boats(in, boats);
  EXPECT_NE(rods_of(days, "a"), rods_of(days, "z"));
  for (const char* name : {"a", "m", "z"}) EXPECT_EQ(rods_of(days, name), rods_of(turned, name)) << name;
}

// What they ask for differs, but the one rod there is would bring both as much.
TEST(PlanBoats, ThatMakeAsMuchOfARodAreServedByNameToo) {
  std::vector<BoatOrder> boats{boat("z", "upper", "lower"), boat("a", "upper", "lower")};
  boats[0].rods_aboard = 1;
  boats[1].rods_aboard = 2;
  DayInputs in = small_day();
  in.tackle.rods.resize(1);
  for (const bool turned : {false, true}) {
    if (turned) std::ranges::reverse(boats);
    const auto days = plan_boats(in, boats);
    EXPECT_THAT(rods_of(days, "a"), ElementsAre(0u)) << turned;
    EXPECT_THAT(rods_of(days, "z"), IsEmpty()) << turned;
  }
}

TEST(PlanBoats, OfADayThatCannotBePlannedSayWhyForEach) {
  DayInputs in = small_day();
  in.day = std::chrono::year{2027} / 5 / 1;
  for (const BoatDay& day : plan_boats(in, three_boats())) EXPECT_EQ(day.plan.why_no_stretch, "the day asked for is past");
}

}  // namespace
}  // namespace floatwright
