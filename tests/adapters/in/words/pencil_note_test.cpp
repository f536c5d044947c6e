// Pencil notes as they come off a sheet, and what is said of those that can't be read.
#include "adapters/in/words/pencil_note.hpp"

#include <gmock/gmock.h>

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;

PencilNote noted(const std::string& line, bool metric = false) {
  const auto note = pencil_note(line, metric);
  EXPECT_TRUE(note.has_value()) << line << ": " << (note ? "" : note.error().what);
  return note.value_or(PencilNote{});
}

TEST(PencilNote, IsReadInTheWordsOfTheRow) {
  const PencilNote note = noted("Mill run bank  hour 10:10  depth 3 1/2 ft  bottom N  rod six  water 52 F");
  EXPECT_EQ(note.where, "Mill run bank");
  EXPECT_EQ(note.hour, minutes(610));
  EXPECT_NEAR(in_feet(*note.depth), 3.5, 1e-12);
  EXPECT_EQ(note.bottom, false);
  EXPECT_EQ(note.rod, "six");
  EXPECT_NEAR(in_fahrenheit(*note.temperature), 52.0, 1e-9);
  EXPECT_FALSE(note.by_count || note.fly || note.count || note.trip);
}

TEST(PencilNote, TakesABareNumberInTheUnitOfTheSheet) {
  EXPECT_NEAR(in_feet(*noted("hour 9:05 where bend depth 3").depth), 3.0, 1e-12);
  EXPECT_NEAR(in_metres(*noted("hour 9:05 where bend depth 0.9", true).depth), 0.9, 1e-12);
  EXPECT_NEAR(in_celsius(*noted("bend hour 9:05 water 11", true).temperature), 11.0, 1e-9);
}

// The row as it is printed, its boxes filled or left empty.
TEST(PencilNote, TakesTheRowItselfWithItsUnitsBeforeTheBoxes) {
  const PencilNote note = noted("where Mill run ____  hour 10:10  depth ft 3 1/2  bottom Y/N ____  rod ____  water F 52");
  EXPECT_EQ(note.where, "Mill run");
  EXPECT_NEAR(in_feet(*note.depth), 3.5, 1e-12);
  EXPECT_NEAR(in_fahrenheit(*note.temperature), 52.0, 1e-9);
  EXPECT_FALSE(note.bottom.has_value());
  EXPECT_FALSE(noted("bend hour 10:10 depth ft ____ water F").depth.has_value());
  EXPECT_NEAR(in_feet_per_second(*noted("bend hour 10:10 surface speed ft/s 2.5").surface_speed), 2.5, 1e-12);
}

TEST(PencilNote, KnowsADepthThatWasCountedDown) {
  const PencilNote depth = noted("bend hour 10:10 depth 6 ft by count");
  EXPECT_TRUE(depth.by_count);
  EXPECT_NEAR(in_feet(*depth.depth), 6.0, 1e-12);
  const PencilNote count = noted("Long pool hour 10:10 count 14 rod seven bottom yes");
  EXPECT_EQ(count.count, seconds(14));
  EXPECT_EQ(count.bottom, true);
}

TEST(PencilNote, IsAFloatWithItsHoursAndItsStops) {
  const FloatNote trip = *noted("put-in Mill Bridge 07:30 take-out Old Ferry 14:40 stopped 2 1/2 h boat green").trip;
  EXPECT_EQ(trip.from, "Mill Bridge");
  EXPECT_EQ(trip.to, "Old Ferry");
  EXPECT_EQ(trip.put_in, hours(7.5));
  EXPECT_EQ(trip.stopped, hours(2.5));
  EXPECT_EQ(trip.boat, "green");
  EXPECT_EQ(noted("put-in a 7:00 take-out b 8:00 stopped 90 min").trip->stopped, minutes(90));
  EXPECT_FALSE(noted("put-in a 7:00 take-out b 8:00").trip->stopped.has_value());
}

TEST(PencilNote, SaysWhatCanNotBeReadAndHowToWriteIt) {
  const auto why = [](const std::string& line) {
    const auto note = pencil_note(line, false);
    return note ? "" : note.error().what;
  };
  EXPECT_THAT(why("hour 10:10 depth 3 ft"), HasSubstr("no place"));
  EXPECT_THAT(why("bend depth 3 ft"), HasSubstr("no hour: write it as \"hour 10:10\""));
  EXPECT_THAT(why("bend hour 25:10"), HasSubstr("found \"25:10\""));
  EXPECT_THAT(why("bend hour noon"), HasSubstr("found \"noon\""));
  EXPECT_THAT(why("bend hour 10:10 depth 300 ft"), HasSubstr("depth: found \"300 ft\"; give 0.164 to 197 ft"));
  EXPECT_THAT(why("bend hour 10:10 depth -3 ft"), HasSubstr("depth"));
  EXPECT_THAT(why("bend hour 10:10 depth 3 furlongs"), HasSubstr("unit"));
  EXPECT_THAT(why("bend hour 10:10 depth 3 ft depth 4 ft"), HasSubstr("depth"));
  EXPECT_THAT(why("bend hour 10:10 bottom maybe"), HasSubstr("write Y if the fly touched it, else N"));
  EXPECT_THAT(why("bend hour 10:10 water 520 F"), HasSubstr("water"));
  EXPECT_THAT(why("put-in Mill Bridge 07:30"), HasSubstr("take-out"));
  EXPECT_THAT(why("put-in Mill Bridge 07:30 take-out Old Ferry 07:10"), HasSubstr("not after the put-in"));
  EXPECT_THAT(why("put-in a 7:00 take-out b 8:00 stopped a while"), HasSubstr("stopped"));
  EXPECT_THAT(why("bend \x1b[31m hour 10:10"), HasSubstr("control characters"));
}

TEST(DayAlone, IsADateAsPeopleAndSheetsWriteIt) {
  const std::chrono::year_month_day day{std::chrono::year{2027} / 5 / 14};
  for (const char* line : {"2027-05-14", "14 May 2027", "Fri 14 May 2027", "FRI 14 MAY 2027"}) EXPECT_EQ(day_alone(line), day) << line;
  for (const char* line : {"2027-02-30", "14 Mai", "Mill run hour 10:10", "2027-5-14", ""}) EXPECT_FALSE(day_alone(line)) << line;
}

}  // namespace
}  // namespace floatwright::testing
