#include <gtest/gtest.h>

#include "engine/units/instant.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

using std::chrono::hours;
using std::chrono::minutes;

const Instant kStart = std::chrono::sys_days{std::chrono::year{2027} / 5 / 13};
const TimeGrid kGrid{kStart, minutes{15}, 9};

TEST(TimeGrid, StepsFromItsStart) {
  EXPECT_EQ(kGrid.at(4), kStart + hours{1});
  EXPECT_EQ(kGrid.last(), kStart + hours{2});
}

TEST(TimeGrid, FindsTheStepBeforeAnInstant) {
  EXPECT_EQ(kGrid.index_before(kStart + minutes{29}), 1u);
  EXPECT_EQ(kGrid.index_before(kStart + minutes{30}), 2u);
}

TEST(TimeGrid, HoldsToItsEnds) {
  EXPECT_EQ(kGrid.index_before(kStart - hours{5}), 0u);
  EXPECT_EQ(kGrid.index_before(kStart + hours{50}), 8u);
  EXPECT_EQ(TimeGrid{}.index_before(kStart), 0u);
}

TEST(Period, IsTheNearestWholeSecond) {
  EXPECT_EQ(period(seconds(1.6)), std::chrono::seconds{2});
  EXPECT_EQ(period(seconds(-1.6)), std::chrono::seconds{-2});
  EXPECT_EQ(in_seconds(duration(hours{2})), 7200.0);
}

}  // namespace
}  // namespace floatwright
