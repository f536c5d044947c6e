#include "adapters/out/figure/hydrograph.hpp"

#include <gmock/gmock.h>

#include <algorithm>

#include "adapters/out/figure/day_drawings.hpp"
#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::Not;

constexpr double kLeastWords = 9.0;  // points

std::vector<std::string> words_of(const Drawing& drawing) {
  std::vector<std::string> said;
  for (const Drawn& mark : drawing.marks)
    if (const auto* words = std::get_if<Words>(&mark)) said.push_back(words->text);
  return said;
}
template <class Mark>
std::vector<Mark> all(const Drawing& drawing) {
  std::vector<Mark> found;
  for (const Drawn& mark : drawing.marks)
    if (const auto* one = std::get_if<Mark>(&mark)) found.push_back(*one);
  return found;
}

Drawing drawn(const DayPlan& plan, UnitSystem units = UnitSystem::Us, double width = 552.0) {
  DayInputs in = sample_inputs();
  in.settings.units = units;
  return day_drawings(plan, in, width).at("hydrograph");
}

TEST(Hydrograph, StaysOnItsPaperAtEveryWidth) {
  for (const double width : {100.0, 240.0, 340.0, 552.0, 900.0}) {
    const Drawing drawing = drawn(sample_plan(), UnitSystem::Us, width);
    EXPECT_GE(drawing.width, width);
    for (const Stroke& stroke : all<Stroke>(drawing))
      for (const DrawnPoint p : stroke.points) {
        EXPECT_GE(std::min(p.x, p.y), 0.0) << width;
        EXPECT_LE(p.x, drawing.width) << width;
        EXPECT_LE(p.y, drawing.height) << width;
      }
    for (const Words& words : all<Words>(drawing)) EXPECT_GE(words.size, kLeastWords) << words.text;
  }
}

TEST(Hydrograph, NamesPlaceUnitHoursAndDays) {
  const auto said = words_of(drawn(sample_plan()));
  EXPECT_THAT(said, Contains("Flow at Mill Bridge, cfs"));
  EXPECT_THAT(said, Contains("12:00"));
  EXPECT_THAT(said, Contains("Fri 14 May"));
  EXPECT_THAT(said, Contains("afloat 07:30-16:00"));
}

// 1,850 cfs is 52.4 m3/s, with its band 47 to 58: the axis runs through 50.
TEST(Hydrograph, IsInTheUnitsOfTheReader) {
  const auto said = words_of(drawn(sample_plan(), UnitSystem::Metric));
  EXPECT_THAT(said, Contains(HasSubstr("m3/s")));
  EXPECT_THAT(said, Not(Contains(HasSubstr("cfs"))));
  EXPECT_THAT(said, Contains("50.0"));
}

TEST(Hydrograph, HatchesWhatIsExpectedAndNotWhatWasRead) {
  const Drawing drawing = drawn(sample_plan());
  const auto hatched = all<HatchedArea>(drawing);
  ASSERT_EQ(hatched.size(), 1u);
  const auto least = std::min_element(hatched[0].outline.begin(), hatched[0].outline.end(),
                                      [](DrawnPoint a, DrawnPoint b) { return a.x < b.x; });
  // 36 h back and 27 h 40 min on: the readings end at 0.57 of the way.
  EXPECT_NEAR(least->x, 552.0 * 0.57, 30.0);
}

TEST(Hydrograph, MarksTheHoursInWhichADamsChangePassesThePutIn) {
  DayPlan plan = sample_plan();
  EXPECT_THAT(words_of(drawn(plan)), Not(Contains(HasSubstr("from the dam"))));  // the sample's passes elsewhere
  plan.fronts.front().place = plan.stretches.front().from_place;
  EXPECT_THAT(words_of(drawn(plan)), Contains("more from the dam, here 12:00-13:30"));  // 12:04 to 13:27, outwards
}

// A flow that is not known breaks the line; nothing is drawn across the gap.
TEST(Hydrograph, LeavesAGapWhereNothingIsKnown) {
  DayPlan plan = sample_plan();
  const auto longest = [](const Drawing& drawing) {
    double widest = 0.0;
    for (const Stroke& stroke : all<Stroke>(drawing))
      if (stroke.width >= 2.0 && stroke.points.size() > 2 && !stroke.dashed)
        widest = std::max(widest, stroke.points.back().x - stroke.points.front().x);
    return widest;
  };
  const double whole = longest(drawn(plan));
  plan.course[18].flow = Absent{"the gauge was silent"};
  EXPECT_LT(longest(drawn(plan)), 0.6 * whole);
}

TEST(Hydrograph, OfNothingKnownIsNotDrawn) {
  DayPlan plan = sample_plan();
  for (FlowRow& row : plan.course) row.flow = Absent{"no gauge speaks for this reach"};
  EXPECT_EQ(day_drawings(plan, sample_inputs(), 552.0).count("hydrograph"), 0u);
  plan.course.clear();
  EXPECT_EQ(day_drawings(plan, sample_inputs(), 552.0).count("hydrograph"), 0u);
}

// A river that stands still, or has no water at all, still has an axis.
TEST(Hydrograph, OfAFlatOrDryRiverHasAnAxis) {
  DayPlan plan = sample_plan();
  for (const double flow : {0.0, 5.0}) {
    for (FlowRow& row : plan.course) row.flow = Band<Discharge>{cubic_feet_per_second(flow), cubic_feet_per_second(flow), cubic_feet_per_second(flow)};
    for (const Stroke& stroke : all<Stroke>(drawn(plan)))
      for (const DrawnPoint p : stroke.points) EXPECT_TRUE(std::isfinite(p.x) && std::isfinite(p.y));
  }
}

}  // namespace
}  // namespace floatwright::testing
