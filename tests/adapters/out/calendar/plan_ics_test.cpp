// The calendar file, read back by the package python3-icalendar, and held to what RFC 5545 asks of its bytes.
#include "adapters/out/calendar/plan_ics.hpp"

#include <gmock/gmock.h>

#include <sstream>

#include "tests/support/read_back.hpp"
#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

using std::chrono::minutes;
using ::testing::ContainsRegex;
using ::testing::HasSubstr;
using ::testing::Not;

constexpr const char* kReader =
    "import sys, icalendar\n"
    "calendar = icalendar.Calendar.from_ical(open(sys.argv[1], 'rb').read())\n"
    "for part in calendar.walk():\n"
    "  print(part.name)\n"
    "  for key, value in part.property_items(recursive=False):\n"
    "    if key in ('BEGIN', 'END'): continue\n"
    "    shown = value.dt.isoformat() if hasattr(value, 'dt') and hasattr(value.dt, 'isoformat') else None\n"
    "    shown = shown or (str(value.dt) if hasattr(value, 'dt') else None)\n"
    "    shown = shown or (f'{value.latitude} {value.longitude}' if key == 'GEO' else str(value))\n"
    "    print(f'{key}={shown}')\n";

std::string read_calendar(const std::string& document) { return read_back(kReader, document); }
std::string sample() { return plan_ics(sample_plan(), sample_inputs()); }

std::string value_of(const std::string& read, const std::string& key) {
  const auto at = read.find("\n" + key + "=");
  if (at == std::string::npos) return "no " + key;
  const auto begin = at + key.size() + 2;
  return read.substr(begin, read.find('\n', begin) - begin);
}

TEST(CalendarEntry, RunsFromLaunchToOffTheWaterInUtc) {
  const auto read = read_calendar(sample());
  EXPECT_EQ(value_of(read, "DTSTART"), "2027-05-14T13:30:00+00:00") << "07:30 in Denver's summer";
  EXPECT_EQ(value_of(read, "DTEND"), "2027-05-14T22:00:00+00:00") << "16:00";
  EXPECT_EQ(value_of(read, "DTSTAMP"), "2027-05-14T02:20:00+00:00") << "when the plan was made";
  EXPECT_EQ(value_of(read, "SUMMARY"), "Lantern River: Mill Bridge -> Old Ferry");
  EXPECT_EQ(value_of(read, "LOCATION"), "Mill Bridge (mile 40.2) to Old Ferry (mile 28.6)");
  EXPECT_EQ(value_of(read, "STATUS"), "CONFIRMED");
  EXPECT_EQ(value_of(read, "VERSION"), "2.0");
}

TEST(CalendarEntry, TellsWhatToRigWhatToWatchAndWhatIsLeftAshore) {
  DayInputs in = sample_inputs();
  in.settings.phone = "555-0142";
  in.settings.boat = "drift boat, green";
  in.settings.ashore_contact = "Marten";
  in.settings.ashore_phone = "555-0199";
  const auto read = read_calendar(plan_ics(sample_plan(), in));
  EXPECT_THAT(read, HasSubstr("\nA (square): 9 ft 6-wt  sinking tip 12 1/2 ft 5 in/s; leader"));
  EXPECT_THAT(read, HasSubstr("STOP ABOVE. PORTAGE RIGHT. 40 min\n"));
  EXPECT_THAT(read, HasSubstr("life jackets ON"));
  EXPECT_THAT(read, HasSubstr("drift boat, green"));
  EXPECT_THAT(read, HasSubstr("555-0142"));
  EXPECT_THAT(read, ContainsRegex("\nIf not heard by [0-9:]+[^\n]*: call "));
  EXPECT_THAT(read, HasSubstr("The law, the agency and a licensed guide on the water decide."));
  EXPECT_THAT(read, HasSubstr("Call 112 or 911. No signal between mile 37 and mile 31."));
}

TEST(CalendarEntry, NamesThePutInOnTheMapWhereItIsKnown) {
  DayInputs in = sample_inputs();
  EXPECT_EQ(value_of(read_calendar(plan_ics(sample_plan(), in)), "GEO"), "no GEO");
  in.river.accesses = {{"mill", "Mill Bridge", "ramp", river_mile(40.2), GeoPoint{45.163, -111.251}, {}}};
  EXPECT_EQ(value_of(read_calendar(plan_ics(sample_plan(), in)), "GEO"), "45.163 -111.251");
}

TEST(CalendarEntry, SpeaksUpBeforeAPortageWhenAReleaseComesAndWhenFishingMustStop) {
  DayPlan plan = sample_plan();
  plan.stretches[0].stop_by = on_the_day(13, 30);
  const auto read = read_calendar(plan_ics(plan, sample_inputs()));
  // Counted from the launch at 07:30.
  EXPECT_THAT(read, ContainsRegex("\nDESCRIPTION=Alder Bar, 12:40 [(]12:00-13:30[)]: [^\n]*\nTRIGGER=4:34:00\n"))
      << "the release may come at 12:04";
  EXPECT_THAT(read, ContainsRegex("\nDESCRIPTION=13:30 NO FISHING [^\n]*\nTRIGGER=6:00:00\n"));
  EXPECT_THAT(read, ContainsRegex("\nDESCRIPTION=14:30 The Ledge: STOP ABOVE[^\n]*\nTRIGGER=6:45:00\n")) << "15 min before";
  EXPECT_THAT(read, ContainsRegex("\nDESCRIPTION=16:00 OFF THE WATER\nTRIGGER=8:30:00\n"));
}

TEST(CalendarEntry, IsSilentAboutAReleaseThatComesWhenTheBoatIsOut) {
  DayPlan plan = sample_plan();
  for (Caution& caution : plan.stretches[0].cautions) {
    if (caution.kind == CautionKind::DamRise) caution.from = on_the_day(16, 1);
  }
  EXPECT_THAT(read_calendar(plan_ics(plan, sample_inputs())), Not(ContainsRegex("\nDESCRIPTION=Alder Bar")));
}

TEST(CalendarEntry, StandsBesideTheFloatOfTheDayWhenItIsForASpot) {
  DayInputs in = sample_inputs();
  Spot bend;
  bend.id = "bend";
  in.river.spots = {bend};
  const auto of_the_float = value_of(read_calendar(plan_ics(sample_plan(), in)), "UID");
  in.spot = 0;
  EXPECT_NE(value_of(read_calendar(plan_ics(sample_plan(), in)), "UID"), of_the_float);
}

TEST(CalendarEntry, IsReplacedByALaterPlanForAnotherStretch) {
  DayPlan later = sample_plan();
  later.made_at += minutes{1};
  later.stretches.erase(later.stretches.begin());
  const auto first = read_calendar(sample()), second = read_calendar(plan_ics(later, sample_inputs()));
  ASSERT_NE(value_of(first, "LOCATION"), value_of(second, "LOCATION"));
  EXPECT_EQ(value_of(first, "UID"), value_of(second, "UID"));
  EXPECT_EQ(std::stol(value_of(second, "SEQUENCE")) - std::stol(value_of(first, "SEQUENCE")), 1);
}

TEST(CalendarEntry, StandsBesideThoseOfOtherDaysRiversAndBoats) {
  const auto uid = value_of(read_calendar(sample()), "UID");
  DayPlan tomorrow = sample_plan();
  tomorrow.day = std::chrono::year_month_day{std::chrono::year{2027}, std::chrono::May, std::chrono::day{15}};
  EXPECT_NE(value_of(read_calendar(plan_ics(tomorrow, sample_inputs())), "UID"), uid);
  DayInputs other = sample_inputs();
  other.river.name = "Heron Creek";
  EXPECT_NE(value_of(read_calendar(plan_ics(sample_plan(), other)), "UID"), uid);
  other = sample_inputs();
  other.settings.boat = "the second boat";
  EXPECT_NE(value_of(read_calendar(plan_ics(sample_plan(), other)), "UID"), uid);
}

TEST(CalendarEntry, HasASequenceOf31BitsAtAnyTime) {
  for (const auto at : {Instant{} - minutes{5}, Instant{} + std::chrono::hours{24 * 365 * 5000}}) {
    DayPlan plan = sample_plan();
    plan.made_at = at;
    const auto ics = plan_ics(plan, sample_inputs());
    const auto sequence = std::stoll(ics.substr(ics.find("SEQUENCE:") + 9));
    EXPECT_GE(sequence, 0);
    EXPECT_LE(sequence, 2147483647);
  }
}

TEST(CalendarEntry, SaysThatThereIsNoPlanAndTakesTheOldOnesPlace) {
  DayPlan plan = sample_plan();
  plan.nothing = true;
  plan.stretches.clear();
  const auto read = read_calendar(plan_ics(plan, sample_inputs()));
  EXPECT_EQ(value_of(read, "UID"), value_of(read_calendar(sample()), "UID"));
  EXPECT_EQ(value_of(read, "SUMMARY"), "NO PLAN: Lantern River");
  EXPECT_EQ(value_of(read, "DTSTART"), "2027-05-14") << "the whole day";
  EXPECT_EQ(value_of(read, "TRANSP"), "TRANSPARENT");
  EXPECT_THAT(read, HasSubstr("o gauge gave a reading"));
  EXPECT_THAT(read, Not(HasSubstr("VALARM")));
}

TEST(CalendarEntry, OfOldReadingsIsTentativeAndSaysSoFirst) {
  DayPlan plan = sample_plan();
  plan.stale = true;
  const auto read = read_calendar(plan_ics(plan, sample_inputs()));
  EXPECT_EQ(value_of(read, "STATUS"), "TENTATIVE");
  EXPECT_THAT(value_of(read, "SUMMARY"), ::testing::StartsWith("OLD READINGS: "));
}

// RFC 5545, 3.1: lines end in CRLF and are at most 75 octets long without it; a sign is never cut in two.
TEST(CalendarEntry, FoldsLongLinesBetweenSigns) {
  DayInputs in = sample_inputs();
  DayPlan plan = sample_plan();
  for (int i = 0; i < 40; ++i) plan.stretches[0].from_name += "Mühlenbrücke 水车桥 🛶 ";
  const auto ics = plan_ics(plan, in);
  std::istringstream lines{ics};
  for (std::string line; std::getline(lines, line);) {
    ASSERT_TRUE(line.ends_with('\r')) << line;
    line.pop_back();
    EXPECT_LE(line.size(), 75U) << line;
    EXPECT_EQ(line.find('\r'), std::string::npos);
    const auto first = static_cast<unsigned char>(line.size() > 1 && line[0] == ' ' ? line[1] : line[0]);
    EXPECT_NE(first & 0xC0U, 0x80U) << "a sign of UTF-8 was cut in two: " << line;
  }
  EXPECT_THAT(value_of(read_calendar(ics), "SUMMARY"), HasSubstr("Mühlenbrücke 水车桥 🛶 Mühlenbrücke"));
}

TEST(CalendarEntry, LetsNoNameOrNoteBecomeALineOfItsOwn) {
  DayInputs in = sample_inputs();
  DayPlan plan = sample_plan();
  plan.stretches[0].from_name = "Mill\r\nATTENDEE:mailto:x@example.org\r\nBridge; this, that";
  in.settings.emergency = "one\nEND:VEVENT\xFF a\\b";
  const auto ics = plan_ics(plan, in);
  EXPECT_THAT(ics, Not(HasSubstr("\nATTENDEE")));
  EXPECT_THAT(ics, HasSubstr("a\\\\b")) << "a backslash is doubled; the reader below loses one beside a comma";
  const auto read = read_calendar(ics);
  EXPECT_EQ(value_of(read, "SUMMARY"), "Lantern River: Mill ATTENDEE:mailto:x@example.org Bridge; this, that -> Old Ferry");
  EXPECT_THAT(read, HasSubstr("one END:VEVENT?"));
}

}  // namespace
}  // namespace floatwright::testing
