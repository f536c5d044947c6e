#include "adapters/out/figure/line_picture.hpp"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

#include "adapters/out/figure/day_drawings.hpp"
#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;

// A line that leaves the surface at 45 degrees and hangs straight down for its last metre.
DayPlan plan_with_a_line(double water = 2.5) {
  DayPlan plan = sample_plan();
  LineOverBed line;
  line.rig = *plan.stretches[0].reaches[0].waters[0].choice.best;
  line.water = metres(water);
  line.zone_depth = metres(0.6 * water);
  line.shape.points = {{metres(0), metres(0)}, {metres(1), metres(1)}, {metres(1), metres(2)}};
  line.shape.on_top = metres(8.0);
  plan.stretches[0].line = LineOfTheDay{0, 0, line};
  return plan;
}

Drawing drawn(const DayPlan& plan, double width = 552.0) { return day_drawings(plan, sample_inputs(), width).at("line"); }

std::vector<std::string> words_of(const Drawing& drawing) {
  std::vector<std::string> said;
  for (const Drawn& mark : drawing.marks)
    if (const auto* words = std::get_if<Words>(&mark)) said.push_back(words->text);
  return said;
}

// The one stroke of three points is the line.
const Stroke& line_in(const Drawing& drawing) {
  for (const Drawn& mark : drawing.marks)
    if (const auto* stroke = std::get_if<Stroke>(&mark); stroke != nullptr && stroke->points.size() == 3) return *stroke;
  throw std::runtime_error("no line is drawn");
}

TEST(LinePicture, KeepsItsSlopes) {
  for (const double width : {240.0, 340.0, 552.0}) {
    const Drawing drawing = drawn(plan_with_a_line(), width);
    const auto& p = line_in(drawing).points;
    EXPECT_NEAR(p[1].x - p[0].x, p[1].y - p[0].y, 1e-9) << width;  // 45 degrees
    EXPECT_NEAR(p[2].x, p[1].x, 1e-9);
    EXPECT_NEAR(p[2].y - p[1].y, p[1].y - p[0].y, 1e-9);  // a metre is a metre
  }
}

TEST(LinePicture, StaysOnItsPaper) {
  for (const double width : {240.0, 340.0, 552.0})
    for (const double water : {0.3, 2.5, 12.0}) {
      const Drawing drawing = drawn(plan_with_a_line(water), width);
      for (const Drawn& mark : drawing.marks) {
        const auto* stroke = std::get_if<Stroke>(&mark);
        if (stroke == nullptr) continue;
        for (const DrawnPoint p : stroke->points) {
          EXPECT_GE(std::min(p.x, p.y), 0.0) << width << " " << water;
          EXPECT_LE(p.x, drawing.width) << width << " " << water;
          EXPECT_LE(p.y, drawing.height) << width << " " << water;
        }
      }
    }
}

TEST(LinePicture, WritesTheDepthsAndTheRod) {
  const auto said = words_of(drawn(plan_with_a_line()));
  EXPECT_THAT(said, Contains("fly 6 1/2 ft"));  // 2 m is 6.56 ft
  EXPECT_THAT(said, Contains("bed 8 ft"));      // 2.5 m is 8.2 ft
  EXPECT_THAT(said, Contains(HasSubstr("Rod A at Mill run (run)")));
}

// A fly that the solver would hang under the bed lies on it.
TEST(LinePicture, LaysNothingUnderTheBed) {
  const Drawing drawing = drawn(plan_with_a_line(1.2));
  EXPECT_THAT(words_of(drawing), Contains("fly 4 ft"));
  const auto& p = line_in(drawing).points;
  EXPECT_NEAR((p[2].y - p[0].y) / (p[1].y - p[0].y), 1.2, 1e-9);
}

TEST(LinePicture, OfNoLineIsNotDrawn) {
  DayPlan plan = sample_plan();
  plan.stretches[0].line.reset();
  EXPECT_EQ(day_drawings(plan, sample_inputs(), 552.0).count("line"), 0u);
  DayPlan cut_short = sample_plan();
  cut_short.stretches[0].reaches.clear();
  EXPECT_EQ(day_drawings(cut_short, sample_inputs(), 552.0).count("line"), 0u);
}

}  // namespace
}  // namespace floatwright::testing
