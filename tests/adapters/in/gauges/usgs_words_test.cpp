#include "adapters/in/gauges/usgs_words.hpp"

#include <gmock/gmock.h>

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

double si(Variable variable, const char* unit, double value) {
  const auto line = unit_line(variable, unit);
  EXPECT_TRUE(line) << unit;
  return line ? line->offset + line->factor * value : -1.0;
}

// The cubic foot is 0.3048 m cubed, exactly (international foot, NIST SP 811 Appendix B).
TEST(UnitSpelling, OfFlowIsReadHoweverItIsWritten) {
  constexpr double kCubicFoot = 0.3048 * 0.3048 * 0.3048;
  for (const char* unit : {"ft3/s", "ft^3/s", "cfs", "CFS", "ft\u00b3/s", " ft3/s\n"})
    EXPECT_NEAR(si(Variable::Flow, unit, 1000.0), 1000.0 * kCubicFoot, 1e-9) << unit;
  for (const char* unit : {"m3/s", "m^3/s", "m\u00b3/s"}) EXPECT_DOUBLE_EQ(si(Variable::Flow, unit, 7.0), 7.0) << unit;
  EXPECT_NEAR(si(Variable::Flow, "kcfs", 1.0), 1000.0 * kCubicFoot, 1e-9);
}

TEST(UnitSpelling, OfStageAndTemperatureToo) {
  EXPECT_DOUBLE_EQ(si(Variable::GaugeHeight, "ft", 10.0), 3.048);
  EXPECT_DOUBLE_EQ(si(Variable::GaugeHeight, "m", 3.0), 3.0);
  for (const char* unit : {"deg C", "degC",
                           "\u00b0"
                           "C"})
    EXPECT_DOUBLE_EQ(si(Variable::WaterTemperature, unit, 11.7), 11.7) << unit;
  EXPECT_NEAR(si(Variable::WaterTemperature, "deg F", 50.0), 10.0, 1e-12);
  EXPECT_DOUBLE_EQ(si(Variable::Clarity, "FNU", 4.0), 4.0);
}

TEST(UnitSpelling, IsNoneForAnotherVariablesUnit) {
  EXPECT_FALSE(unit_line(Variable::Flow, "ft"));
  EXPECT_FALSE(unit_line(Variable::Flow, ""));
  EXPECT_FALSE(unit_line(Variable::WaterTemperature, "ft3/s"));
}

TEST(Qualifiers, AreSplitHoweverTheyAreWritten) {
  EXPECT_THAT(codes_in("P Eqp"), ElementsAre("P", "Eqp"));
  EXPECT_THAT(codes_in("A:e"), ElementsAre("A", "e"));
  EXPECT_THAT(codes_in("['ESTIMATED']"), ElementsAre("ESTIMATED"));
  EXPECT_THAT(codes_in(" "), IsEmpty());
}

TEST(Qualifiers, ThatAreNotKnownAreKeptAsADoubt) {
  Marks marks;
  std::set<std::string> unknown;
  add_marks("A GHNOTASSCPKQ", marks, unknown);
  EXPECT_EQ(marks, (Marks{Mark::Approved, Mark::Unknown}));
  EXPECT_THAT(unknown, ElementsAre("GHNOTASSCPKQ"));
}

TEST(Station, KeepsTheNumberAndAnotherAgencysName) {
  EXPECT_EQ(station_key("USGS", "01541000"), "usgs:01541000");
  EXPECT_EQ(station_key("MN040", "05427718"), "usgs:MN040-05427718");
  EXPECT_EQ(monitoring_location("01541000"), "USGS-01541000");
  EXPECT_EQ(monitoring_location("MN040-05427718"), "MN040-05427718");
}

}  // namespace
}  // namespace floatwright
