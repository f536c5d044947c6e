#include "engine/water/lane.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/engine/river/lantern.hpp"

namespace floatwright {
namespace {

const Channel kChannel =
    channel_through({cubic_feet_per_second(1800), feet(150), feet(3.4), mean_feet_per_second(3.53)});

Lane at(const Water& w, double cfs) {
  const Discharge q = cubic_feet_per_second(cfs);
  return lane(w, kChannel, {q, q, q}).value();
}
double depth_ft(const Water& w, double cfs) { return in_feet(at(w, cfs).depth.middle); }
double speed_ft_s(const Water& w, double cfs) { return in_feet_per_second(at(w, cfs).surface_speed.middle); }
double channel_ft(double cfs) { return in_feet(mean_depth(kChannel, cubic_feet_per_second(cfs))); }

Water noted(std::vector<std::array<double, 3>> rows) {  // cfs, ft, ft/s
  Water w;
  w.type = WaterType::Run;
  w.fishing_time = 1.0;
  for (const auto& [cfs, ft, ft_s] : rows) {
    w.notes.push_back({cubic_feet_per_second(cfs), feet(ft), surface_feet_per_second(ft_s), DepthSource::Noted, {}});
  }
  return w;
}

const Water kRun = noted({{1800, 4.5, 3.3}});
const Water kPool = noted({{1800, 9.0, 1.4}});
const Water kBar = noted({{1800, 0.5, 1.0}});

TEST(Lane, IsTheNoteAtTheNotedFlow) {
  EXPECT_NEAR(depth_ft(kRun, 1800), 4.5, 1e-9);
  EXPECT_NEAR(speed_ft_s(kRun, 1800), 3.3, 1e-9);
}

TEST(Lane, RisesWithTheSurfaceAboveTheNotedFlow) {
  // A pool and the riffle beside it lie under one surface: both rise by what the channel rises.
  const double rise = channel_ft(3000) - channel_ft(1800);
  EXPECT_GT(rise, 0.5);
  EXPECT_NEAR(depth_ft(kPool, 3000), 9.0 + rise, 1e-9);
  EXPECT_NEAR(depth_ft(kBar, 3000), 0.5 + rise, 1e-9);
}

TEST(Lane, StaysWetAsTheRiverDrops) {
  // The bar would be dry by the surface's fall; it keeps 0.5 (Q/Q0)^0.40.
  EXPECT_LT(0.5 + channel_ft(500) - channel_ft(1800), 0.0);
  EXPECT_NEAR(depth_ft(kBar, 500), 0.5 * std::pow(500.0 / 1800.0, 0.40), 1e-9);
  EXPECT_GT(depth_ft(kBar, 1), 0.0);
}

TEST(Lane, KeepsItsShareOfUnitDischarge) {
  const auto unit = [](double cfs) { return depth_ft(kRun, cfs) * speed_ft_s(kRun, cfs); };
  EXPECT_NEAR(unit(2700) / unit(1800), std::pow(1.5, 0.40 + 0.34), 1e-9);  // V D grows as Q^(m+f)
  EXPECT_NEAR(unit(900) / unit(1800), std::pow(0.5, 0.40 + 0.34), 1e-9);
}

TEST(Lane, GrowsDeeperAndFasterWithFlow) {
  for (const Water& w : {kRun, kPool, kBar}) {
    for (double cfs = 400; cfs < 6000; cfs *= 1.2) {
      EXPECT_GT(depth_ft(w, cfs * 1.2), depth_ft(w, cfs)) << cfs;
    }
  }
  EXPECT_GT(speed_ft_s(kPool, 3000), speed_ft_s(kPool, 1800));
}

TEST(Lane, MeetsEveryNoteOfSeveral) {
  const Water w = noted({{3500, 5.6, 4.3}, {900, 3.6, 2.4}, {1800, 4.5, 3.3}});
  EXPECT_NEAR(depth_ft(w, 900), 3.6, 1e-9);
  EXPECT_NEAR(depth_ft(w, 1800), 4.5, 1e-9);
  EXPECT_NEAR(depth_ft(w, 3500), 5.6, 1e-9);
  EXPECT_NEAR(speed_ft_s(w, 3500), 4.3, 1e-9);
}

TEST(Lane, DoesNotJumpBetweenNotes) {
  const Water w = noted({{900, 3.6, 2.4}, {1800, 4.9, 3.3}, {3500, 5.1, 4.3}});
  for (double cfs = 500; cfs < 5000; cfs *= 1.01) {
    EXPECT_LT(std::abs(depth_ft(w, cfs * 1.01) - depth_ft(w, cfs)), 0.05) << cfs;
    EXPECT_LT(std::abs(speed_ft_s(w, cfs * 1.01) - speed_ft_s(w, cfs)), 0.05) << cfs;
  }
}

TEST(Lane, FitsItsRiseToTwoNotes) {
  // Between 1200 and 2400 cfs this water rose half as much as the channel, and goes on so beyond.
  const double half = 0.5 * (channel_ft(2400) - channel_ft(1200));
  const Water w = noted({{1200, 4.0, 3.0}, {2400, 4.0 + half, 4.0}});
  EXPECT_NEAR(depth_ft(w, 4000), 4.0 + half + 0.5 * (channel_ft(4000) - channel_ft(2400)), 1e-9);
}

TEST(Lane, TakesTheLaterOfTwoNotesAtOneFlow) {
  using std::chrono::year_month_day;
  Water w = noted({{1800, 4.5, 3.3}, {1820, 3.9, 3.4}});
  w.notes[0].seen_on = year_month_day{std::chrono::year{2027}, std::chrono::month{5}, std::chrono::day{1}};
  w.notes[1].seen_on = year_month_day{std::chrono::year{2025}, std::chrono::month{5}, std::chrono::day{1}};
  EXPECT_NEAR(depth_ft(w, 1800), 4.5, 1e-9);
}

TEST(Lane, IsComputedForEachCaseAlone) {
  const auto three =
      lane(kRun, kChannel, {cubic_feet_per_second(1500), cubic_feet_per_second(1800), cubic_feet_per_second(2400)})
          .value();
  EXPECT_NEAR(in_feet(three.depth.low), depth_ft(kRun, 1500), 1e-9);
  EXPECT_NEAR(in_feet(three.depth.high), depth_ft(kRun, 2400), 1e-9);
}

TEST(Lane, DoublesItsScatterFarFromTheNote) {
  EXPECT_FALSE(at(kRun, 1800 * 2.49).far_from_note);
  EXPECT_TRUE(at(kRun, 1800 * 2.51).far_from_note);
  EXPECT_TRUE(at(kRun, 1800 * 0.39).far_from_note);
  EXPECT_DOUBLE_EQ(at(kRun, 1800 * 0.39).sd_ln_depth, 2.0 * at(kRun, 1800).sd_ln_depth);
}

TEST(Lane, TrustsASurveyMoreThanANoteMoreThanAGuess) {
  Water surveyed = kRun, guessed = kRun;
  surveyed.notes[0].source = DepthSource::Surveyed;
  guessed.notes[0].source = DepthSource::Guessed;
  EXPECT_LT(at(surveyed, 1800).sd_ln_depth, at(kRun, 1800).sd_ln_depth);
  EXPECT_LT(at(kRun, 1800).sd_ln_depth, at(guessed, 1800).sd_ln_depth);
  EXPECT_EQ(at(guessed, 1800).source, DepthSource::Guessed);
}

TEST(Lane, SaysWhichNoteItStandsOn) {
  const Water w = noted({{900, 3.6, 2.4}, {3500, 5.6, 4.3}});
  EXPECT_NEAR(in_cubic_feet_per_second(at(w, 1700).noted_at), 900, 1e-6);  // 1775 is half way in the ratio
  EXPECT_NEAR(in_cubic_feet_per_second(at(w, 1850).noted_at), 3500, 1e-6);
}

TEST(Lane, IsUnknownWhereNobodyDescribedTheWater) {
  const Discharge q = cubic_feet_per_second(1800);
  EXPECT_EQ(lane(Water{}, kChannel, {q, q, q}).why_absent(), "nobody described this water");
}

TEST(Lane, IsUnknownWithoutFlow) {
  const Discharge q = cubic_feet_per_second(1800);
  EXPECT_FALSE(lane(kRun, kChannel, {Discharge{}, q, q}).has_value());
  EXPECT_FALSE(lane(kRun, kChannel, {q, cubic_feet_per_second(-5), q}).has_value());
  EXPECT_FALSE(lane(kRun, kChannel, {q, q, cubic_feet_per_second(NAN)}).has_value());
}

}  // namespace
}  // namespace floatwright
