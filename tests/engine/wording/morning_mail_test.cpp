#include "engine/wording/morning_mail.hpp"

#include <gmock/gmock.h>

#include "engine/wording/cut.hpp"
#include "engine/wording/most_fished.hpp"
#include "engine/wording/since_yesterday.hpp"
#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

using ::testing::EndsWith;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

// The line that a phone shows and that begins with `word`.
std::string line_of(const Page& page, const std::string& word) {
  for (const Block& block : page.blocks)
    if (const auto* lines = std::get_if<Lines>(&block); lines != nullptr && lines->label.empty())
      for (const std::string& line : lines->lines)
        if (line.starts_with(word)) return line;
  return "";
}

std::string subject(const DayPlan& plan, const DayInputs& in) { return morning_mail(plan, in).title; }

std::string first_words(const Page& page) {
  const Block& first = page.blocks.front();
  if (const auto* heading = std::get_if<Heading>(&first)) return heading->left;
  const auto* lines = std::get_if<Lines>(&first);
  return lines == nullptr || lines->lines.empty() ? "" : lines->lines.front();
}

// Readings at 20:00 of both days and hourly between; the plan is made at 20:20.
GaugeRecord two_evenings(double stage_ft, double stage_before_ft, double cfs, double cfs_before) {
  GaugeRecord record;
  record.gauge = "heron";
  const Instant newest = on_the_day(0) - std::chrono::hours{4};
  for (int hour = 24; hour >= 0; --hour) {
    record.stage.times.push_back(newest - std::chrono::hours{hour});
    record.stage.values.push_back(stage_feet(hour == 0 ? stage_ft : stage_before_ft));
    record.discharge.times.push_back(newest - std::chrono::hours{hour});
    record.discharge.values.push_back(cubic_feet_per_second(hour == 0 ? cfs : cfs_before));
  }
  return record;
}

TEST(MailSubject, TellsDayRiverLineFlowAndWater) {
  EXPECT_EQ(subject(sample_plan(), sample_inputs()),
            "Fri 14 May Lantern: 12 1/2 ft tip 5 in/s; 1,850 cfs, 47-52 F, dry from 11:40");
}

TEST(MailSubject, HasTheLineAmongItsFirst40Characters) {
  for (const char* name : {"Lantern River", "South Fork of the Long Meadow Creek", "Kwakiutlikumukwalaxala River"}) {
    DayInputs in = sample_inputs();
    in.river.name = name;
    EXPECT_THAT(subject(sample_plan(), in).substr(0, 40), HasSubstr(": 12 1/2 ft")) << name;
  }
}

TEST(MailSubject, SaysFirstThatReadingsAreOld) {
  DayPlan plan = sample_plan();
  for (NewestReading& reading : plan.readings) reading.time = plan.made_at - std::chrono::hours{14};
  EXPECT_THAT(subject(plan, sample_inputs()), StartsWith("OLD READINGS (14 h): Fri 14 May Lantern: 12 1/2 ft tip"));
  EXPECT_THAT(first_words(morning_mail(plan, sample_inputs())), StartsWith("OLD READINGS (14 h): look at the gauge"));
}

TEST(MailSubject, SaysFirstWhenItGetsTooWarm) {
  DayPlan plan = sample_plan();
  plan.stretches[0].stop_by = on_the_day(13, 34);
  EXPECT_THAT(subject(plan, sample_inputs()), StartsWith("TOO WARM after 13:30: Fri 14 May Lantern: "));
  EXPECT_THAT(first_words(morning_mail(plan, sample_inputs())), StartsWith("TOO WARM after 13:30: stop fishing"));
}

TEST(MailSubject, WithoutAReadingTellsSinceWhen) {
  DayPlan plan = sample_plan();
  plan.nothing = true;
  for (NewestReading& reading : plan.readings) reading.time = on_the_day(12) - std::chrono::days{3};  // a Tuesday
  EXPECT_EQ(subject(plan, sample_inputs()), "NO PLAN: Lantern, gauge silent since Tue");
  for (NewestReading& reading : plan.readings) reading.time = on_the_day(12) - std::chrono::days{11};
  EXPECT_EQ(subject(plan, sample_inputs()), "NO PLAN: Lantern, gauge silent since 3 May");
  plan.readings.clear();
  plan.reading_gauges.clear();
  EXPECT_EQ(subject(plan, sample_inputs()), "NO PLAN: Lantern, no gauge gave a reading");
  EXPECT_THAT(first_words(morning_mail(plan, sample_inputs())), StartsWith("NO PLAN"));
}

TEST(MailSubject, WithoutAStretchTellsWhy) {
  DayPlan plan = sample_plan();
  for (PlannedStretch& s : plan.stretches) s.verdict = Verdict::RuledOut;
  EXPECT_EQ(subject(plan, sample_inputs()), "NO PLAN: Lantern Fri 14 May, every stretch breaks a limit");
  plan.stretches[0].limit = BrokenLimit{};
  plan.stretches[0].limit->kind = LimitKind::TooWarm;
  EXPECT_EQ(subject(plan, sample_inputs()), "NO PLAN: Lantern Fri 14 May, water too warm for trout");
  plan.stretches.clear();
  plan.why_no_stretch = "no two accesses are joined by the river.";
  EXPECT_EQ(subject(plan, sample_inputs()), "NO PLAN: Lantern Fri 14 May, no two accesses are joined by the river");
}

// RFC 5322, section 2.1.1: lines of at most 78 characters; here the subject's own characters.
TEST(MailSubject, IsNeverLongerThan78Characters) {
  std::string hebrew, family, accents;
  for (int i = 0; i < 60; ++i) hebrew += "נהר ";
  for (int i = 0; i < 40; ++i) family += "👨‍👩‍👧🇫🇷";
  for (int i = 0; i < 90; ++i) accents += "e\u0301";
  for (const std::string& name : {std::string(300, 'x'), hebrew, family, accents, std::string()}) {
    DayInputs in = sample_inputs();
    in.river.name = name;
    DayPlan plan = sample_plan();
    EXPECT_LE(characters(subject(plan, in)), 78u);
    EXPECT_EQ(subject(plan, in).find('\n'), std::string::npos);
    plan.stretches[0].stop_by = on_the_day(13, 34);
    for (NewestReading& reading : plan.readings) reading.time = plan.made_at - std::chrono::hours{14};
    EXPECT_LE(characters(subject(plan, in)), 78u);
    plan.nothing = true;
    EXPECT_LE(characters(subject(plan, in)), 78u);
  }
}

// A figure behind Hebrew would be read backwards ("1/2 12") were the name not isolated.
TEST(MailSubject, IsolatesARiverWrittenFromTheRight) {
  DayInputs in = sample_inputs();
  in.river.name = "נהר הפנס";
  EXPECT_THAT(subject(sample_plan(), in), StartsWith("Fri 14 May \u2068נהר הפנס\u2069: 12 1/2 ft tip"));
}

TEST(Cut, IsAtTheLastSpaceThatFits) {
  EXPECT_EQ(cut_at_word("Mill Bridge", 11), "Mill Bridge");
  EXPECT_EQ(cut_at_word("Mill Bridge", 10), "Mill");
  EXPECT_EQ(cut_at_word("Mill, Bridge", 8), "Mill");
  EXPECT_EQ(cut_at_word("Lantern", 3), "Lan");
}

TEST(Cut, IsNeverInsideWhatAReaderTakesForOneCharacter) {
  EXPECT_EQ(cut_at_word("caf\u00e9s", 4), "caf\u00e9");
  EXPECT_EQ(cut_at_word("e\u0301e\u0301", 3), "e\u0301");
  EXPECT_EQ(cut_at_word("a👨‍👩‍👧", 4), "a");
  EXPECT_EQ(cut_at_word("🇫🇷🇫🇷", 3), "🇫🇷");
  EXPECT_EQ(cut_at_word("👍🏽👍🏽", 3), "👍🏽");
}

TEST(Cut, ClosesADirectionThatItCutOpen) {
  EXPECT_EQ(cut_at_word("\u2068נהר הפנס\u2069: 12 1/2 ft", 6), "\u2068נהר\u2069");
}

TEST(MorningMail, ShowsFiveLinesFirst) {
  const Page page = morning_mail(sample_plan(), sample_inputs());
  const auto* lines = std::get_if<Lines>(&page.blocks.front());
  ASSERT_NE(lines, nullptr);
  ASSERT_EQ(lines->lines.size(), 5u);
  EXPECT_THAT(lines->lines[0], StartsWith("Rig: sinking tip 12 1/2 ft 5 in/s, leader 3 1/2 ft, weighted streamer."));
  EXPECT_THAT(lines->lines[1], StartsWith("Flow 1,850 cfs (1,700-2,050), falling slowly"));
  EXPECT_THAT(lines->lines[2], StartsWith("Water 47 F, 52 F by 15:40."));
  EXPECT_THAT(lines->lines[3], StartsWith("Changes: "));
  EXPECT_THAT(lines->lines[4], StartsWith("Care: "));
  EXPECT_THAT(lines->lines[4], EndsWith("Check local rules."));
}

TEST(MorningMail, SaysWhatIsUnknown) {
  DayPlan plan = sample_plan();
  plan.stretches[0].flow_at_launch = Absent{"no gauge on this branch"};
  plan.stretches[0].water_at_launch = Absent{"no sensor"};
  for (PlannedReach& reach : plan.stretches[0].reaches)
    for (PlannedWater& water : reach.waters) water.choice.best.reset();
  const Page page = morning_mail(plan, sample_inputs());
  EXPECT_THAT(line_of(page, "Rig"), HasSubstr("no line is named"));
  EXPECT_THAT(line_of(page, "Flow"), HasSubstr("not known (no gauge on this branch)"));
  EXPECT_THAT(line_of(page, "Flow"), HasSubstr("Change since yesterday not known."));
  EXPECT_THAT(line_of(page, "Water"), HasSubstr("not known: measure"));
  EXPECT_THAT(line_of(page, "Water"), HasSubstr("Clarity not known. Wind not known."));
  EXPECT_EQ(page.title, "Fri 14 May Lantern: no line named; flow not known, water not known");
}

TEST(MorningMail, SaysTheStrongestWindOnTheWater) {
  const DayPlan plan = sample_plan();
  DayInputs in = sample_inputs();
  in.weather.emplace();
  for (const double mph : {4.0, 12.0, 9.0}) {
    in.weather->wind.times.push_back(plan.stretches[0].launch + std::chrono::hours{in.weather->wind.size()});
    in.weather->wind.values.push_back(miles_per_hour(mph));
  }
  EXPECT_THAT(line_of(morning_mail(plan, in), "Water"), HasSubstr("Wind up to 12 mph at 08:30."));
}

TEST(MorningMail, NamesTheOtherRodsAndWhatTheFlowWouldChange) {
  const std::string changes = line_of(morning_mail(sample_plan(), sample_inputs()), "Changes");
  EXPECT_THAT(changes, HasSubstr("floating double taper on B, dry fly, 11:40-12:50."));
  EXPECT_THAT(changes, HasSubstr("Under 1,500 cfs at Mill run (run): sinking tip 10 ft 4 in/s on A."));
}

TEST(MorningMail, SaysTheHeaviestCautionsInAFewWords) {
  const std::string care = line_of(morning_mail(sample_plan(), sample_inputs()), "Care");
  EXPECT_THAT(care, HasSubstr("The Ledge: STOP ABOVE. PORTAGE RIGHT."));
  EXPECT_THAT(care, HasSubstr("Alder Bar, 12:40 (12:00-13:30): dam rise, no wading or anchoring."));
  EXPECT_THAT(care, HasSubstr("Water down to 47 F: life jackets ON."));
}

TEST(MorningMail, AtASpotDoesNotRepeatItsNameWithEveryCaution) {
  DayPlan plan = sample_plan();
  PlannedStretch& spot = plan.stretches[0];
  spot.spot = Platform::Wading;
  for (Caution& caution : spot.cautions) caution.on_foot = true;
  const std::string care = line_of(morning_mail(plan, sample_inputs()), "Care");
  EXPECT_THAT(care, HasSubstr("12:40 (12:00-13:30): dam rise, no wading, be on the bank."));
  EXPECT_THAT(care, HasSubstr("Too deep or too fast to wade, stay out of it."));
  EXPECT_THAT(care, Not(HasSubstr("Alder Bar")));
}

TEST(MorningMail, TellsAFallOfStageInInches) {
  DayInputs in = sample_inputs();
  in.records = {two_evenings(3.50, 3.71, 1850, 2000)};
  EXPECT_THAT(line_of(morning_mail(sample_plan(), in), "Flow"), EndsWith("At gauge heron 2 1/2 in lower than 24 h before."));
  in.river.gauges.resize(1);
  in.now = on_the_day(5);
  DayPlan plan = sample_plan();
  plan.made_at = on_the_day(5);
  for (Instant& time : in.records[0].stage.times) time += std::chrono::hours{8};
  EXPECT_THAT(line_of(morning_mail(plan, in), "Flow"), EndsWith(". 2 1/2 in lower than yesterday."));
}

TEST(SinceYesterday, IsInPercentWithoutAStage) {
  GaugeRecord record = two_evenings(3.5, 3.7, 1860, 2000);
  record.stage = {};
  EXPECT_EQ(say_since_yesterday(record, sample_now(), UnitSystem::Us), "7 % less");
  record.discharge.values.back() = cubic_feet_per_second(2200);
  EXPECT_EQ(say_since_yesterday(record, sample_now(), UnitSystem::Us), "10 % more");
}

TEST(SinceYesterday, IsInCentimetresForMetricPeople) {
  EXPECT_EQ(say_since_yesterday(two_evenings(3.7, 3.5, 1, 1), sample_now(), UnitSystem::Metric), "6 cm higher");
  EXPECT_EQ(say_since_yesterday(two_evenings(3.5, 3.5, 1, 1), sample_now(), UnitSystem::Us), "as high");
}

TEST(SinceYesterday, IsNotToldFromOldReadings) {
  const GaugeRecord record = two_evenings(3.5, 3.7, 1850, 2000);
  EXPECT_EQ(say_since_yesterday(record, sample_now() + std::chrono::hours{7}, UnitSystem::Us), "");
  EXPECT_EQ(say_since_yesterday(GaugeRecord{}, sample_now(), UnitSystem::Us), "");
}

TEST(MorningMail, HasAPictureOfWhatIsFishedLongest) {
  const DayPlan plan = sample_plan();
  const auto most = most_fished(plan.stretches[0]);
  ASSERT_TRUE(most);
  EXPECT_EQ(most->reach->name, "Cottonwood bend");
  std::vector<std::string> figures;
  for (const Block& block : morning_mail(plan, sample_inputs()).blocks)
    if (const auto* figure = std::get_if<Figure>(&block)) figures.push_back(figure->name + ": " + figure->alt);
  ASSERT_EQ(figures.size(), 2u);
  EXPECT_THAT(figures[0], StartsWith("hydrograph: Flow at the put-in: 1,850 cfs at 07:00, 1,910 cfs at 12:00, "));
  EXPECT_THAT(figures[1], StartsWith("line: The line over the bed at true slope. Rod A at Cottonwood bend (run): water 4 ft, fly at 2 1/2 ft."));
}

TEST(MorningMail, HasNoPictureOfALineThatIsNotDrawn) {
  DayPlan plan = sample_plan();
  plan.stretches[0].line.reset();
  std::vector<std::string> figures;
  for (const Block& block : morning_mail(plan, sample_inputs()).blocks)
    if (const auto* figure = std::get_if<Figure>(&block)) figures.push_back(figure->name);
  EXPECT_THAT(figures, ::testing::ElementsAre("hydrograph"));
}

TEST(MorningMail, OfAClosedReachNamesNoRigForIt) {
  DayPlan plan = sample_plan();
  for (PlannedReach& reach : plan.stretches[0].reaches) reach.closed_why = "spawning";
  EXPECT_FALSE(most_fished(plan.stretches[0]));
  EXPECT_THAT(line_of(morning_mail(plan, sample_inputs()), "Rig"), Not(HasSubstr("sinking tip")));
}

}  // namespace
}  // namespace floatwright::testing
