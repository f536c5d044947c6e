#include "adapters/in/calendar/instants_in_order.hpp"

#include <gmock/gmock.h>

namespace floatwright {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::sys_days;
using std::chrono::year;

// RFC 3339 section 5.8: 1996-12-19T16:39:57-08:00 is 1996-12-20T00:39:57Z.
TEST(InstantInText, ReadsTheInstantOfRfc3339) {
  const Instant expected = sys_days{year{1996} / 12 / 20} + minutes{39} + std::chrono::seconds{57};
  EXPECT_EQ(instant_in("1996-12-19T16:39:57-08:00"), expected);
  EXPECT_EQ(instant_in("1996-12-20T00:39:57Z"), expected);
  EXPECT_EQ(instant_in("1937-01-01T12:00+00:20"), Instant{sys_days{year{1937} / 1 / 1} + hours{11} + minutes{40}});
}

TEST(InstantInText, RefusesInstantsWithoutOffsetOrOffTheCalendar) {
  for (const char* wrong :
       {"2027-05-14T09:00", "2027-05-14", "2027-02-29T09:00Z", "2027-13-01T09:00Z", "2027-05-14T24:00Z",
        "2027-05-14T09:60Z", "2027-05-14 09:00Z", "2027-05-14T09:00-6", "2027-05-14T09:00-06:00x", "T09:00Z", "",
        "2027-05-14T", "2027-05-14TZ", "2027-05-14T09:00+99:00"}) {
    EXPECT_FALSE(instant_in(wrong)) << wrong;
  }
}

TEST(InstantInText, UsesTheOffsetThatStandsOnTheRow) {
  const Instant expected = sys_days{year{2018} / 11 / 4} + hours{5} + minutes{45};
  for (const char* text : {"2018-11-04T01:45:00.000-04:00", "2018-11-04T00:45:00.000-05:00", "2018-11-04T05:45:00Z",
                           "2018-11-04T05:45Z", "2018-11-04T05:45:00+00:00", "2018-11-04T11:15:00+0530"})
    EXPECT_EQ(instant_in(text), expected) << text;
}

TEST(InstantInText, IsNoneWithoutAnOffset) {
  EXPECT_FALSE(instant_in("2018-11-04T01:45:00.000"));
  EXPECT_FALSE(instant_in("2018-11-04"));
}

TEST(InstantInText, IsNoneForDatesAndHoursThatCannotBe) {
  for (const char* text :
       {"2018-02-29T00:00:00Z", "1881-00-00T00:00:00Z", "2018-13-01T00:00:00Z", "2018-11-04T24:00:00Z",
        "2018-11-04T01:60:00Z", "2018-11-04T01:00:00+15:00", "0001-01-01T00:00:00Z", "1799-12-31T00:00:00Z",
        "2201-01-01T00:00:00Z", "99999-01-01T00:00:00Z", "2018-11-04T01:00:00Zx", "2018-11-04 01:00:00Z", "", "T",
        "2018-11-4T01:00:00Z", "2018-11-04T01:00:00.Z"})
    EXPECT_FALSE(instant_in(text)) << text;
}

TEST(DateLabel, IsTheDateAtMidnightUtcWhateverItsZone) {
  const Instant expected = sys_days{year{2017} / 4 / 23};
  for (const char* text : {"2017-04-23", "2017-04-23T00:00:00.000", "2017-04-23T00:00:00.000-05:00"})
    EXPECT_EQ(date_label_in(text), expected) << text;
}

TEST(DateLabel, IsNoneForAnHourOfTheDay) {
  EXPECT_FALSE(date_label_in("2017-04-23T00:15:00.000"));
  EXPECT_FALSE(date_label_in("2017-02-30"));
  EXPECT_FALSE(date_label_in("2017-04-23x"));
}

// Against instant_in() itself, over a day, its end, another zone, other seconds and what can't be read.
TEST(InstantsInOrder, AreThoseOfEachTextByItself) {
  InstantsInOrder instants;
  for (const char* text :
       {"2018-11-03T23:30:00.000-04:00", "2018-11-03T23:45:00.000-04:00", "2018-11-04T00:00:00.000-04:00",
        "2018-11-04T01:45:00.000-04:00", "2018-11-04T01:00:00.000-05:00", "2018-11-04T01:15:00.000-05:00",
        "2018-11-04T01:15:30.000-05:00", "2018-11-04T01:16:30.000-05:00", "2018-11-04T24:16:30.000-05:00",
        "2018-11-04T01:60:30.000-05:00", "2018-11-04T0a:16:30.000-05:00", "2018-11-04T01:17:30.000-05:00", "2018-11-04T01:18Z",
        "2018-11-04T01:19Z", "2018-11-04", "", "2018-11-04T01:20:00", "2018-11-04T01:21:00"})
    EXPECT_EQ(instants.next(text), instant_in(text)) << text;
}

}  // namespace
}  // namespace floatwright
