// A small record, every water of every day worked out by itself with the choice's own list, and every set tried: the
// same shares and sets as the grid and the search give.
#include <gmock/gmock.h>

#include <bit>
#include <cmath>

#include "engine/choice/choose.hpp"
#include "engine/choice/suits.hpp"
#include "engine/coverage/water_seconds.hpp"
#include "engine/coverage_of_river.hpp"
#include "engine/river/graph.hpp"
#include "tests/engine/trip/small_river.hpp"

namespace floatwright {
namespace {

constexpr int kDays = 360;

std::chrono::sys_days first_day() { return std::chrono::year{2026} / 5 / 1; }

// Flows from 600 to 5,000 cfs and water from 37 to 66 F, in no step with each other.
double flow_cfs(int day) { return 600.0 * std::pow(5000.0 / 600.0, 0.5 + 0.5 * std::sin(0.37 * day)); }
double water_f(int day) { return 51.5 + 14.5 * std::sin(0.23 * day + 1.0); }

// Methods that need no fishing tables.
CoverageAsked asked() {
  CoverageAsked in;
  in.river = small_river();
  in.river.notes.pop_back();  // one reach fished
  Tackle& tackle = in.tackle.all;
  tackle = small_tackle();
  tackle.rods.push_back({"long", "cross", 4, feet(10.0)});
  tackle.lines = {line_on("five", "nymph", LineKind::NymphTaper, 5), line_on("five", "floater", LineKind::Floating, 5),
                     line_on("dry", "taper", LineKind::DoubleTaper, 5), line_on("long", "thin", LineKind::ThinNymphLine, 4)};
  in.tackle.lines_thought_of = {3};
  tackle.flies = {fly("heavy", {Method::Indicator, Method::TightLine}, 0.5, 9.0),
                     fly("dry", {Method::Dry}, 0.04, 0.0)};
  tackle.shot.clear();
  in.settings.preferences.methods = {{Method::Indicator, 0.9}, {Method::TightLine, 0.9}, {Method::Dry, 0.8}};
  in.settings.preferences.anglers = {{}};
  Hatch hatch;
  hatch.season = {{5, 10}, {6, 10}};
  hatch.hours = {hours(12.0), hours(15.0)};
  in.river.hatches = {hatch};
  in.river.gauges[0].place = in.river.accesses[1].place;
  GaugeRecord record;
  for (int day = 0; day < kDays; ++day) {
    record.daily_discharge.times.push_back(first_day() + std::chrono::days{day});
    record.daily_discharge.values.push_back(cubic_feet_per_second(flow_cfs(day)));
    record.daily_temperature.times.push_back(first_day() + std::chrono::days{day});
    record.daily_temperature.values.push_back(fahrenheit(water_f(day)));
  }
  in.records = {record};
  return in;
}

// By the rule as docs/equations.md has it, without the grid: shares of the fishing by the exact set of lines that covers.
std::map<unsigned, double> worked_out_day_by_day(const CoverageAsked& in) {
  const RiverGraph graph = river_graph(in.river);
  const RecordAsked record{in.river, graph, in.settings, in.tackle.all, in.judgement, first_day(), first_day() + std::chrono::days{kDays - 1}};
  const Passage passage = fished_reaches(record).at(0);
  const std::vector<Water>& waters = waters_of(in.river, graph.reaches[passage.reach]);
  std::map<unsigned, double> parts;
  for (int day = 0; day < kDays; ++day) {
    for (std::size_t w = 0; w < waters.size(); ++w) {
      const Temperature warmth = fahrenheit(water_f(day));
      auto water = water_at(record, passage, w, cubic_feet_per_second(flow_cfs(day)), warmth);
      for (const bool hatch : {false, true}) {
        const std::chrono::year_month_day date{first_day() + std::chrono::days{day}};
        const bool listed = date >= std::chrono::year{2026} / 5 / 10 && date <= std::chrono::year{2026} / 6 / 10;
        const double on = listed ? 7.0 / 24.0 : 0.0;  // 12:00 to 15:00 of 07:00 to 19:00, in half hours, both ends
        if (hatch && on == 0.0) continue;
        water.value().hatch = hatch;
        const auto rigs = scored_rigs(*water, in.tackle.all, in.settings.preferences, in.judgement);
        std::map<Method, std::vector<double>> best;
        std::map<Method, double> worth;
        for (const ScoredRig& rig : rigs) {
          auto& lines = best[rig.technique.method];
          lines.resize(in.tackle.all.lines.size());
          const double most = *std::ranges::max_element(lines);
          lines[rig.rig.line] = std::max(lines[rig.rig.line], rig.seconds);
          if (rig.seconds > most && rig.seconds >= 6.0 && rig.efficiency >= 0.1) worth[rig.technique.method] = rig.worth;
        }
        double most_worth = 0.0;
        for (const auto& [method, its] : worth) most_worth = std::max(most_worth, its);
        unsigned covering = 0;
        for (const auto& [method, its] : worth)
          for (std::size_t line = 0; its > 0.0 && its >= 0.9 * most_worth && line < best[method].size(); ++line)
            if (best[method][line] >= 0.8 * *std::ranges::max_element(best[method])) covering |= 1u << line;
        parts[covering] += waters[w].fishing_time * (hatch ? on : 1.0 - on);
      }
    }
  }
  return parts;
}

double share_of(const std::map<unsigned, double>& parts, unsigned set) {
  double covered = 0.0, all = 0.0;
  for (const auto& [lines, weight] : parts) {
    if (lines != 0) all += weight;
    if (lines & set) covered += weight;
  }
  return covered / all;
}

TEST(CoverageOfRiver, IsThatOfEveryDayWorkedOutByItself) {
  const CoverageAsked in = asked();
  const Coverage found = coverage_of_river(in);
  const auto parts = worked_out_day_by_day(in);
  EXPECT_EQ(found.counted.fishable, kDays);
  constexpr double kWithin = 0.01;  // of all the fishing: what the grid of flows and temperatures may cost
  for (const LineCoverage& line : found.lines)
    EXPECT_NEAR(line.alone, share_of(parts, 1u << line.line.line), kWithin) << line.line.line;
  EXPECT_NEAR(found.owned, share_of(parts, 0b0111), kWithin);
  const LineCoverage& thought_of = *std::ranges::find(found.lines, false, [](const LineCoverage& one) { return one.line.owned; });
  EXPECT_NEAR(thought_of.only, share_of(parts, 0b1111) - share_of(parts, 0b0111), kWithin);
  for (std::size_t size = 1; size <= found.best_sets.size(); ++size) {
    double best = 0.0;
    for (unsigned set = 1; set < 8; ++set)
      if (std::popcount(set) == static_cast<int>(size)) best = std::max(best, share_of(parts, set));
    EXPECT_NEAR(found.best_sets[size - 1].share, best, kWithin);
  }
  // The record has something to tell lines apart by.
  EXPECT_GT(thought_of.only, 0.0);
  EXPECT_GE(parts.size(), 3u);
}

TEST(CoverageOfRiver, IsTheSameInAnyOrderOfWork) {
  CoverageAsked in = asked();
  const Coverage forwards = coverage_of_river(in);
  in.do_each = [](std::size_t count, const std::function<void(std::size_t)>& work) {
    for (std::size_t i = count; i-- > 0;) work(i);
  };
  const Coverage backwards = coverage_of_river(in);
  for (std::size_t i = 0; i < 4; ++i) EXPECT_DOUBLE_EQ(forwards.lines[i].alone, backwards.lines[i].alone);
}

// A swing is asked for in the coldest and the warmest water and read in a straight line between.
TEST(LinesAtHand, FishWaterOfEveryWarmthAsThoughItWereAskedForAlone) {
  Tackle tackle = small_tackle();
  tackle.lines = {line_on("five", "tip", LineKind::SinkingTip, 5)};
  tackle.lines[0].tip_length = feet(10.0);
  tackle.lines[0].sink_rate = inches_per_second(4.0);
  tackle.flies = {fly("streamer", {Method::Swing}, 0.4, 4.0)};
  Preferences preferences;
  preferences.methods = {{Method::Swing, 1.0}};
  const Judgement judgement;
  const LinesAtHand lines(tackle, {{.line = 0}}, preferences, judgement, nullptr);
  WaterToFish water;
  water.lane.depth = {metres(1.2), metres(1.2), metres(1.2)};
  water.lane.surface_speed = {surface_metres_per_second(0.8), surface_metres_per_second(0.8), surface_metres_per_second(0.8)};
  water.boat_lane = water.lane.surface_speed;
  water.platforms = {Platform::Anchored, Platform::Wading};
  const std::vector<Measured<Temperature>> warmths{celsius(2.0), celsius(8.0), celsius(14.0), celsius(20.0)};
  WaterToFish other = water;
  other.lane.depth = {metres(1.1), metres(1.1), metres(1.1)};
  const std::vector<WaterAtWarmths> waters{{water, warmths}, {other, warmths}};
  const auto seconds = [&](std::span<const WaterAtWarmths> in) { return lines.seconds_in(in, WaysFished::Pulled); };
  const auto together = seconds(waters);
  ASSERT_EQ(together.size(), waters.size());
  for (std::size_t w = 0; w < waters.size(); ++w) {
    ASSERT_EQ(together[w].size(), warmths.size());
    for (std::size_t i = 0; i < warmths.size(); ++i) {
      const WaterAtWarmths one{waters[w].water, {warmths[i]}};
      const LineSeconds alone = seconds({&one, 1}).front().front().at(Method::Swing).at(0);
      EXPECT_GT(alone.seconds, 1.0);
      EXPECT_NEAR(together[w][i].at(Method::Swing).at(0).seconds, alone.seconds, 0.01 * alone.seconds) << w << " " << i;
    }
    const auto apart = seconds({&waters[w], 1});
    EXPECT_EQ(apart.front().back().at(Method::Swing).at(0).seconds, together[w].back().at(Method::Swing).at(0).seconds);
  }
}

TEST(CoverageOfRiver, LooksNoFurtherBackThanAsked) {
  CoverageAsked in = asked();
  in.since = first_day() + std::chrono::days{kDays - 5};
  EXPECT_EQ(coverage_of_river(in).counted.dates, 5);
  in.since = first_day() + std::chrono::days{kDays};
  EXPECT_EQ(coverage_of_river(in).counted.dates, 0);
  in.records = {GaugeRecord{}};
  EXPECT_EQ(coverage_of_river(in).counted.dates, 0);
}

}  // namespace
}  // namespace floatwright
