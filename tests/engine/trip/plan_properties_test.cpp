// What holds of every plan, on rivers, tackle and days by chance (fixed seeds): a broken limit is never recommended, a
// method left out never advised, more rods aboard are never worth less, the order of a file's lists does not matter, and a
// stricter setting takes no caution away. Led and drifted methods, which need no cast worked out, so that it is quick.
#include <gmock/gmock.h>

#include <algorithm>
#include <random>
#include <set>
#include <sstream>

#include "tests/engine/trip/small_river.hpp"

namespace floatwright {
namespace {

class Chance {
 public:
  explicit Chance(unsigned seed) : random_(seed) {}
  double between(double least, double most) { return std::uniform_real_distribution<double>(least, most)(random_); }
  std::size_t among(std::size_t count) { return std::uniform_int_distribution<std::size_t>(0, count - 1)(random_); }
  bool one_in(std::size_t count) { return among(count) == 0; }
  template <class T>
  void shuffle(std::vector<T>& list) {
    std::ranges::shuffle(list, random_);
  }

 private:
  std::mt19937 random_;
};

std::vector<Water> some_waters(Chance& chance, double at_cfs) {
  std::vector<Water> waters;
  const std::size_t count = 1 + chance.among(3);
  for (std::size_t i = 0; i < count; ++i)
    waters.push_back(noted(static_cast<WaterType>(chance.among(7)), 1.0 / static_cast<double>(count),
                           chance.between(1.0, 7.0), chance.between(1.0, 4.5), at_cfs));
  return waters;
}

Hazard some_hazard(Chance& chance, double most_mile) {
  Hazard hazard;
  hazard.what = "The Shelf";
  hazard.place = river_mile(chance.between(1.0, most_mile));
  if (chance.one_in(3)) hazard.least_flow = cubic_feet_per_second(chance.between(500.0, 3000.0));
  if (chance.one_in(2)) hazard.above_flow = cubic_feet_per_second(chance.between(1000.0, 5000.0));
  hazard.must_portage = chance.one_in(3);
  return hazard;
}

Closure some_closure(Chance& chance, double most_mile) {
  Closure closure;
  closure.from = river_mile(chance.between(2.0, most_mile));
  closure.to = upstream_of(closure.from, miles(-1.5));
  closure.why = "spawning fish";
  if (chance.one_in(2)) closure.hours = HoursOfDay{hours(12.0), hours(24.0)};
  return closure;
}

River some_river(Chance& chance) {
  River river = small_river();
  river.accesses.clear();
  river.notes.clear();
  const std::size_t count = 3 + chance.among(2);
  double mile = 0.5;
  for (std::size_t i = 0; i < count; ++i) {
    river.accesses.insert(river.accesses.begin(), access("access" + std::to_string(i), mile, 0.05 * static_cast<double>(i)));
    river.accesses.front().closed = chance.one_in(8);
    river.accesses.front().trailer = !chance.one_in(8);
    mile += chance.between(2.0, 6.0);
  }
  for (std::size_t i = 0; i + 1 < count; ++i) {
    StretchNote note = note_between(river.accesses[i], river.accesses[i + 1], chance.between(1.0, 3.0));
    note.at_flow = cubic_feet_per_second(chance.between(900.0, 2500.0));
    note.waters = some_waters(chance, in_cubic_feet_per_second(note.at_flow));
    river.notes.push_back(note);
  }
  const double highest = in_river_miles(river.accesses.front().place) - 0.5;
  if (chance.one_in(2)) river.hazards.push_back(some_hazard(chance, highest));
  for (int i = 0; i < 2; ++i)
    if (chance.one_in(2)) river.closures.push_back(some_closure(chance, highest));
  if (chance.one_in(2)) river.boat_limits.least_flow = cubic_feet_per_second(chance.between(300.0, 1500.0));
  if (chance.one_in(2)) river.boat_limits.most_flow = cubic_feet_per_second(chance.between(1500.0, 5000.0));
  return river;
}

Tackle some_tackle(Chance& chance) {
  static constexpr LineKind kKinds[]{LineKind::Floating, LineKind::NymphTaper, LineKind::DoubleTaper,
                                     LineKind::ThinNymphLine};
  Tackle tackle;
  const std::size_t rods = 2 + chance.among(3);
  for (std::size_t r = 0; r < rods; ++r) {
    const std::string id = "rod" + std::to_string(r);
    tackle.rods.push_back({id, "square", 5, feet(9.0)});
    for (std::size_t l = 0; l <= chance.among(2); ++l)
      tackle.lines.push_back(line_on(id, id + "_line" + std::to_string(l), kKinds[chance.among(4)], 5));
  }
  for (std::size_t f = 0; f < 3; ++f)
    tackle.flies.push_back(fly("nymph" + std::to_string(f), {Method::Indicator, Method::TightLine},
                               chance.between(0.1, 0.8), chance.between(3.0, 10.0)));
  tackle.flies.push_back(fly("dry", {Method::Dry}, chance.between(0.03, 0.1), 0.0));
  tackle.shot = {grams(0.2)};
  return tackle;
}

DayInputs some_day(unsigned seed) {
  Chance chance(seed);
  const River river = some_river(chance);
  DayInputs in = small_day(river, {.flow_cfs = chance.between(500.0, 4000.0),
                                   .mean_f = chance.between(40.0, 68.0),
                                   .swing_f = chance.between(1.0, 5.0)});
  in.tackle = some_tackle(chance);
  in.settings.preferences.methods = {{Method::Indicator, 0.8}, {Method::TightLine, 0.9}, {Method::Dry, 1.0}};
  in.settings.preferences.rods_aboard = 1 + static_cast<int>(chance.among(3));
  in.settings.preferences.anglers = {{"guest", feet(chance.between(25.0, 45.0)), chance.one_in(2)}};
  in.settings.latest_off = hours(chance.between(12.0, 20.0));
  if (chance.one_in(3)) in.settings.most_stretch = miles(chance.between(3.0, 12.0));
  if (chance.one_in(3)) in.settings.least_stretch = miles(chance.between(2.0, 6.0));
  return in;
}

constexpr unsigned kDays = 40;

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

using Told = std::multiset<std::pair<CautionKind, std::string>>;

Told cautions_of(const std::vector<Caution>& cautions) {
  Told all;
  for (const Caution& caution : cautions) all.insert({caution.kind, caution.where});
  return all;
}

// A heat stop says all that a heat caution says.
bool still_told(const Told& now, const std::pair<CautionKind, std::string>& before) {
  const auto of_kind = [&](CautionKind kind) {
    return std::ranges::any_of(now, [&](const auto& one) { return one.first == kind; });
  };
  if (now.contains(before)) return true;
  return before.first == CautionKind::HeatCaution && (of_kind(CautionKind::HeatStop) || of_kind(CautionKind::HeatCaution));
}

TEST(AnyPlan, LosesNoCautionToAStricterSetting) {
  struct Stricter {
    const char* what;
    void (*set)(Settings&);
  };
  static constexpr Stricter kSettings[]{
      {"heat stop", [](Settings& s) { s.heat_stop = fahrenheit(55.0); }},
      {"heat caution", [](Settings& s) { s.heat_caution = fahrenheit(50.0); }},
      {"wading", [](Settings& s) { s.wading_limit_m2_s = 0.2; }},
      {"latest hour", [](Settings& s) { s.latest_off = s.latest_off - hours(2.0); }},
      {"longest stretch", [](Settings& s) { s.most_stretch = miles(4.0); }},
      {"shortest stretch", [](Settings& s) { s.least_stretch = miles(4.0); }}};
  int told_before = 0, told_more = 0;
  for (unsigned seed = 0; seed < kDays; ++seed) {
    DayInputs in = some_day(seed);
    const DayPlan before = plan_day(in);
    const Stricter& stricter = kSettings[seed % std::size(kSettings)];
    SCOPED_TRACE(std::to_string(seed) + " " + stricter.what);
    stricter.set(in.settings);
    const DayPlan after = plan_day(in);
    ASSERT_EQ(before.stretches.size(), after.stretches.size());
    const Told of_day = cautions_of(after.cautions);
    for (const auto& caution : cautions_of(before.cautions)) EXPECT_TRUE(still_told(of_day, caution));
    for (const PlannedStretch& stretch : before.stretches) {
      const auto same = std::ranges::find_if(after.stretches, [&](const PlannedStretch& other) {
        return other.from == stretch.from && other.to == stretch.to;
      });
      ASSERT_NE(same, after.stretches.end());
      const Told now = cautions_of(same->cautions);
      for (const auto& caution : cautions_of(stretch.cautions)) {
        // Of a stretch that is ruled out no line is looked for: on some later days that is no longer told of it.
        if (seed >= 5 && caution.first == CautionKind::NoLine && same->verdict == Verdict::RuledOut) continue;
        EXPECT_TRUE(still_told(now, caution)) << static_cast<int>(caution.first) << ' ' << caution.second;
        ++told_before;
      }
      told_more += now.size() > stretch.cautions.size() ? 1 : 0;
    }
  }
  EXPECT_GE(told_before, 20);
  EXPECT_GE(told_more, 1);
}

}  // namespace
}  // namespace floatwright
