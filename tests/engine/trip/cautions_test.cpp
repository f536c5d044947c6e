// Limits that are judgement have no outside value here; the rules of the trade and of agencies are named where they stand.
#include "engine/trip/cautions.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include "tests/engine/trip/hand_made_day.hpp"

namespace floatwright {
namespace {

std::vector<Caution> cautions_of(HandMadeDay& made, const std::string& from = "upper", const std::string& to = "lower") {
  made.settings.from = from;
  made.settings.to = to;
  const RiverDay& day = made.day();
  const auto found = stretches(day);
  EXPECT_EQ(found.size(), 1u);
  return found.empty() ? std::vector<Caution>{} : stretch_cautions(day, found.front(), {});
}

const Caution* find(const std::vector<Caution>& cautions, CautionKind kind) {
  const auto found = std::find_if(cautions.begin(), cautions.end(), [&](const Caution& c) { return c.kind == kind; });
  return found == cautions.end() ? nullptr : &*found;
}

TEST(ColdWater, IsToldUnder60FAndAnEmergencyUnder50F) {
  HandMadeDay made;
  made.water = [](Instant) { return HandMadeDay::warm(61.0); };
  EXPECT_EQ(find(cautions_of(made), CautionKind::ColdWater), nullptr);
  made.water = [](Instant) { return HandMadeDay::warm(58.0); };
  const auto cool = cautions_of(made);
  ASSERT_NE(find(cool, CautionKind::ColdWater), nullptr);
  EXPECT_FALSE(find(cool, CautionKind::ColdWater)->emergency);
  made.water = [](Instant) { return HandMadeDay::warm(48.0); };
  const auto cold = cautions_of(made);
  ASSERT_NE(find(cold, CautionKind::ColdWater), nullptr);
  EXPECT_TRUE(find(cold, CautionKind::ColdWater)->emergency);
}

TEST(ColdWater, IsJudgedByTheLowCase) {
  HandMadeDay made;
  made.water = [](Instant) { return PerCase<Temperature>{fahrenheit(49.0), fahrenheit(61.0), fahrenheit(62.0)}; };
  const auto cautions = cautions_of(made);
  ASSERT_NE(find(cautions, CautionKind::ColdWater), nullptr);
  EXPECT_NEAR(in_fahrenheit(*find(cautions, CautionKind::ColdWater)->temperature), 49.0, 1e-6);
}

TEST(Wading, IsToldOnlyWhereSomebodyWades) {
  HandMadeDay made;  // 4.5 ft at 3.5 ft/s: over any limit
  EXPECT_EQ(find(cautions_of(made), CautionKind::Wading), nullptr);
  made.settings.preferences.anglers[0].wades = true;
  const auto cautions = cautions_of(made);
  ASSERT_NE(find(cautions, CautionKind::Wading), nullptr);
  EXPECT_NEAR(in_feet(*find(cautions, CautionKind::Wading)->depth), 4.5, 0.05);
  EXPECT_TRUE(find(cautions, CautionKind::Wading)->where.ends_with("(run)")) << "the bank beside it may be waded";
}

bool within(const Caution& c) { return c.kind == CautionKind::Wading && *c.product <= *c.product_limit; }

TEST(Wading, OfWhatMayBeWadedTellsTheMost) {
  HandMadeDay made;
  made.settings.preferences.anglers[0].wades = true;
  made.settings.from = "upper";
  made.settings.to = "middle";
  const RiverDay& day = made.day();
  const auto cautions = stretch_cautions(day, stretches(day).front(), {});
  const auto told = std::find_if(cautions.begin(), cautions.end(), within);
  ASSERT_NE(told, cautions.end());
  EXPECT_NEAR(in_feet(*told->depth), 2.5, 0.05) << "the bank, at 2 ft/s";
  EXPECT_EQ(std::count_if(cautions.begin(), cautions.end(), within), 1);
}

// Who may not fish may still get out and stand in it.
TEST(Wading, IsToldWhereItIsTooWarmToFish) {
  HandMadeDay made;
  made.settings.preferences.anglers[0].wades = true;
  made.settings.heat_stop = fahrenheit(40.0);
  EXPECT_TRUE(std::ranges::any_of(cautions_of(made), within));
}

Weather blowing(std::vector<double> mph, double rain_mm_h) {
  Weather out;
  Instant t = local(6);
  for (const double w : mph) {
    out.wind.times.push_back(t);
    out.wind.values.push_back(miles_per_hour(w));
    out.rain.times.push_back(t);
    out.rain.values.push_back(metres_per_second(rain_mm_h * 1e-3 / 3600.0));
    t += std::chrono::hours{1};
  }
  return out;
}

TEST(Wind, IsToldOver15MphAndTakesTheBoatOver20) {
  HandMadeDay made;
  EXPECT_EQ(find(cautions_of(made), CautionKind::Wind), nullptr) << "the weather is not known";
  made.weather = blowing({5, 5, 5, 14, 15, 15, 15, 5, 5}, 0.0);
  EXPECT_EQ(find(cautions_of(made), CautionKind::Wind), nullptr);
  made.weather = blowing({5, 5, 5, 14, 17, 18, 15, 5, 5}, 0.0);
  const auto windy = cautions_of(made);
  ASSERT_NE(find(windy, CautionKind::Wind), nullptr);
  EXPECT_FALSE(find(windy, CautionKind::Wind)->emergency);
  EXPECT_EQ(*find(windy, CautionKind::Wind)->from, local(10));
  EXPECT_EQ(*find(windy, CautionKind::Wind)->to, local(12));
  made.weather = blowing({5, 5, 5, 14, 17, 22, 15, 5, 5}, 0.0);
  const auto blown = cautions_of(made);
  EXPECT_TRUE(find(blown, CautionKind::Wind)->emergency);
  EXPECT_EQ(*find(blown, CautionKind::Wind)->from, local(11));
}

TEST(Rain, IsToldFrom12MillimetresInADay) {
  HandMadeDay made;
  made.weather = blowing({5, 5, 5, 5, 5, 5}, 1.9);
  EXPECT_EQ(find(day_cautions(made.day()), CautionKind::Rain), nullptr);
  made.weather = blowing({5, 5, 5, 5, 5, 5}, 2.1);
  const auto wet = day_cautions(made.day());
  ASSERT_NE(find(wet, CautionKind::Rain), nullptr);
  EXPECT_NEAR(in_millimetres(*find(wet, CautionKind::Rain)->rise), 12.6, 1e-6);
}

TEST(ForecastDoubt, NamesWhatIsLookedAt) {
  HandMadeDay made;
  EXPECT_EQ(find(day_cautions(made.day()), CautionKind::ForecastDoubt)->basis,
            "no official forecast is used; rain is not looked at");
  made.weather = blowing({5}, 0.0);
  made.records[0].official = OfficialForecast{"nwps:lanm8", kNow, {{kNow + std::chrono::hours{6}}, {Discharge::from_si(50)}}};
  const auto cautions = day_cautions(made.day());
  EXPECT_EQ(find(cautions, CautionKind::ForecastDoubt)->basis,
            "an official forecast of the flow is followed; rain is looked at as it is forecast");
}

TEST(ForecastDoubt, SpeaksOfTheNightOnlyWhereOneLiesBetween) {
  HandMadeDay made;
  EXPECT_EQ(find(day_cautions(made.day()), CautionKind::ForecastDoubt)->text, "If it rains tonight all of this is wrong.");
  RiverDay morning = made.day();
  morning.now = local(5);
  EXPECT_EQ(find(day_cautions(morning), CautionKind::ForecastDoubt)->text, "If it rains all of this is wrong.");
}

TEST(FastRise, IsToldAtAQuarterMoreInThreeHours) {
  HandMadeDay made;
  // By 30 % from 08:00 to 11:00 in one case, by 15 % in the other; both slowly enough for the half foot in an hour.
  const auto rising = [](double ratio) {
    return [ratio](Instant t) {
      const double h = std::clamp(in_hours(duration(t - local(8))), 0.0, 3.0);
      return HandMadeDay::same(600.0 * std::pow(ratio, h / 3.0));
    };
  };
  made.flow = rising(1.30);
  const auto told = cautions_of(made);
  ASSERT_NE(find(told, CautionKind::FastRise), nullptr);
  EXPECT_TRUE(find(told, CautionKind::FastRise)->our_judgement);
  made.flow = rising(1.15);
  EXPECT_EQ(find(cautions_of(made), CautionKind::FastRise), nullptr);
}

// A rise that neither a dam nor the river's daily wave explains; the limit is that from which it is called fast.
TEST(RisingNow, IsToldOfAGaugeThatComesUpFastAsThePlanIsMade) {
  HandMadeDay made;
  GaugeOutlook outlook;
  outlook.gauge = made.river.gauges[0].id;
  outlook.state = FlowState::Rising;
  outlook.now = cubic_feet_per_second(1350.0);
  outlook.now_at = kNow;
  outlook.change_6h = std::log(1.35);
  const auto cautions = day_cautions(made.day(), {outlook});
  const Caution* told = find(cautions, CautionKind::FastRise);
  ASSERT_NE(told, nullptr);
  EXPECT_NEAR(in_cubic_feet_per_second(*told->flow), 1000.0, 1e-6);
  EXPECT_FALSE(told->about.empty());
  outlook.change_6h = std::log(1.10);
  EXPECT_EQ(find(day_cautions(made.day(), {outlook}), CautionKind::FastRise), nullptr);
  outlook.change_6h = std::log(1.35);
  outlook.state = FlowState::Regulated;
  EXPECT_EQ(find(day_cautions(made.day(), {outlook}), CautionKind::FastRise), nullptr);
}

GaugeRecord two_thirds_of_the_week_ago(const HandMadeDay& made) {
  GaugeRecord record = made.records[0];
  for (std::size_t i = 0; i < record.discharge.size() / 4; ++i) record.discharge.values[i] = 1.6 * record.discharge.values[i];
  return record;
}

TEST(Wood, HasMovedInHighWaterButNotInADamsDailyRamp) {
  HandMadeDay made;
  EXPECT_EQ(find(day_cautions(made.day()), CautionKind::WoodAfterHighWater), nullptr);
  made.records = {two_thirds_of_the_week_ago(made)};
  EXPECT_NE(find(day_cautions(made.day()), CautionKind::WoodAfterHighWater), nullptr);
  Dam dam;
  dam.place = river_mile(30.0);
  dam.ramping = true;
  made.river.dams = {dam};
  EXPECT_EQ(find(day_cautions(made.day()), CautionKind::WoodAfterHighWater), nullptr);
}

TEST(DamRise, IsToldAtThePlacesOfTheStretchInItsHours) {
  HandMadeDay made;
  Dam dam;
  dam.name = "Stone Dam";
  dam.place = river_mile(15.0);
  made.river.dams = {dam};
  DamFront front;
  front.place = river_mile(6.0);
  front.place_name = "middle";
  front.before = cubic_feet_per_second(1400.0);
  front.after = cubic_feet_per_second(1800.0);
  front.leaves = local(7);
  front.earliest = local(9);
  front.expected = local(10);
  front.latest = local(11);
  made.fronts = {front};
  const auto cautions = cautions_of(made);
  const Caution* told = find(cautions, CautionKind::DamRise);
  ASSERT_NE(told, nullptr);
  EXPECT_EQ(told->where, "middle");
  EXPECT_EQ(told->about, "Stone Dam");
  EXPECT_EQ(*told->from, local(9));
  made.fronts[0].earliest = local(20);
  made.fronts[0].latest = local(22);
  EXPECT_EQ(find(cautions_of(made), CautionKind::DamRise), nullptr);
}

Hazard hazard_at(double mile) {
  Hazard hazard;
  hazard.what = "The Shelf";
  hazard.place = river_mile(mile);
  hazard.how = "KEEP LEFT.";
  return hazard;
}

TEST(BoatLimits, AreToldOfEachPlaceWhereTheyAreBroken) {
  HandMadeDay made;  // 1,800 cfs
  made.river.boat_limits.least_flow = cubic_feet_per_second(2000.0);
  made.river.hazards = {hazard_at(8.0)};
  made.river.hazards.front().above_flow = cubic_feet_per_second(1500.0);
  std::multiset<std::string> places;
  for (const Caution& caution : cautions_of(made)) {
    if (caution.kind != CautionKind::BoatLimit) continue;
    places.insert(caution.where);
    const bool of_hazard = caution.where == "The Shelf";
    EXPECT_EQ(caution.about, of_hazard ? "The Shelf" : "");
    EXPECT_NEAR(in_cubic_feet_per_second(*caution.flow_limit), of_hazard ? 1500.0 : 2000.0, 1e-6);
  }
  std::multiset<std::string> met{"The Shelf"};
  const auto found = stretches(made.day());
  for (const TimedPassage& row : found.front().times.rows)
    if (!met.contains(row.passage.name)) met.insert(row.passage.name);
  EXPECT_EQ(places, met);
  EXPECT_GE(places.size(), 3u);
}

TEST(Hazards, AreToldInTheWordsOfTheirWriter) {
  HandMadeDay made;
  made.river.hazards = {hazard_at(8.0)};
  const auto cautions = cautions_of(made);
  ASSERT_NE(find(cautions, CautionKind::Hazard), nullptr);
  EXPECT_EQ(find(cautions, CautionKind::Hazard)->text, "KEEP LEFT.");
  EXPECT_EQ(find(cautions_of(made, "middle"), CautionKind::Hazard), nullptr);
}

TEST(Hazards, ThatStandOnlyAboveAFlowAreNotToldBelowIt) {
  HandMadeDay made;
  made.river.hazards = {hazard_at(8.0)};
  made.river.hazards[0].above_flow = cubic_feet_per_second(3500.0);
  EXPECT_EQ(find(cautions_of(made), CautionKind::Hazard), nullptr);
}

TEST(Portage, IsToldOnceWithItsTime) {
  HandMadeDay made;
  made.river.hazards = {hazard_at(8.0)};
  made.river.hazards[0].must_portage = true;
  made.river.hazards[0].portage_time = minutes(40.0);
  const auto cautions = cautions_of(made);
  ASSERT_NE(find(cautions, CautionKind::Portage), nullptr);
  EXPECT_NEAR(in_minutes(*find(cautions, CautionKind::Portage)->time), 40.0, 1e-9);
  EXPECT_EQ(find(cautions, CautionKind::Hazard), nullptr);
}

// One carry round both, as long as the longer.
TEST(Portage, OfTwoHazardsAtOnePlaceTellsBoth) {
  HandMadeDay made;
  made.river.hazards = {hazard_at(8.0), hazard_at(8.0)};
  made.river.hazards[1].what = "The Cable";
  for (Hazard& hazard : made.river.hazards) hazard.must_portage = true;
  made.river.hazards[0].portage_time = minutes(20.0);
  made.river.hazards[1].portage_time = minutes(40.0);
  std::set<std::string> about;
  for (const Caution& caution : cautions_of(made)) {
    if (caution.kind != CautionKind::Portage) continue;
    about.insert(caution.about);
    EXPECT_NEAR(in_minutes(*caution.time), 40.0, 1e-9);
  }
  EXPECT_EQ(about, (std::set<std::string>{made.river.hazards[0].what, "The Cable"}));
}

TEST(Closure, IsToldWithItsReasonAndSource) {
  HandMadeDay made;
  Closure closure;
  closure.from = river_mile(5.0);
  closure.to = river_mile(4.0);
  closure.why = "spawning fish";
  closure.source = "posted sign";
  made.river.closures = {closure};
  const auto cautions = cautions_of(made);
  ASSERT_NE(find(cautions, CautionKind::Closure), nullptr);
  EXPECT_EQ(find(cautions, CautionKind::Closure)->text, "spawning fish");
  EXPECT_EQ(find(cautions, CautionKind::Closure)->basis, "posted sign");
}

TEST(Rules, LookedUpOverAWeekAgoOrNeverAreOld) {
  HandMadeDay made;
  made.river.rules_checked_on = std::chrono::year{2027} / 5 / 7;  // seven days before
  EXPECT_EQ(find(day_cautions(made.day()), CautionKind::RulesOld), nullptr);
  made.river.rules_checked_on = std::chrono::year{2027} / 5 / 6;
  EXPECT_NE(find(day_cautions(made.day()), CautionKind::RulesOld), nullptr);
  made.river.rules_checked_on.reset();
  EXPECT_NE(find(day_cautions(made.day()), CautionKind::RulesOld), nullptr);
}

// Montana administrative rule (text read): restriction at a daily maximum of 73 F on three consecutive days.
TEST(ClosureLikely, AfterThreeDaysOfSeventyThree) {
  HandMadeDay made;
  made.records = {four_days({.flow_cfs = 1800.0, .mean_f = 69.0, .swing_f = 4.2})};
  EXPECT_NE(find(day_cautions(made.day()), CautionKind::ClosureLikely), nullptr);
  made.records = {four_days({.flow_cfs = 1800.0, .mean_f = 69.0, .swing_f = 3.8})};
  EXPECT_EQ(find(day_cautions(made.day()), CautionKind::ClosureLikely), nullptr);
}

TEST(Gauges, SilentOldOrIcedAreTold) {
  HandMadeDay made;
  EXPECT_EQ(find(day_cautions(made.day()), CautionKind::OldReading), nullptr);
  made.now = kNow + std::chrono::hours{7};
  const auto old = day_cautions(made.day());
  ASSERT_NE(find(old, CautionKind::OldReading), nullptr);
  EXPECT_NEAR(in_hours(*find(old, CautionKind::OldReading)->age), 7.0, 1e-9);
  made.records = {GaugeRecord{}};
  EXPECT_NE(find(day_cautions(made.day()), CautionKind::MissingGauge), nullptr);
  made.records = {four_days({})};
  made.records[0].ice_now = true;
  const auto iced = day_cautions(made.day());
  EXPECT_NE(find(iced, CautionKind::Ice), nullptr);
  EXPECT_EQ(find(iced, CautionKind::OldReading), nullptr) << "the ice says why";
}

TEST(Cautions, StandHeaviestFirstEachWithItsBasis) {
  HandMadeDay made;
  made.river.hazards = {hazard_at(8.0)};
  made.settings.preferences.anglers[0].wades = true;
  made.water = [](Instant) { return HandMadeDay::warm(48.0); };
  const auto cautions = cautions_of(made);
  EXPECT_TRUE(std::is_sorted(cautions.begin(), cautions.end(),
                             [](const Caution& a, const Caution& b) { return a.weight > b.weight; }));
  for (const Caution& caution : cautions) EXPECT_FALSE(caution.basis.empty());
  EXPECT_EQ(find(cautions, CautionKind::ColdWater)->published, "NWS; 33 CFR 175.15");
}

}  // namespace
}  // namespace floatwright
