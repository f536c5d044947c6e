#include "engine/units/measured.hpp"

#include <gtest/gtest.h>

#include "engine/units/per_case.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

TEST(Measured, HoldsAValue) {
  const Measured<Length> depth = metres(1.2);
  ASSERT_TRUE(depth.has_value());
  EXPECT_EQ(*depth, metres(1.2));
}

TEST(Measured, SaysWhyItHoldsNone) {
  const Measured<Length> depth = Absent{"no gauge on this branch"};
  EXPECT_FALSE(depth);
  EXPECT_EQ(depth.why_absent(), "no gauge on this branch");
}

TEST(Measured, IsNotMeasuredUntilSomeoneDoes) { EXPECT_EQ(Measured<Length>{}.why_absent(), "not measured"); }

TEST(Measured, ToldZeroIsNotMissing) { EXPECT_TRUE(Measured<Length>{Length{}}.has_value()); }

TEST(PerCase, AppliesToEachCaseAlone) {
  const PerCase<Length> depths{metres(1.0), metres(1.5), metres(2.0)};
  const auto doubled = each_case(depths, [](Length d) { return 2.0 * d; });
  EXPECT_EQ(doubled.low, metres(2.0));
  EXPECT_EQ(doubled.middle, metres(3.0));
  EXPECT_EQ(doubled.high, metres(4.0));
}

TEST(PerCase, WeightsAddUpToOne) { EXPECT_DOUBLE_EQ(kCaseWeight.low + kCaseWeight.middle + kCaseWeight.high, 1.0); }

}  // namespace
}  // namespace floatwright
