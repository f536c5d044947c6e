#include "engine/readings/choose_series.hpp"

#include <gmock/gmock.h>

#include "tests/engine/readings/rows.hpp"

namespace floatwright {
namespace {

using testing::HasSubstr;

TEST(ChooseSeries, TakesTheSensorThatStillReports) {
  const std::vector<GaugeSeries> all{flow_series("old", {1, 2, 3, 4, 5, 6}, kNoon - std::chrono::hours{48}),
                                     flow_series("young", {7})};
  const auto choice = choose_series(all, Variable::Flow, "heron", kNoon);
  ASSERT_TRUE(choice);
  EXPECT_EQ(choice->series->series_id, "young");
  EXPECT_EQ(choice->why, "Of 2 sensors of flow at heron, series young was taken: it has the newest usable reading.");
}

TEST(ChooseSeries, TakesTheFullerOfTwoAboutAsNew) {
  const std::vector<GaugeSeries> all{flow_series("a", {1, 2}),
                                     flow_series("b", {1, 2, 3}, kNoon - std::chrono::hours{5})};
  const auto choice = choose_series(all, Variable::Flow, "heron", kNoon);
  ASSERT_TRUE(choice);
  EXPECT_EQ(choice->series->series_id, "b");
  EXPECT_THAT(choice->why, HasSubstr("more usable readings in the last 72 h"));
}

TEST(ChooseSeries, TakesTheSmallerNameOfEquals) {
  const std::vector<GaugeSeries> all{flow_series("b", {1, 2}), flow_series("a", {1, 2})};
  EXPECT_EQ(choose_series(all, Variable::Flow, "heron", kNoon)->series->series_id, "a");
}

TEST(ChooseSeries, CountsOnlyRowsThatCanBeUsed) {
  auto iced = flow_series("a", {1, 2, 3});
  for (Reading& row : iced.readings) row.marks.insert(Mark::Ice);
  const std::vector<GaugeSeries> all{iced, flow_series("b", {1, 2}, kNoon - std::chrono::hours{30})};
  EXPECT_EQ(choose_series(all, Variable::Flow, "heron", kNoon)->series->series_id, "b");
}

TEST(ChooseSeries, IgnoresDailyValuesEmptySeriesAndTheFuture) {
  auto daily = flow_series("d", {1, 2, 3});
  daily.daily = true;
  const std::vector<GaugeSeries> all{daily, flow_series("e", {}), flow_series("f", {1}, kNoon + kQuarter)};
  EXPECT_FALSE(choose_series(all, Variable::Flow, "heron", kNoon));
}

TEST(ChooseSeries, SaysNothingWhereThereIsOneSensor) {
  const std::vector<GaugeSeries> all{flow_series("a", {1})};
  EXPECT_EQ(choose_series(all, Variable::Flow, "heron", kNoon)->why, "");
}

}  // namespace
}  // namespace floatwright
