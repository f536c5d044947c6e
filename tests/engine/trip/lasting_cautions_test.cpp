// A stricter setting takes no caution away: every setting that can be made stricter, on rivers and days by chance.
#include <gmock/gmock.h>

#include <tuple>

#include "engine/trip/cautions_of_all.hpp"
#include "tests/engine/trip/some_day.hpp"

namespace floatwright {
namespace {

struct Stricter {
  const char* what;
  void (*set)(DayInputs&);
};

void lower(std::optional<Discharge>& limit, double to_cfs) {
  limit = std::min(limit.value_or(cubic_feet_per_second(to_cfs)), cubic_feet_per_second(to_cfs));
}
void raise(std::optional<Discharge>& limit, double to_cfs) {
  limit = std::max(limit.value_or(cubic_feet_per_second(to_cfs)), cubic_feet_per_second(to_cfs));
}

// What a person may ask for more strictly than the defaults, and than what is typed for the boat.
constexpr Stricter kLimits[]{
    {"heat stop", [](DayInputs& in) { in.settings.heat_stop = fahrenheit(55.0); }},
    {"a low heat stop", [](DayInputs& in) { in.settings.heat_stop = fahrenheit(42.0); }},
    {"heat caution", [](DayInputs& in) { in.settings.heat_caution = fahrenheit(50.0); }},
    {"wading", [](DayInputs& in) { in.settings.wading_limit_m2_s = 0.2; }},
    {"hardly any wading", [](DayInputs& in) { in.settings.wading_limit_m2_s = 0.05; }},
    {"one rod for dry flies",
     [](DayInputs& in) {
       in.settings.preferences.rods_aboard = 1;
       in.settings.preferences.methods = {{Method::Dry, 1.0}};
     }},
    {"least flow", [](DayInputs& in) { raise(in.river.boat_limits.least_flow, 1600.0); }},
    {"most flow", [](DayInputs& in) { lower(in.river.boat_limits.most_flow, 1400.0); }},
};
// Which stretches are asked for at all. At a spot hours that are not asked for are not looked at.
constexpr Stricter kOfStretches[]{
    {"latest hour", [](DayInputs& in) { in.settings.latest_off = in.settings.latest_off - hours(2.0); }},
    {"a noon end", [](DayInputs& in) { in.settings.latest_off = hours(12.0); }},
    {"longest stretch", [](DayInputs& in) { in.settings.most_stretch = miles(4.0); }},
    {"shortest stretch", [](DayInputs& in) { in.settings.least_stretch = miles(4.0); }},
    {"a hazard's flows", [](DayInputs& in) {
       for (Hazard& hazard : in.river.hazards) {
         if (hazard.least_flow) raise(hazard.least_flow, 3000.0);
         if (hazard.above_flow && !hazard.must_portage) lower(hazard.above_flow, 900.0);
       }
     }}};

// A caution is told of its place, a heat stop from no later an hour too; a heat stop says all that a heat caution says.
bool says_as_much(const Caution& now, const Caution& before) {
  const bool stop = now.kind == CautionKind::HeatStop;
  if (before.kind == CautionKind::HeatCaution) return stop || now.kind == CautionKind::HeatCaution;
  const auto words = [](const Caution& c) { return std::tie(c.kind, c.where, c.about, c.text); };
  return words(now) == words(before) && (!stop || *now.from <= *before.from);
}

void expect_told(const std::vector<Caution>& before, const std::vector<Caution>& now) {
  for (const Caution& caution : before)
    EXPECT_TRUE(std::ranges::any_of(now, [&](const Caution& one) { return says_as_much(one, caution); }))
        << static_cast<int>(caution.kind) << ' ' << caution.where;
}

struct Counted {
  int before = 0, more = 0;
};

void expect_all_still_told(const DayPlan& before, const DayPlan& after, Counted& counted) {
  EXPECT_EQ(before.stretches.size(), after.stretches.size());
  expect_told(before.cautions, after.cautions);
  for (const PlannedStretch& stretch : before.stretches) {
    const auto same = std::ranges::find_if(after.stretches, [&](const PlannedStretch& other) {
      return other.from == stretch.from && other.to == stretch.to;
    });
    if (same == after.stretches.end()) {
      ADD_FAILURE() << stretch.from << " to " << stretch.to << " is no longer told";
      continue;
    }
    expect_told(stretch.cautions, same->cautions);
    counted.before += static_cast<int>(stretch.cautions.size());
    counted.more += same->cautions.size() > stretch.cautions.size() ? 1 : 0;
  }
}

// Whichever was to be floated, and though none may be now.
void expect_each_kind_told_of_all(const DayPlan& before, const DayPlan& after) {
  const std::vector<Caution> all = cautions_of_all(after.stretches);
  for (const PlannedStretch& stretch : before.stretches) {
    for (const Caution& caution : stretch.cautions) {
      EXPECT_TRUE(std::ranges::any_of(all, [&](const Caution& one) {
        const bool heat = caution.kind == CautionKind::HeatCaution && one.kind == CautionKind::HeatStop;
        const bool there = one.where == caution.where || caution.kind != CautionKind::HeatStop;
        return (one.kind == caution.kind && there) || heat;
      })) << static_cast<int>(caution.kind);
    }
  }
}

// Some water that nobody noted, a stretch that nobody described, people who wade more often than not.
DayInputs some_day_less_known(unsigned seed) {
  DayInputs in = some_day(seed);
  Chance chance(3000 + seed);
  for (StretchNote& note : in.river.notes)
    for (Water& water : note.waters)
      if (chance.one_in(3)) water.notes.clear();
  if (chance.one_in(3)) in.river.notes.pop_back();
  if (chance.one_in(3)) in.settings.preferences.platforms.push_back(Platform::Wading);
  return in;
}

// Each setting alone, on every day.
void expect_none_lost(DayInputs (*day)(unsigned), const std::vector<Stricter>& settings, int at_least) {
  std::vector<Counted> counted(settings.size());
  for (unsigned seed = 0; seed < kDays; ++seed) {
    const DayInputs in = day(seed);
    const DayPlan before = plan_day(in);
    for (std::size_t i = 0; i < settings.size(); ++i) {
      SCOPED_TRACE(std::to_string(seed) + " " + settings[i].what);
      DayInputs stricter = in;
      settings[i].set(stricter);
      const DayPlan after = plan_day(stricter);
      expect_all_still_told(before, after, counted[i]);
      expect_each_kind_told_of_all(before, after);
    }
  }
  int more = 0;
  for (const Counted& one : counted) {
    EXPECT_GE(one.before, at_least);
    more += one.more;
  }
  EXPECT_GE(more, at_least);
}

TEST(AnyPlan, LosesNoCautionToAStricterSetting) {
  std::vector<Stricter> settings(std::begin(kLimits), std::end(kLimits));
  settings.insert(settings.end(), std::begin(kOfStretches), std::end(kOfStretches));
  expect_none_lost(some_day_less_known, settings, 200);
}

DayInputs some_day_at_a_spot(unsigned seed) {
  DayInputs in = some_day_less_known(seed);
  Chance chance(4000 + seed);
  Spot spot;
  spot.id = "bend";
  spot.name = "Gravel Bend";
  spot.place = river_mile(chance.between(1.0, in_river_miles(in.river.accesses.front().place) - 0.2));
  spot.platform = chance.one_in(4) ? Platform::Anchored : Platform::Wading;
  for (std::size_t i = 0; i <= chance.among(2); ++i)
    spot.waters.push_back(noted(WaterType::Run, 0.5, chance.between(0.8, 5.0), chance.between(0.5, 3.0)));
  if (chance.one_in(3)) spot.waters.back().notes.clear();
  in.river.spots = {spot};
  in.spot = 0;
  return in;
}

TEST(AnySpot, LosesNoCautionToAStricterSetting) {
  expect_none_lost(some_day_at_a_spot, {std::begin(kLimits), std::end(kLimits)}, 60);
}

}  // namespace
}  // namespace floatwright
