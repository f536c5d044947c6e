#include "adapters/out/text/line_sketch.hpp"

#include <gmock/gmock.h>

#include "adapters/out/text/width.hpp"

namespace floatwright {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

LineOverBed drawn(double water, double fly, double away, double on_top = 5.0) {
  LineOverBed line;
  line.water = metres(water);
  line.zone_depth = metres(0.6 * water);
  line.shape = {{{metres(0), metres(0)}, {metres(0.5 * away), metres(0.4 * fly)}, {metres(away), metres(fly)}},
                metres(on_top)};
  return line;
}

TEST(LineSketch, FitsATerminalWhateverItsShape) {
  for (const auto& line : {drawn(1.5, 0.9, 5.0), drawn(0.1, 0.1, 12.0), drawn(30.0, 2.0, 3.0), drawn(3.0, 2.9, 0.01),
                           drawn(2.0, 9.0, 4.0, 0.0)}) {
    const auto sketch = line_sketch(line, UnitSystem::Us);
    EXPECT_LE(sketch.size(), 16U);
    for (const std::string& row : sketch) EXPECT_LE(columns(row), 78U) << row;
  }
}

TEST(LineSketch, DrawsSurfaceFlyZoneAndBed) {
  const auto sketch = line_sketch(drawn(1.5, 0.9, 5.0), UnitSystem::Metric);
  ASSERT_GT(sketch.size(), 4U);
  EXPECT_THAT(sketch.front(), HasSubstr("_~"));
  std::string all;
  for (const std::string& row : sketch) all += row + "\n";
  EXPECT_THAT(all, HasSubstr("fly 0.9 m"));
  EXPECT_THAT(all, HasSubstr("=  bed 1.5 m"));
  EXPECT_THAT(all, HasSubstr(":"));
}

// The fly's row over the bed's is its depth over the water's.
TEST(LineSketch, PutsTheFlyAtItsShareOfTheDepth) {
  const auto sketch = line_sketch(drawn(2.0, 1.0, 4.0), UnitSystem::Metric);
  std::size_t fly = 0, bed = 0;
  for (std::size_t r = 0; r < sketch.size(); ++r) {
    if (sketch[r].find("fly 1.0 m") != std::string::npos) fly = r;
    if (sketch[r].find("bed 2.0 m") != std::string::npos) bed = r;
  }
  EXPECT_NEAR(static_cast<double>(fly) / static_cast<double>(bed), 0.5, 0.13) << "a row of eight";
}

TEST(LineSketch, DrawsNothingOfNothing) { EXPECT_THAT(line_sketch({}, UnitSystem::Us), IsEmpty()); }

}  // namespace
}  // namespace floatwright
