// Visits made up from a law that is known, so that the fit can be held against it.
#include "engine/water/tune_channel.hpp"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "engine/statistics/quantile.hpp"
#include "engine/water/channel.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

// The law that is to be found again.
const Channel kTrue = [] {
  Channel c;
  c.a = 12.0, c.b = 0.20, c.c = 0.25, c.f = 0.45, c.m = 0.35, c.k = 1.0 / (12.0 * 0.25);
  return c;
}();

FieldMeasurement visit(int day, double q, double w, double d, double v) {  // m3/s, m, m, m/s
  FieldMeasurement out;
  out.visit = std::to_string(day);
  out.time = Instant{std::chrono::hours{24 * day}};
  out.discharge = cubic_metres_per_second(q);
  out.channels.emplace_back();
  out.channels[0].width = metres(w);
  out.channels[0].area = square_metres(w * d);
  out.channels[0].speed = mean_metres_per_second(v);
  return out;
}

// Width, depth and speed each `noise` (sd of ln) off their law, closed to the flow; widths times `wider`.
FieldMeasurement drawn(std::mt19937& random, int day, double noise, double wider = 1.0) {
  std::normal_distribution<double> normal;
  const double q = std::exp(2.0 + 0.9 * normal(random));
  const Discharge flow = cubic_metres_per_second(q);
  const double w = width(kTrue, flow).si() * std::exp(noise * normal(random)) * wider;
  const double d = mean_depth(kTrue, flow).si() * std::exp(noise * normal(random)) / std::sqrt(wider);
  return visit(day, q, w, d, q / (w * d));
}

ChannelTuning tuned(const std::vector<FieldMeasurement>& visits) { return tune_channel({"g", visits}); }

std::vector<FieldMeasurement> drawn(unsigned seed, int count, double noise) {
  std::mt19937 random(seed);
  std::vector<FieldMeasurement> out;
  for (int i = 0; i < count; ++i) out.push_back(drawn(random, 30 * i, noise));
  return out;
}

Channel as_channel(const FittedChannel& f) { return {f.a, f.b, f.c, f.f, f.k, f.m, false, f.least, f.most}; }

// The median of |ln(fitted/true)| over flows of 2 to 30 m3/s, the larger of depth's and speed's.
double miss(const Channel& fitted) {
  std::vector<double> depth, speed;
  for (double q = 2.0; q <= 30.0; q *= 1.2) {
    const Discharge flow = cubic_metres_per_second(q);
    depth.push_back(std::abs(std::log(mean_depth(fitted, flow) / mean_depth(kTrue, flow))));
    speed.push_back(std::abs(std::log(mean_speed(fitted, flow) / mean_speed(kTrue, flow))));
  }
  return std::max(median(depth), median(speed));
}

TEST(TunedChannel, FindsACleanSectionAgainWithinFivePerCent) {
  // 60 visits of 10 % noise, as the project's aim asks; 20 draws, so that luck does not decide.
  for (unsigned seed = 1; seed <= 20; ++seed) {
    const ChannelTuning tuning = tuned(drawn(seed, 60, 0.10));
    ASSERT_THAT(tuning.report.other_sections, IsEmpty()) << seed;
    EXPECT_LT(miss(as_channel(*tuning.channel)), 0.05) << seed;
  }
}

TEST(TunedChannel, CarriesItsFlowExactly) {
  const FittedChannel fit = tuned(drawn(3, 40, 0.15)).channel.value();
  EXPECT_DOUBLE_EQ(fit.b + fit.f + fit.m, 1.0);
  EXPECT_DOUBLE_EQ(fit.a * fit.c * fit.k, 1.0);
}

TEST(TunedChannel, IsNotBentByAFarPointWithLeverage) {
  auto visits = drawn(5, 30, 0.10);
  visits.push_back(visit(1000, 600.0, 40.0, 1.2, 600.0 / 48.0));  // the law has 4.4 m deep and 3.2 m/s
  visits.push_back(visit(1001, 0.2, 60.0, 0.01, 0.2 / 0.6));
  const ChannelTuning tuning = tuned(visits);
  EXPECT_LT(miss(as_channel(*tuning.channel)), 0.06);
  ASSERT_EQ(tuning.report.outliers.size(), 2u);
  EXPECT_EQ(tuning.report.outliers[0].visit, "1000");
  EXPECT_LT(tuning.channel->most.si(), 600.0);
}

TEST(TunedChannel, TellsTwoSectionsApartByTheirWidth) {
  std::mt19937 random(11);
  std::vector<FieldMeasurement> visits;
  for (int i = 0; i < 90; ++i) visits.push_back(drawn(random, 20 * i, 0.08, i % 3 == 0 ? 1.6 : 1.0));
  const ChannelTuning tuning = tuned(visits);
  ASSERT_EQ(tuning.report.other_sections.size(), 1u);
  EXPECT_NEAR(tuning.channel->visits, 60, 2);
  EXPECT_LT(miss(as_channel(*tuning.channel)), 0.06);
  const Discharge q = cubic_metres_per_second(8.0);
  EXPECT_NEAR(width(as_channel(tuning.report.other_sections[0]), q) / width(as_channel(*tuning.channel), q), 1.6, 0.1);
}

TEST(TunedChannel, SeesOneSectionWhereThereIsOne) {
  int split = 0;
  for (unsigned seed = 1; seed <= 50; ++seed) split += tuned(drawn(seed, 64, 0.12)).report.other_sections.size() > 0;
  EXPECT_LE(split, 3);
}

TEST(TunedChannel, StatesASpreadThatHoldsFourVisitsOfFive) {
  double depth = 0.0, speed = 0.0;
  for (unsigned seed = 1; seed <= 40; ++seed) {
    const auto skill = tuned(drawn(seed, 80, 0.12)).report.skill;
    ASSERT_TRUE(skill.has_value());
    depth += skill->depth_held / 40.0;
    speed += skill->speed_held / 40.0;
  }
  EXPECT_NEAR(depth, 0.80, 0.04);
  EXPECT_NEAR(speed, 0.80, 0.04);
}

TEST(TunedChannel, IsNoneFromThreePoints) {
  const ChannelTuning tuning = tuned(drawn(1, 3, 0.1));
    EXPECT_THAT(tuning.channel.why_absent(), HasSubstr("3 sound visits, and a law wants 8"));
  EXPECT_THAT(tuning.report.notes, ElementsAre(HasSubstr("3 sound visits")));
}

TEST(TunedChannel, IsNotJudgedOnAHandful) {
  const ChannelTuning tuning = tuned(drawn(1, 12, 0.1));
  EXPECT_TRUE(tuning.channel.has_value());
  EXPECT_FALSE(tuning.report.skill);
  EXPECT_THAT(tuning.report.notes, ElementsAre(HasSubstr("too few")));
}

TEST(TunedChannel, LeavesIceAndRowsWithoutANumberAside) {
  auto visits = drawn(2, 20, 0.1);
  visits[0].ice = true;
  visits[1].channels[0].width.reset();
  visits[2].channels.clear();
  visits[3].discharge = Discharge{};
  visits[4].time.reset();
  visits[5].channels[0].area = Area{};
  visits[6].channels[0].speed = mean_metres_per_second(NAN);
  const ChannelTuning tuning = tuned(visits);
  EXPECT_EQ(tuning.report.visits, 13);
  ASSERT_EQ(tuning.report.left_out.size(), 7u);
  EXPECT_EQ(tuning.report.left_out[0].why, "ice");
  EXPECT_EQ(tuning.report.left_out[4].why, "no day");
}

TEST(TunedChannel, AddsUpTheChannelsOfADividedRiver) {
  auto visits = drawn(2, 20, 0.1);
  auto& parted = visits[0];
  MeasuredChannel half = parted.channels[0];
  half.width = *half.width * 0.5;
  half.area = *half.area * 0.5;
  half.discharge = *parted.discharge * 0.5;
  parted.channels = {half, half};
  const ChannelTuning whole = tuned(drawn(2, 20, 0.1)), tuning = tuned(visits);
  EXPECT_EQ(tuning.report.visits, 20);
  EXPECT_NEAR(tuning.channel->a, whole.channel->a, 1e-9);
}

TEST(TunedChannel, TakesAWidthThatNeverChanges) {
  std::vector<FieldMeasurement> visits;
  for (int i = 0; i < 20; ++i) visits.push_back(visit(i, 1.0 + i, 30.0, 0.5 * std::sqrt(1.0 + i), std::sqrt(1.0 + i) / 15.0));
  const FittedChannel fit = tuned(visits).channel.value();
  EXPECT_NEAR(width(as_channel(fit), cubic_metres_per_second(10.0)).si(), 30.0, 1.0);
}

TEST(TunedChannel, TakesOneFlowThatIsMeasuredAgainAndAgain) {
  std::vector<FieldMeasurement> visits;
  for (int i = 0; i < 20; ++i) visits.push_back(visit(i, 12.0, 20.0, 0.6, 1.0));
  const FittedChannel fit = tuned(visits).channel.value();
  EXPECT_DOUBLE_EQ(fit.f, 0.40);  // nothing but the published exponents speaks
  EXPECT_NEAR(mean_depth(as_channel(fit), cubic_metres_per_second(12.0)).si(), 0.6, 1e-9);
}

TEST(TunedChannel, IsTheSameWhateverTheOrderOfTheVisits) {
  auto visits = drawn(9, 50, 0.15);
  const ChannelTuning before = tuned(visits);
  std::ranges::reverse(visits);
  const ChannelTuning after = tuned(visits);
  EXPECT_DOUBLE_EQ(before.channel->f, after.channel->f);
  EXPECT_DOUBLE_EQ(before.report.skill->depth_error, after.report.skill->depth_error);
}

}  // namespace
}  // namespace floatwright
