// The rods aboard against every possible day: all sets of rods, all rigs on them, all changes.
#include <gmock/gmock.h>

#include <algorithm>
#include <functional>
#include <random>

#include "engine/choice/rigging.hpp"
#include "tests/engine/choice/hand_made.hpp"
#include "tests/engine/choice/random_day.hpp"

namespace floatwright {
namespace {

const Judgement kJudgement;

Preferences aboard(int rods) {
  Preferences preferences;
  preferences.methods = {{Method::Swing, 1.0}};
  preferences.rods_aboard = rods;
  return preferences;
}

// Every sequence of what the rods carry, by plain recursion over waters.
double best_by_trying_everything(const Tackle& tackle, const std::vector<WaterMinutes>& day, std::size_t rods_aboard) {
  std::vector<std::vector<Carried>> on(tackle.rods.size());
  for (const WaterMinutes& water : day) {
    for (const ScoredRig& s : water.scored) {
      for (std::size_t r = 0; r < tackle.rods.size(); ++r) {
        const Carried carried{s.rig, leader_class(s.technique.method)};
        if (tackle.lines[s.rig.line].on_rod != tackle.rods[r].id || std::ranges::find(on[r], carried) != on[r].end())
          continue;
        on[r].push_back(carried);
      }
    }
  }
  const auto gain = [&](const Carried& carried, std::size_t w) {
    double most = 0;
    for (const ScoredRig& s : day[w].scored) {
      if (s.rig == carried.rig && leader_class(s.technique.method) == carried.leader)
        most = std::max(most, in_minutes(day[w].time) * value(s, day[w]));
    }
    return most;
  };
  double best = 0;
  std::vector<std::size_t> set;
  std::vector<Carried> now;
  const std::function<double(std::size_t)> from = [&](std::size_t w) -> double {
    if (w == day.size()) return 0;
    double most = -1e9;
    const std::vector<Carried> before = now;
    const std::function<void(std::size_t, double)> carry = [&](std::size_t i, double lost) {
      if (i < set.size()) {
        for (const Carried& carried : on[set[i]]) {
          now[i] = carried;
          carry(i + 1, lost + (w == 0 ? 0.0 : in_minutes(change_time(before[i], carried, kJudgement.changes))));
        }
        return;
      }
      double here = 0;
      for (const Carried& carried : now) here = std::max(here, gain(carried, w));
      const std::vector<Carried> kept = now;
      most = std::max(most, here - lost + from(w + 1));
      now = kept;
    };
    carry(0, 0.0);
    now = before;
    return most;
  };
  const std::function<void(std::size_t)> choose_set = [&](std::size_t first) {
    if (set.size() == rods_aboard) {
      now.assign(set.size(), {});
      best = std::max(best, from(0));
      return;
    }
    for (std::size_t r = first; r < tackle.rods.size(); ++r) {
      if (on[r].empty()) continue;
      set.push_back(r);
      choose_set(r + 1);
      set.pop_back();
    }
  };
  choose_set(0);
  return best;
}

TEST(RodsAboard, AreTheBestOfEveryPossibleDay) {
  std::mt19937 random(11);
  for (int trial = 0; trial < 30; ++trial) {
    const Tackle tackle = rack(3, 1, 2);
    const std::vector<WaterMinutes> day = random_day(tackle, 3, random);
    for (const std::size_t k : {1u, 2u}) {
      const RodPlan plan = rods_aboard(day, tackle, aboard(static_cast<int>(k)), kJudgement);
      // 1e-3 of worth settles ties and may cost 1e-3 x 60 min in each of three waters.
      EXPECT_NEAR(worth_of(plan, day), best_by_trying_everything(tackle, day, k), 0.2)
          << "trial " << trial << ", rods " << k;
    }
  }
}

TEST(RodsAboard, AreNeverWorthLessForOneMore) {
  std::mt19937 random(5);
  for (int trial = 0; trial < 20; ++trial) {
    const Tackle tackle = rack(5, 2, 2);
    const std::vector<WaterMinutes> day = random_day(tackle, 8, random);
    double before = 0;
    for (int k = 1; k <= 3; ++k) {
      const double now = worth_of(rods_aboard(day, tackle, aboard(k), kJudgement), day);
      EXPECT_GE(now, before - 0.5) << "trial " << trial << ", rods " << k;  // ties, see above, over 8 waters
      before = now;
    }
  }
}

TEST(RodsAboard, CarryOneRigEachAtATime) {
  std::mt19937 random(3);
  const Tackle tackle = rack(3, 2, 2);
  const std::vector<WaterMinutes> day = random_day(tackle, 6, random);
  const RodPlan plan = rods_aboard(day, tackle, aboard(2), kJudgement);
  ASSERT_EQ(plan.use.size(), day.size());
  EXPECT_EQ(plan.rods.size(), 2u);
  for (std::size_t w = 0; w < day.size(); ++w) {
    if (!plan.use[w]) continue;
    const std::string& rod = tackle.lines[day[w].scored[*plan.use[w]].rig.line].on_rod;
    EXPECT_TRUE(std::ranges::any_of(plan.rods, [&](std::size_t r) { return tackle.rods[r].id == rod; }));
  }
}

// Two waters that want two lines of one rod: 10 minutes for the spool pay over a long water, not over a short one.
TEST(RodsAboard, ChangeASpoolOnlyWhereItPays) {
  const Tackle tackle = rack(1, 2, 1);
  const auto day = [](double minutes_there) {
    return std::vector<WaterMinutes>{
        {minutes(60), {scored(0, 0, Method::Swing, 30, 0.9)}},
        {minutes(minutes_there), {scored(0, 0, Method::Swing, 30, 0.4), scored(1, 0, Method::Swing, 30, 0.9)}}};
  };
  const RodPlan shorter = rods_aboard(day(19), tackle, aboard(1), kJudgement);
  EXPECT_EQ(shorter.changes, 0);
  EXPECT_EQ(shorter.use[1], 0u);
  EXPECT_TRUE(shorter.spares.empty());
  const RodPlan longer = rods_aboard(day(21), tackle, aboard(1), kJudgement);
  EXPECT_EQ(longer.changes, 1);
  EXPECT_EQ(in_minutes(longer.lost), 10.0);
  EXPECT_THAT(longer.spares, testing::ElementsAre(1u));
  EXPECT_EQ(longer.at_launch[0]->line, 0u);
}

// Worth stops growing at half the time; a rod with 40 of 60 seconds must not make room for one with 25.
TEST(RodsAboard, TakeTheRigWithClearlyMoreSecondsOfEqualWorth) {
  const Tackle tackle = rack(2, 1, 1);
  const std::vector<WaterMinutes> day{
      {minutes(60), {scored(0, 0, Method::Swing, 30, 0.9), scored(1, 0, Method::Swing, 45, 0.9)}}};
  const RodPlan plan = rods_aboard(day, tackle, aboard(1), kJudgement);
  EXPECT_THAT(plan.rods, testing::ElementsAre(1u));
}

// Common practice, no source: of lines that fish a method as well as each other, the one made for it.
TEST(RodsAboard, TakeTheLineMadeForTheMethodWhereSecondsTie) {
  const auto line_of = [](Method method, std::vector<LineKind> kinds) {
    Tackle tackle = rack(kinds.size(), 1, 1);
    std::vector<ScoredRig> scores;
    for (std::size_t i = 0; i < kinds.size(); ++i) {
      tackle.lines[i].kind = kinds[i];
      scores.push_back(scored(i, 0, method, 40.0 - static_cast<double>(i), 0.9));
    }
    return kinds[rods_aboard({{minutes(60), scores}}, tackle, aboard(1), kJudgement).at_launch[0]->line];
  };
  EXPECT_EQ(line_of(Method::Dry, {LineKind::ShootingHead, LineKind::NymphTaper, LineKind::DoubleTaper}),
            LineKind::DoubleTaper);
  EXPECT_EQ(line_of(Method::Dry, {LineKind::ShootingHead, LineKind::Floating}), LineKind::Floating);
  EXPECT_EQ(line_of(Method::Indicator, {LineKind::DoubleTaper, LineKind::NymphTaper}), LineKind::NymphTaper);
}

TEST(RodsAboard, TakeThePlainerTackleWhereSecondsTie) {
  Tackle tackle = rack(2, 1, 1);
  tackle.lines[0] = line_on("tip", "rod0", LineKind::SinkingTip, 4.5, 0.15);
  const std::vector<WaterMinutes> day{
      {minutes(60), {scored(0, 0, Method::Swing, 42, 0.9), scored(1, 0, Method::Swing, 40, 0.9)}}};
  EXPECT_THAT(rods_aboard(day, tackle, aboard(1), kJudgement).rods, testing::ElementsAre(1u));
}

TEST(RodsAboard, LeaveAWaterUnusedWhereNothingFishes) {
  const Tackle tackle = rack(2, 1, 1);
  const std::vector<WaterMinutes> day{{minutes(30), {scored(0, 0, Method::Swing, 30, 0.9)}},
                                      {minutes(30), {}},
                                      {minutes(30), {scored(0, 0, Method::Swing, 5, 0.9)}}};
  const RodPlan plan = rods_aboard(day, tackle, aboard(2), kJudgement);
  EXPECT_TRUE(plan.use[0]);
  EXPECT_FALSE(plan.use[1]);
  EXPECT_FALSE(plan.use[2]);
  EXPECT_EQ(plan.rods.size(), 1u);  // the other rod has nothing to do
}

TEST(RodsAboard, AreNoneForAnEmptyDayOrAnEmptyBoat) {
  const Tackle tackle = rack(2, 1, 1);
  EXPECT_TRUE(rods_aboard({}, tackle, aboard(3), kJudgement).rods.empty());
  const std::vector<WaterMinutes> day{{minutes(30), {scored(0, 0, Method::Swing, 30, 0.9)}}};
  EXPECT_TRUE(rods_aboard(day, tackle, aboard(0), kJudgement).rods.empty());
}

// One set of rods through the day, by every step from all that they carry to all that they could carry next.
double best_of_set(const Tackle& tackle, const std::vector<WaterMinutes>& day, const std::vector<std::size_t>& set) {
  std::vector<std::vector<Carried>> states{{}};
  for (const std::size_t rod : set) {
    std::vector<Carried> on;
    for (const WaterMinutes& water : day)
      for (const ScoredRig& s : water.scored) {
        const Carried carried{s.rig, leader_class(s.technique.method)};
        if (tackle.lines[s.rig.line].on_rod == tackle.rods[rod].id && std::ranges::find(on, carried) == on.end())
          on.push_back(carried);
      }
    std::vector<std::vector<Carried>> more;
    for (const auto& state : states)
      for (const Carried& carried : on) more.emplace_back(state).push_back(carried);
    states = std::move(more);
  }
  const auto brings = [&](const std::vector<Carried>& state, const WaterMinutes& water) {
    double most = 0.0;
    for (const ScoredRig& s : water.scored)
      if (std::ranges::find(state, Carried{s.rig, leader_class(s.technique.method)}) != state.end())
        most = std::max(most, in_minutes(water.time) * value(s, water));
    return most;
  };
  std::vector<double> worth(states.size(), 0.0);
  for (std::size_t w = 0; w < day.size(); ++w) {
    const std::vector<double> before = worth;
    for (std::size_t to = 0; to < states.size(); ++to) {
      for (std::size_t from = 0; from < states.size() && w > 0; ++from) {
        double lost = 0.0;
        for (std::size_t i = 0; i < set.size(); ++i)
          lost += in_minutes(change_time(states[from][i], states[to][i], kJudgement.changes));
        worth[to] = std::max(worth[to], before[from] - lost);
      }
      worth[to] += brings(states[to], day[w]);
    }
  }
  return worth.empty() ? 0.0 : std::ranges::max(worth);
}

TEST(RodsAboard, AreTheBestOfTwelveRodsWithTwentyFourLines) {
  std::mt19937 random(24);
  const Tackle tackle = rack(12, 2, 1);
  for (int trial = 0; trial < 4; ++trial) {
    const std::vector<WaterMinutes> day = random_day(tackle, 6, random);
    double two = 0.0;
    for (std::size_t a = 0; a < 12; ++a)
      for (std::size_t b = a + 1; b < 12; ++b) two = std::max(two, best_of_set(tackle, day, {a, b}));
    EXPECT_NEAR(worth_of(rods_aboard(day, tackle, aboard(2), kJudgement), day), two, 0.3) << "trial " << trial;
  }
  const std::vector<WaterMinutes> day = random_day(tackle, 2, random);
  double three = 0.0;
  for (std::size_t a = 0; a < 12; ++a)
    for (std::size_t b = a + 1; b < 12; ++b)
      for (std::size_t c = b + 1; c < 12; ++c) three = std::max(three, best_of_set(tackle, day, {a, b, c}));
  EXPECT_NEAR(worth_of(rods_aboard(day, tackle, aboard(3), kJudgement), day), three, 0.2);
}

TEST(RodsAboard, FitALargeRack) {
  std::mt19937 random(2);
  const Tackle tackle = rack(5, 4, 4);
  const std::vector<WaterMinutes> day = random_day(tackle, 30, random);
  const RodPlan plan = rods_aboard(day, tackle, aboard(3), kJudgement);
  EXPECT_EQ(plan.rods.size(), 3u);
  EXPECT_GT(worth_of(plan, day), worth_of(rods_aboard(day, tackle, aboard(1), kJudgement), day));
}

TEST(ChangeTime, IsTheDearestChangeThatApplies) {
  const auto lost = [](const Carried& from, const Carried& to) {
    return in_minutes(change_time(from, to, kJudgement.changes));
  };
  const Carried swing{{0, 1, 0, {}}, LeaderClass::Streamer};
  Carried other = swing;
  EXPECT_EQ(lost(swing, other), 0);
  other.rig.fly = 1;
  EXPECT_EQ(lost(swing, other), 2);
  other.rig.tip = 0;
  EXPECT_EQ(lost(swing, other), 4);
  other.leader = LeaderClass::Indicator;
  EXPECT_EQ(lost(swing, other), 5);
  other.rig.line = 3;
  EXPECT_EQ(lost(swing, other), 10);
}

}  // namespace
}  // namespace floatwright
