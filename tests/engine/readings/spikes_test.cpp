#include "engine/readings/spikes.hpp"

#include <gmock/gmock.h>

#include <cmath>

#include "tests/engine/readings/rows.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(Spikes, FindOneReadingThatStandsOut) {
  const auto series = flow_series("a", {10, 10.1, 10, 10.2, 10.1, 55, 10.1, 10, 10.1, 10, 10.2});
  EXPECT_THAT(spikes(series.readings, Variable::Flow), ElementsAre(5));
}

TEST(Spikes, LeaveAFlatRecordWithRoundingAlone) {
  const auto series = flow_series("a", {50, 50, 50, 50, 50.5, 50, 50, 50, 50, 50});
  EXPECT_THAT(spikes(series.readings, Variable::Flow), IsEmpty());
}

TEST(Spikes, TakeTwoHighReadingsInARowForAPulse) {
  const auto series = flow_series("a", {10, 10, 10, 10, 10, 30, 31, 10, 10, 10, 10});
  EXPECT_THAT(spikes(series.readings, Variable::Flow), IsEmpty());
}

TEST(Spikes, LeaveASteepRiseAlone) {
  std::vector<double> rise;
  for (int i = 0; i < 40; ++i) rise.push_back(10.0 * std::pow(1.08, i));
  EXPECT_THAT(spikes(flow_series("a", rise).readings, Variable::Flow), IsEmpty());
}

TEST(Spikes, LookOnlyAtRowsNearInTime) {
  auto series = flow_series("a", {10, 10, 10, 10, 10, 10});
  series.readings.push_back({kNoon + std::chrono::hours{9}, 60.0, {}});
  EXPECT_THAT(spikes(series.readings, Variable::Flow), IsEmpty());
}

TEST(Spikes, SeeTheLastReadingJump) {
  const auto series = flow_series("a", {10, 10, 10, 10, 10, 10, 10, 60});
  EXPECT_THAT(spikes(series.readings, Variable::Flow), ElementsAre(7));
}

}  // namespace
}  // namespace floatwright
