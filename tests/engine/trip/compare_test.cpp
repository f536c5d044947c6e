// Stretches compared on fishing tables, the likely best worked out, against every one of them worked out; and the work of
// it shared out among threads.
#include <gmock/gmock.h>

#include <thread>

#include "tests/engine/trip/small_river.hpp"
#include "tests/support/warm_tables.hpp"

namespace floatwright {
namespace {

DayInputs day_with_tables(double flow_cfs) {
  DayInputs in = small_day(small_river(), {.flow_cfs = flow_cfs});
  in.tables = std::make_shared<const FishingTables>(
      testing::warm_tables(in.tackle, in.settings.preferences, in.judgement));
  return in;
}

const PlannedStretch& named(const DayPlan& plan, const PlannedStretch& like) {
  return *std::ranges::find_if(plan.stretches,
                               [&](const PlannedStretch& one) { return one.from == like.from && one.to == like.to; });
}

TEST(Compared, NameTheStretchThatIsBestWithAllWorkedOut) {
  for (const double flow : {2400.0}) {
    DayInputs in = day_with_tables(flow);
    const DayPlan on_tables = plan_day(in);
    in.tables = nullptr;
    const DayPlan worked_out = plan_day(in);
    ASSERT_EQ(on_tables.stretches.size(), 3u);
    const PlannedStretch& best = on_tables.stretches.front();
    EXPECT_GE(named(worked_out, best).worth, 0.99 * worked_out.stretches.front().worth) << flow;
    for (const PlannedStretch& one : on_tables.stretches)
      EXPECT_NEAR(one.worth, named(worked_out, one).worth, 0.03 * best.worth) << flow << " " << one.from << one.to;
  }
}

// Floating point adds up alike whoever does it.
TEST(Compared, GiveTheSameDayInAnyNumberOfThreads) {
  const DayInputs in = day_with_tables(1800.0);
  const DayPlan alone = plan_day(in);
  for (const std::size_t threads : {2u, 7u}) {
    const DayPlan together = plan_day(in, [&](std::size_t count, const std::function<void(std::size_t)>& work) {
      std::vector<std::jthread> all;
      for (std::size_t one = 0; one < threads; ++one)
        all.emplace_back([&, one] {
          for (std::size_t i = one; i < count; i += threads) work(i);
        });
    });
    ASSERT_EQ(alone.stretches.size(), together.stretches.size());
    for (std::size_t s = 0; s < alone.stretches.size(); ++s) {
      const PlannedStretch &a = alone.stretches[s], &b = together.stretches[s];
      EXPECT_EQ(a.from + a.to, b.from + b.to);
      EXPECT_EQ(a.worth, b.worth);
      for (std::size_t r = 0; r < a.reaches.size(); ++r) {
        for (std::size_t w = 0; w < a.reaches[r].waters.size(); ++w) {
          const WaterChoice &x = a.reaches[r].waters[w].choice, &y = b.reaches[r].waters[w].choice;
          ASSERT_EQ(x.best.has_value(), y.best.has_value());
          if (!x.best) continue;
          EXPECT_EQ(x.best->rig, y.best->rig);
          EXPECT_EQ(x.best->seconds, y.best->seconds);
          EXPECT_EQ(x.best->fly_depth.best, y.best->fly_depth.best);
          EXPECT_EQ(x.holds.from, y.holds.from);
          EXPECT_EQ(x.holds.to, y.holds.to);
        }
      }
    }
  }
}

}  // namespace
}  // namespace floatwright
