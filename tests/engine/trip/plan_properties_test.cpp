// What holds of every plan, on rivers, tackle and days by chance (fixed seeds): a broken limit is never recommended, a
// method left out never advised, more rods aboard are never worth less, and the order of a file's lists does not matter.
#include <gmock/gmock.h>

#include <algorithm>
#include <sstream>

#include "tests/engine/trip/some_day.hpp"

namespace floatwright {
namespace {

// What of a choice is named to anybody.
std::vector<ScoredRig> named(const WaterChoice& choice) {
  std::vector<ScoredRig> rigs = choice.by_method;
  rigs.insert(rigs.end(), choice.as_good.begin(), choice.as_good.end());
  for (const auto* one : {&choice.best, &choice.runner_up})
    if (*one) rigs.push_back(**one);
  for (const auto* change : {&choice.changes_below, &choice.changes_above})
    if (*change) rigs.push_back((*change)->to);
  return rigs;
}

template <class Look>
void look_at_waters(const DayPlan& plan, const Look& look) {
  for (const PlannedStretch& stretch : plan.stretches)
    for (const PlannedReach& reach : stretch.reaches)
      for (const PlannedWater& water : reach.waters) look(stretch, reach, water);
}

// Held against the files again, not against what the plan says of itself.
void expect_no_limit_broken(const DayInputs& in, const PlannedStretch& stretch) {
  const Settings& settings = in.settings;
  for (const Access& at : in.river.accesses)
    if (at.id == stretch.from || at.id == stretch.to) EXPECT_TRUE(!at.closed && at.trailer);
  if (settings.most_stretch) EXPECT_LE(stretch.length, *settings.most_stretch + metres(1.0));
  if (settings.least_stretch) EXPECT_GE(stretch.length + metres(1.0), *settings.least_stretch);
  EXPECT_LE(stretch.off_by, local(0) + period(settings.latest_off));
  for (const PlannedReach& reach : stretch.reaches) {
    ASSERT_TRUE(reach.discharge.has_value());
    const BoatLimits& boat = in.river.boat_limits;
    if (boat.least_flow) EXPECT_GE(reach.discharge->low, *boat.least_flow);
    if (boat.most_flow) EXPECT_LE(reach.discharge->high, *boat.most_flow);
    for (const Hazard& hazard : in.river.hazards) {
      if (hazard.must_portage || hazard.place > reach.from || hazard.place <= reach.to) continue;
      if (hazard.least_flow) EXPECT_GE(reach.discharge->low, *hazard.least_flow);
      if (hazard.above_flow) EXPECT_LE(reach.discharge->high, *hazard.above_flow);
    }
  }
}

void expect_nothing_fished_where_it_is_closed(const DayInputs& in, const PlannedStretch& stretch) {
  for (const PlannedReach& reach : stretch.reaches) {
    const RiverPlace middle = upstream_of(reach.to, 0.5 * (reach.from - reach.to));
    for (const Closure& closure : in.river.closures) {
      const bool open_then = closure.hours && reach.leave < local(0) + period(closure.hours->from);
      if (middle > closure.from || middle < closure.to || open_then) continue;
      EXPECT_NE(reach.closed_why, "");
      for (const PlannedWater& water : reach.waters) EXPECT_FALSE(water.choice.best.has_value());
    }
  }
}

TEST(AnyPlan, NeverRecommendsABrokenLimit) {
  int recommended = 0, ruled_out = 0;
  for (unsigned seed = 0; seed < kDays; ++seed) {
    SCOPED_TRACE(seed);
    const DayInputs in = some_day(seed);
    for (const PlannedStretch& stretch : plan_day(in).stretches) {
      EXPECT_EQ(stretch.limit.has_value(), stretch.verdict == Verdict::RuledOut);
      ruled_out += stretch.verdict == Verdict::RuledOut ? 1 : 0;
      if (stretch.verdict != Verdict::Recommended) continue;
      ++recommended;
      expect_no_limit_broken(in, stretch);
      expect_nothing_fished_where_it_is_closed(in, stretch);
    }
  }
  EXPECT_GE(recommended, 16);
  EXPECT_GE(ruled_out, 40);
}

TEST(AnyPlan, NeverAdvisesAMethodLeftOut) {
  int advised = 0;
  for (unsigned seed = 0; seed < kDays; ++seed) {
    SCOPED_TRACE(seed);
    DayInputs in = some_day(seed);
    in.settings.preferences.methods.erase(seed % 2 == 0 ? Method::Indicator : Method::Dry);
    look_at_waters(plan_day(in), [&](const PlannedStretch&, const PlannedReach&, const PlannedWater& water) {
      for (const ScoredRig& rig : named(water.choice)) {
        EXPECT_TRUE(in.settings.preferences.methods.contains(rig.technique.method));
        ++advised;
      }
    });
  }
  EXPECT_GE(advised, 50);
}

double best_worth(const DayPlan& plan) {
  return plan.stretches.empty() || plan.stretches[0].verdict != Verdict::Recommended ? 0.0 : plan.stretches[0].worth;
}

TEST(AnyPlan, IsWorthNoLessWithOneRodMore) {
  int grew = 0;
  for (unsigned seed = 0; seed < kDays; ++seed) {
    SCOPED_TRACE(seed);
    DayInputs in = some_day(seed);
    double before = 0.0;
    for (int rods = 1; rods <= 3; ++rods) {
      in.settings.preferences.rods_aboard = rods;
      const double now = best_worth(plan_day(in));
      EXPECT_GE(now, before * (1.0 - 1e-9)) << rods << " rods";
      grew += now > before * 1.01 && rods > 1 ? 1 : 0;
      before = now;
    }
  }
  EXPECT_GE(grew, 1);
}

std::string words_of(const ScoredRig& rig, const Tackle& tackle) {
  std::ostringstream words;
  words << tackle.lines[rig.rig.line].id << '+' << tackle.flies[rig.rig.fly].id << '+' << rig.rig.shot.si() << ' '
        << static_cast<int>(rig.technique.method) << static_cast<int>(rig.technique.platform) << ' ' << rig.seconds;
  return words.str();
}

// Everything that is told of a plan, by ids and not by places in lists.
std::string told(const DayInputs& in, const DayPlan& plan) {
  std::ostringstream words;
  for (const PlannedStretch& stretch : plan.stretches) {
    words << stretch.from << ' ' << stretch.to << ' ' << static_cast<int>(stretch.verdict) << ' ' << stretch.why << ' '
          << stretch.launch.time_since_epoch().count() << ' ' << stretch.off_by.time_since_epoch().count() << ' '
          << stretch.worth << '\n';
    for (std::size_t i = 0; i < stretch.rods.rods.size(); ++i)
      words << in.tackle.rods[stretch.rods.rods[i]].id << ' ' << in.tackle.lines[stretch.rigged[i].line].id << ' ';
    for (const Caution& caution : stretch.cautions) words << static_cast<int>(caution.kind) << caution.where << ' ';
    for (const PlannedReach& reach : stretch.reaches) {
      words << '\n' << reach.id;
      for (const PlannedWater& water : reach.waters) {
        words << '\n' << static_cast<int>(water.type) << ' ' << water.choice.why_none;
        for (const ScoredRig& rig : named(water.choice)) words << " | " << words_of(rig, in.tackle);
      }
    }
    words << '\n';
  }
  return words.str();
}

// Every rod has a twin with the same lines, every fly another of its kind, and names fall otherwise than lists.
Tackle twins_of_all(Chance& chance) {
  Tackle tackle = some_tackle(chance);
  tackle.rods.resize(2);
  tackle.lines = {line_on(tackle.rods[0].id, "nymph", LineKind::NymphTaper, 5),
                  line_on(tackle.rods[0].id, "spare", LineKind::Floating, 5),
                  line_on(tackle.rods[1].id, "taper", LineKind::DoubleTaper, 5)};
  tackle.lines[1].spare_spool = true;
  const Tackle ones = tackle;
  const auto add_twin = [](auto& list, auto twin) {
    twin.id = "a_" + twin.id;
    list.push_back(std::move(twin));
  };
  for (const Rod& rod : ones.rods) add_twin(tackle.rods, rod);
  for (Line line : ones.lines) {
    line.on_rod = "a_" + line.on_rod;
    add_twin(tackle.lines, line);
  }
  for (const FlyClass& fly : ones.flies) add_twin(tackle.flies, fly);
  return tackle;
}

void shuffle_lists(Chance& chance, DayInputs& in) {
  chance.shuffle(in.tackle.rods);
  chance.shuffle(in.tackle.lines);
  chance.shuffle(in.tackle.flies);
  for (FlyClass& fly : in.tackle.flies) chance.shuffle(fly.uses);
  chance.shuffle(in.river.accesses);
  chance.shuffle(in.river.notes);
}

// Led by hand from the rod's tip, a nymph taper and a double taper fish alike to the last bit, as twins do.
TEST(AnyPlan, IsTheSameWhateverTheOrderOfTheFiles) {
  for (unsigned seed = 0; seed < kDays; ++seed) {
    for (const bool twins : {false, true}) {
      SCOPED_TRACE(std::to_string(seed) + (twins ? " twins" : ""));
      DayInputs in = some_day(seed);
      Chance lines(2000 + seed);
      if (twins) in.tackle = twins_of_all(lines);
      DayInputs turned = in;
      Chance chance(1000 + seed);
      shuffle_lists(chance, turned);
      EXPECT_EQ(told(in, plan_day(in)), told(turned, plan_day(turned)));
    }
  }
}

// Two rods that differ in nothing that counts in the water: which comes along hangs neither on its place in the file nor,
// since they differ in kind, on its name.
TEST(AnyPlan, TakesOfDifferentLinesThatFishAlikeTheSameWhereverItStandsAndWhateverItIsCalled) {
  const auto line_aboard = [](const std::string& nymph_rod, const std::string& taper_rod, bool turned) {
    DayInputs in = small_day();
    in.settings.preferences.methods = {{Method::TightLine, 1.0}};
    in.settings.preferences.rods_aboard = 1;
    in.tackle.rods = {{nymph_rod, "square", 5, feet(9.0)}, {taper_rod, "circle", 5, feet(9.0)}};
    in.tackle.lines = {line_on(nymph_rod, "nymph", LineKind::NymphTaper, 5),
                       line_on(taper_rod, "taper", LineKind::DoubleTaper, 5)};
    in.tackle.flies = {fly("nymph", {Method::TightLine}, 0.5, 9.0)};
    if (turned) std::ranges::reverse(in.tackle.rods);
    if (turned) std::ranges::reverse(in.tackle.lines);
    const DayPlan plan = plan_day(in);
    EXPECT_EQ(plan.stretches.front().rods.rods.size(), 1u);
    return in.tackle.lines.at(plan.stretches.front().rigged.at(0).line).id;
  };
  const std::string taken = line_aboard("a", "b", false);
  EXPECT_EQ(line_aboard("a", "b", true), taken);
  EXPECT_EQ(line_aboard("b", "a", false), taken);
  EXPECT_EQ(line_aboard("b", "a", true), taken);
}

}  // namespace
}  // namespace floatwright
