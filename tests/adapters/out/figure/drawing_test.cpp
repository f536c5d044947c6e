#include <gmock/gmock.h>

#include <cmath>

#include "adapters/out/figure/hatching.hpp"
#include "adapters/out/figure/svg.hpp"

namespace floatwright {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

const HatchedArea kSquare{{{0, 0}, {100, 0}, {100, 100}, {0, 100}}, 5.0};

TEST(Hatching, StaysInsideItsArea) {
  const auto lines = hatching(kSquare);
  ASSERT_FALSE(lines.empty());
  for (const Stroke& line : lines)
    for (const DrawnPoint p : line.points) {
      EXPECT_GE(std::min(p.x, p.y), -1e-9);
      EXPECT_LE(std::max(p.x, p.y), 100.0 + 1e-9);
    }
}

// The lines x + y = c that meet a square of side 100 have c from 0 to 200, 5 sqrt(2) apart: 200 / 7.07 = 28.3.
TEST(Hatching, KeepsItsSpacing) { EXPECT_NEAR(static_cast<double>(hatching(kSquare).size()), 28.3, 1.0); }

TEST(Hatching, LeavesAHollowOpen) {
  const HatchedArea hollow{{{0, 0}, {100, 0}, {100, 100}, {80, 100}, {80, 20}, {20, 20}, {20, 100}, {0, 100}}, 5.0};
  for (const Stroke& line : hatching(hollow)) {
    const DrawnPoint middle{(line.points[0].x + line.points[1].x) / 2, (line.points[0].y + line.points[1].y) / 2};
    EXPECT_FALSE(middle.x > 20.1 && middle.x < 79.9 && middle.y > 20.1) << middle.x << " " << middle.y;
  }
}

TEST(Hatching, OfNoAreaIsNothing) {
  EXPECT_TRUE(hatching({}).empty());
  EXPECT_TRUE(hatching({{{0, 0}, {10, 10}}, 5.0}).empty());
}

TEST(Svg, KeepsItsWordsAsTextAndEscapesThem) {
  const Drawing drawing{200, 100, {Words{{10, 20}, "Bow & stern <here>", 13.0, TextAnchor::End, false}}};
  const std::string svg = as_svg(drawing, "The \"river\"");
  EXPECT_THAT(svg, HasSubstr("Bow &amp; stern &lt;here&gt;</text>"));
  EXPECT_THAT(svg, HasSubstr("<title>The &quot;river&quot;</title>"));
  EXPECT_THAT(svg, HasSubstr("text-anchor=\"end\""));
}

TEST(Svg, HasNoIdAndNothingFromOutside) {
  const Drawing drawing{200, 100, {kSquare, Stroke{{{0, 0}, {9, 9}}, 1.0, true}}};
  const std::string svg = as_svg(drawing, "");
  EXPECT_THAT(svg, Not(HasSubstr(" id=")));
  EXPECT_THAT(svg, Not(HasSubstr("href")));
  EXPECT_THAT(svg, HasSubstr("stroke-dasharray"));
}

}  // namespace
}  // namespace floatwright
