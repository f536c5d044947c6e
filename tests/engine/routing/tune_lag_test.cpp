// Synthetic pairs of gauges: steps of flow whose hour below is known because each was put there by t(Q).
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "engine/routing/flow_changes.hpp"
#include "engine/routing/tune_lag.hpp"
#include "small_river.hpp"

namespace floatwright {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

const Instant kStart = std::chrono::sys_days{std::chrono::year{2026} / 1 / 5};

struct Step {
  Instant at;
  double flow;  // m3/s, from then on
};
// Quarter hours; a step is a ramp over half an hour around its instant.
Series<Discharge> record_of(const std::vector<Step>& steps, Instant last) {
  Series<Discharge> record;
  std::size_t next = 1;
  for (Instant t = kStart; t <= last; t += minutes{15}) {
    while (next < steps.size() && steps[next].at + minutes{15} <= t) ++next;
    const double before = steps[next - 1].flow;
    double flow = before;
    if (next < steps.size() && t > steps[next].at - minutes{15})
      flow += (steps[next].flow - before) * duration(t - steps[next].at + minutes{15}).si() / 1800.0;
    record.times.push_back(t);
    record.values.push_back(cubic_metres_per_second(flow));
  }
  return record;
}

struct Gauges {
  Series<Discharge> above, below;
};
// A step every five to nine hours among four flows; below it shows `lag` later, which may depend on the hour it left.
template <class Lag>
Gauges gauges_with(const Lag& lag, int days = 60) {
  std::mt19937 random(3);
  const std::vector<double> levels{6.0, 25.0, 45.0, 70.0};
  std::vector<Step> above{{kStart, 6.0}}, below{{kStart, 6.0}};
  const Instant last = kStart + hours{24 * days};
  for (Instant t = kStart + hours{5}; t < last - hours{12}; t += minutes{300 + 15 * static_cast<int>(random() % 17)}) {
    const double before = above.back().flow, after = levels[random() % levels.size()];
    if (after == before) continue;
    const double front = front_flow(cubic_metres_per_second(before), cubic_metres_per_second(after)).si();
    above.push_back({t, after});
    below.push_back({t + period(lag(front, t)), after});
  }
  return {record_of(above, last), record_of(below, last)};
}
auto by_flow(double minutes_at_30, double exponent) {
  return [=](double flow, Instant) { return floatwright::minutes(minutes_at_30 * std::pow(30.0 / flow, exponent)); };
}

LagTuning tuned(const Gauges& gauges, const River& river = bare_river()) {
  return tune_lag({river, river_graph(river), 0, 1, gauges.above, gauges.below});
}
double minutes_at_30(const FittedLag& lag) {
  return in_minutes(lag.time) * std::pow(lag.at_flow.si() / 30.0, lag.exponent);
}

TEST(FlowChanges, StandAtTheirHalfWayPoint) {
  const auto record = record_of({{kStart, 10}, {kStart + hours{6}, 40}, {kStart + hours{12}, 15}}, kStart + hours{24});
  const auto changes = flow_changes(record, cubic_metres_per_second(15));
  ASSERT_EQ(changes.size(), 2u);
  EXPECT_EQ(changes[0].half_way, kStart + hours{6});
  EXPECT_EQ(changes[1].half_way, kStart + hours{12});
  EXPECT_TRUE(changes[0].rise());
  EXPECT_NEAR(changes[0].before.si(), 10, 1e-9);
  EXPECT_NEAR(changes[0].after.si(), 40, 1e-9);
}
TEST(FlowChanges, AreTwoWhereTheFlowPausesForHours) {
  const auto record = record_of({{kStart, 10}, {kStart + hours{6}, 30}, {kStart + hours{10}, 50}}, kStart + hours{24});
  EXPECT_EQ(flow_changes(record, cubic_metres_per_second(15)).size(), 2u);
  EXPECT_THAT(flow_changes(record, cubic_metres_per_second(25)), IsEmpty());
}
TEST(FlowChanges, NeverSpanAGap) {
  auto record = record_of({{kStart, 10}, {kStart + hours{6}, 40}}, kStart + hours{24});
  record.times.erase(record.times.begin() + 16, record.times.begin() + 32);  // 4 h to 8 h
  record.values.erase(record.values.begin() + 16, record.values.begin() + 32);
  EXPECT_THAT(flow_changes(record, cubic_metres_per_second(15)), IsEmpty());
}

TEST(TuneLag, FindsTheLagThatWasThere) {
  const LagTuning tuning = tuned(gauges_with(by_flow(80, 0.34)));
  ASSERT_TRUE(tuning.lag) << tuning.lag.why_absent();
  EXPECT_NEAR(minutes_at_30(*tuning.lag), 80.0, 2.0);
  EXPECT_DOUBLE_EQ(tuning.lag->exponent, 0.34);
  EXPECT_GT(tuning.lag->fronts, 100);
  EXPECT_THAT(tuning.report.notes, IsEmpty());
  EXPECT_LE(in_minutes(tuning.report.tuned.median_error), 2.0);
  EXPECT_GE(tuning.report.tuned.within_quarter_hour, 0.95);
  EXPECT_GT(in_minutes(tuning.report.constant.median_error), 5.0);
  EXPECT_GT(*tuning.report.brought_down.nash_sutcliffe, 0.97);
  EXPECT_GT(*tuning.report.brought_down.nash_sutcliffe, *tuning.report.unrouted.nash_sutcliffe);
}
TEST(TuneLag, FindsAnotherExponentFromThirtyFronts) {
  const LagTuning tuning = tuned(gauges_with(by_flow(150, 0.50)));
  ASSERT_TRUE(tuning.lag);
  EXPECT_NEAR(tuning.lag->exponent, 0.50, 0.06);
  EXPECT_NEAR(minutes_at_30(*tuning.lag), 150.0, 4.0);
}
TEST(TuneLag, DoesNotKnowTheRestOfTheRecordWhenItIsJudged) {
  // From the middle on the lag is a quarter longer: the law of the first half must be that far off.
  const Instant middle = kStart + hours{24 * 30};
  const LagTuning tuning = tuned(gauges_with([&](double flow, Instant t) {
    return floatwright::minutes((t < middle ? 60.0 : 72.0) * std::pow(30.0 / flow, 0.34));
  }));
  EXPECT_NEAR(in_minutes(tuning.report.tuned.median_error), 11.0, 3.0);
}
// Hours, storms of every size: the lower gauge has the upper one's flow six hours later, drawn out by one of them,
// a little from rain of its own, and readings in three figures.
Gauges storms() {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> share(0.0, 1.0);
  const int hours_of_year = 8760;
  std::vector<double> above(hours_of_year, 4.0), own(hours_of_year, 1.0), late(hours_of_year, 4.0);  // m3/s
  double quick = 0.0, quick_own = 0.0, drawn = 4.0;
  int raining = 0;
  double rain = 0.0;
  for (int h = 1; h < hours_of_year; ++h) {
    if (raining == 0 && share(random) < 0.008) {
      raining = 3 + static_cast<int>(random() % 8);
      rain = 1.0 + 12.0 * share(random) * share(random);
    }
    quick = 0.94 * quick + (raining > 0 ? rain : 0.0);
    quick_own = 0.90 * quick_own + (raining > 0 ? rain * 0.3 * share(random) : 0.0);
    if (raining > 0) --raining;
    above[h] = 4.0 + quick;
    own[h] = 1.0 + quick_own;
    drawn += ((h >= 5 ? above[h - 5] : 4.0) - drawn) / 2.0;  // delays by an hour more in the mean
    late[h] = drawn;
  }
  const auto three_figures = [](double q) {
    const double unit = std::pow(10.0, std::floor(std::log10(q)) - 2.0);
    return cubic_metres_per_second(std::round(q / unit) * unit);
  };
  Gauges gauges;
  for (int h = 0; h < hours_of_year; ++h) {
    gauges.above.times.push_back(kStart + hours{h});
    gauges.above.values.push_back(three_figures(above[h]));
    gauges.below.values.push_back(three_figures(late[h] + own[h]));
  }
  gauges.below.times = gauges.above.times;
  return gauges;
}
TEST(TuneLag, FindsTheLagOfStormsToo) {
  const LagTuning tuning = tuned(storms());
  ASSERT_TRUE(tuning.lag) << tuning.lag.why_absent();
  EXPECT_GE(in_hours(tuning.lag->time), 5.0);  // nothing comes sooner
  EXPECT_LE(in_hours(tuning.lag->time), 6.0);  // the mean of what is drawn out comes after its half-way point
  EXPECT_GE(tuning.report.changes, 100);
  EXPECT_THAT(tuning.report.notes, IsEmpty());
  EXPECT_GT(*tuning.report.brought_down.nash_sutcliffe, *tuning.report.unrouted.nash_sutcliffe);
}
TEST(TuneLag, TakesRecordsOfUnlikeSteps) {
  Gauges gauges = gauges_with(by_flow(180, 0.34));
  Series<Discharge> hourly;
  for (std::size_t i = 0; i < gauges.below.size(); i += 4) {
    hourly.times.push_back(gauges.below.times[i]);
    hourly.values.push_back(gauges.below.values[i]);
  }
  gauges.below = hourly;
  const LagTuning tuning = tuned(gauges);
  ASSERT_TRUE(tuning.lag) << tuning.lag.why_absent();
  EXPECT_NEAR(minutes_at_30(*tuning.lag), 180.0, 8.0);
}
TEST(TuneLag, ToleratesAMissingMonthAndTellsIt) {
  Gauges gauges = gauges_with(by_flow(80, 0.34), 120);
  const auto a = gauges.below.times.begin() + 96 * 40, b = a + 96 * 30;
  gauges.below.values.erase(gauges.below.values.begin() + 96 * 40, gauges.below.values.begin() + 96 * 70);
  gauges.below.times.erase(a, b);
  const LagTuning tuning = tuned(gauges);
  ASSERT_TRUE(tuning.lag);
  EXPECT_NEAR(minutes_at_30(*tuning.lag), 80.0, 2.0);
  EXPECT_THAT(tuning.report.notes, Contains(HasSubstr("Gauge ferry has no usable flow from 2026-02-13 to 2026-03-16")));
}
TEST(TuneLag, TellsAGaugeThatMovedAndGoesByWhereItIsNow) {
  const Instant moved = kStart + hours{24 * 45};
  const LagTuning tuning = tuned(gauges_with(
      [&](double flow, Instant t) {
        return floatwright::minutes((t < moved ? 80.0 : 120.0) * std::pow(30.0 / flow, 0.34));
      },
      90));
  ASSERT_TRUE(tuning.lag);
  EXPECT_NEAR(minutes_at_30(*tuning.lag), 120.0, 3.0);
  EXPECT_THAT(tuning.report.notes,
              Contains(testing::AllOf(HasSubstr("longer from heron to ferry"), HasSubstr("was a gauge moved"))));
  EXPECT_NEAR(duration(tuning.report.used_from - moved).si(), 0.0, 2 * 86400.0);
}
TEST(TuneLag, TellsAClockThatIsAnHourOff) {
  const Instant summer = kStart + hours{24 * 40};
  const LagTuning tuning = tuned(gauges_with(
      [&](double flow, Instant t) {
        return floatwright::minutes(100.0 * std::pow(30.0 / flow, 0.34) + (t < summer ? 0.0 : 60.0));
      },
      80));
  EXPECT_THAT(tuning.report.notes, Contains(HasSubstr("was a clock set an hour on or back")));
}
TEST(TuneLag, TellsGaugesInTheWrongOrder) {
  Gauges gauges = gauges_with(by_flow(80, 0.34));
  std::swap(gauges.above, gauges.below);
  EXPECT_THAT(tuned(gauges).lag.why_absent(), HasSubstr("changes show at ferry 75 min before they show at heron"));
  const River river = bare_river();
  const RiverGraph graph = river_graph(river);
  EXPECT_EQ(tune_lag({river, graph, 1, 0, gauges.above, gauges.below}).lag.why_absent(),
            "gauge ferry is not above gauge heron");
}
TEST(TuneLag, IsNoneAcrossADamOrALake) {
  River river = bare_river();
  river.dams = {heron_dam()};
  river.dams[0].place = river_mile(35);
  EXPECT_EQ(tuned(gauges_with(by_flow(80, 0.34)), river).lag.why_absent(), "a dam or a lake lies between");
}
TEST(TuneLag, IsNoneFromFewerThanFiveChangesOrNoRecord) {
  const auto few = record_of({{kStart, 10}, {kStart + hours{30}, 40}, {kStart + hours{60}, 10}}, kStart + hours{90});
  EXPECT_EQ(tuned({few, few}).lag.why_absent(),
            "only 2 changes of flow that are large enough were seen at both gauges; it takes 5");
  const auto flat = record_of({{kStart, 10}}, kStart + hours{90});
  EXPECT_EQ(tuned({flat, flat}).lag.why_absent(), "one of the two records does not change");
  EXPECT_EQ(tuned({{}, few}).lag.why_absent(), "the two records never ran at the same time");
  EXPECT_EQ(tuned({flat, {{kStart}, {cubic_metres_per_second(3)}}}).lag.why_absent(),
            "the two records never ran at the same time");
}
// Rows at any time, flows of nothing, of a drop and of a great flood: a finite lag or the reason why there is none.
TEST(TuneLag, StandsAnyRecord) {
  std::mt19937 random(17);
  const double flows[] = {0.0, 0.0, 1e-6, 3.0, 3.0, 50.0, 1e5};
  const auto any_record = [&] {
    Series<Discharge> record;
    Instant t = kStart + minutes{random() % 3000};
    for (std::size_t rows = random() % 300; rows > 0; --rows) {
      t += minutes{1 + random() % (random() % 20 == 0 ? 5000 : 60)};
      record.times.push_back(t);
      record.values.push_back(cubic_metres_per_second(flows[random() % 7]));
    }
    return record;
  };
  for (int i = 0; i < 100; ++i) {
    Gauges gauges{any_record(), any_record()};
    if (i % 3 == 0) gauges.below = gauges.above;
    const LagTuning tuning = tuned(gauges);
    if (tuning.lag) {
      EXPECT_TRUE(std::isfinite(tuning.lag->time.si()) && tuning.lag->time > Duration{});
      EXPECT_GT(tuning.lag->at_flow, Discharge{});
    } else {
      EXPECT_THAT(tuning.report.notes, Contains(HasSubstr(tuning.lag.why_absent())));
    }
  }
}
// A plant adds a quarter to the river for half the day: of three figures, with noise of 0.3 % and a season of its own.
TEST(TuneLag, FindsTheLagOfSmallPulsesOnALargeRiver) {
  std::mt19937 random(8);
  std::normal_distribution<double> normal;
  Gauges gauges;
  const auto released = [](double h) {
    return 40.0 + 12.0 * std::sin(h / 900.0) + (std::fmod(h, 24.0) < 12.0 ? 12.0 : 0.0);
  };
  for (int i = 0; i < 4 * 24 * 90; ++i) {
    gauges.above.times.push_back(kStart + minutes{15 * i});
    const auto read = [&](double h) {
      return cubic_metres_per_second(std::round(10.0 * released(h) * (1.0 + 0.003 * normal(random))) / 10.0);
    };
    gauges.above.values.push_back(read(i / 4.0 + 24.0));
    gauges.below.values.push_back(read(i / 4.0 + 24.0 - 4.5));
  }
  gauges.below.times = gauges.above.times;
  const LagTuning tuning = tuned(gauges);
  ASSERT_TRUE(tuning.lag) << tuning.lag.why_absent();
  EXPECT_NEAR(in_hours(tuning.lag->time), 4.5, 0.1);
  EXPECT_GE(tuning.report.changes, 170);  // two a day
}
// 26 km: the slowest wave, of 0.3 m/s, takes a day.
TEST(TuneLag, IsNoneWhereOnlyTheDayComesBack) {
  const LagTuning tuning = tuned(gauges_with(by_flow(36 * 60, 0.0)));
  EXPECT_THAT(tuning.lag.why_absent(), HasSubstr("changes show at ferry only 36.0 h after heron"));
}
TEST(TuneLag, IsNoneFromRecordsThatDoNotMoveTogether) {
  Gauges gauges = gauges_with(by_flow(80, 0.34));
  std::mt19937 random(11);
  std::vector<Step> other{{kStart, 6.0}};
  for (Instant t = kStart + hours{3}; t < kStart + hours{24 * 60}; t += minutes{200 + static_cast<int>(random() % 400)})
    other.push_back({t, 5.0 + static_cast<double>(random() % 60)});
  gauges.below = record_of(other, kStart + hours{24 * 60});
  EXPECT_THAT(tuned(gauges).lag.why_absent(), HasSubstr("do not move together"));
}

}  // namespace
}  // namespace floatwright
