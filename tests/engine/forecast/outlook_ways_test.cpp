// An agency's forecast, what was fitted, the gauge above and rain in the outlook; numbers worked out by hand beside,
// from docs/equations.md.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "engine/forecast/outlook.hpp"
#include "synthetic_record.hpp"

namespace floatwright {
namespace {

using std::chrono::hours;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
constexpr double kRoundOff = 1e-9;  // m3/s

double at_lead(const std::vector<Discharge>& flow, int lead_h) {
  return flow[static_cast<std::size_t>(96 + lead_h)].si();
}
OutlookInputs inputs(const GaugeRecord& record) { return {record, nullptr, false, false, "America/Denver"}; }
GaugeOutlook outlook_of(const OutlookInputs& in) { return gauge_outlook(in, grid_around(), kNow); }

OfficialForecast official(int step_h, int count, double (*flow_at)(int)) {
  OfficialForecast forecast{"nws:FERRY", kNow - hours{3}, {}};
  for (int i = 0; i < count; ++i) {
    forecast.flow.times.push_back(kNow + hours{step_h * i});
    forecast.flow.values.push_back(cubic_metres_per_second(flow_at(step_h * i)));
  }
  return forecast;
}
GaugeRecord steady_at(double flow) {
  GaugeRecord record = record_of(100, [=](int) { return flow; });
  record.station = "usgs:00000001";
  return record;
}

TEST(OutlookOfAnAgency, IsSetToTheGaugeLessAndLess) {
  GaugeRecord record = steady_at(120.0);
  record.official = official(6, 10, [](int h) { return 100.3 + h; });
  const auto outlook = outlook_of(inputs(record));
  EXPECT_EQ(outlook.method, FlowMethod::Official);
  EXPECT_THAT(outlook.source, HasSubstr("nws:FERRY of 09:00 on Thu 13 May"));
  const double ratio = 120.0 / 100.3;
  EXPECT_NEAR(at_lead(outlook.flow->middle, 12), 112.3 * std::pow(ratio, std::exp(-1.0)), kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 24), 124.3 * std::pow(ratio, std::exp(-2.0)), kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->low, 24) / at_lead(outlook.flow->middle, 24), 0.82, kRoundOff);
}
// 12 m3/s where the agency rounds to 10: its 10 to 30 is a rise of 20.
TEST(OutlookOfAnAgency, GivesItsChangeOnlyWhereItIsTooCoarse) {
  GaugeRecord record = steady_at(12.0);
  record.official = official(6, 10, [](int h) { return h < 24 ? 10.0 : 30.0; });
  const auto outlook = outlook_of(inputs(record));
  EXPECT_NEAR(at_lead(outlook.flow->middle, 12), 12.0, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 24), 32.0, kRoundOff);
  EXPECT_THAT(outlook.notes, Contains(HasSubstr("too coarse")));
}
TEST(OutlookOfAnAgency, IsNotUsedOnceItHasEndedNorWithoutFlows) {
  GaugeRecord record = steady_at(120.0);
  record.official = official(6, 10, [](int) { return 90.3; });
  for (Instant& t : record.official->flow.times) t -= hours{80};
  const auto outlook = outlook_of(inputs(record));
  EXPECT_EQ(outlook.method, FlowMethod::Hold);
  EXPECT_THAT(outlook.notes, Contains(HasSubstr("does not meet the newest reading")));
  record.official = official(6, 10, [](int) { return -999.0; });
  EXPECT_EQ(outlook_of(inputs(record)).method, FlowMethod::Hold);
}
TEST(OutlookOfAnAgency, GoesOnAsTheGaugeAfterItsEnd) {
  GaugeRecord record = steady_at(120.0);
  record.official = official(6, 3, [](int h) { return 120.3 + h; });
  const auto outlook = outlook_of(inputs(record));
  EXPECT_NEAR(at_lead(outlook.flow->middle, 30), at_lead(outlook.flow->middle, 12), kRoundOff);
  EXPECT_THAT(outlook.notes, Contains(HasSubstr("ends at 00:00 on Fri 14 May")));
}
// Rows now and 6 h on, then none for 36 h: in between the gauge's own 120, which rain of 12 mm in the night may raise.
TEST(OutlookOfAnAgency, TellsAGapOfOverADayAndGoesOnAsTheGaugeWithinIt) {
  GaugeRecord record = steady_at(120.0);
  record.official = official(6, 11, [](int h) { return h > 6 && h < 42 ? -999.0 : 150.3; });
  Weather weather;
  for (int h = 0; h < 14; ++h) {  // 14 mm by 08:00
    weather.rain.times.push_back(kNow + hours{h});
    weather.rain.values.push_back(Speed::from_si(0.001 / 3600.0));
  }
  OutlookInputs in = inputs(record);
  in.weather = &weather;
  const auto outlook = outlook_of(in);
  EXPECT_THAT(outlook.notes,
              Contains("At gauge ferry the agency's forecast tells no flow from 18:00 on Thu 13 May to 06:00 on "
                       "Sat 15 May; between them it goes on as the gauge's own record says."));
  EXPECT_NEAR(at_lead(outlook.flow->middle, 24), 120.0, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->high, 24), 120.0 * 1.30 * 1.5, kRoundOff);
  EXPECT_GT(at_lead(outlook.flow->middle, 6), 120.0);
  record.official = official(6, 11, [](int) { return 150.3; });
  EXPECT_THAT(outlook_of(inputs(record)).notes, testing::Not(Contains(HasSubstr("tells no flow"))));
}
TEST(OutlookOfAnAgency, TellsAGapOfOverADayWhereItStandsAlone) {
  GaugeRecord record;
  record.gauge = "ferry";
  record.official = official(6, 11, [](int h) { return h > 6 && h < 42 ? -999.0 : h < 24 ? 90.0 : 40.0; });
  const auto outlook = outlook_of(inputs(record));
  EXPECT_THAT(outlook.notes,
              Contains("At gauge ferry the agency's forecast tells no flow from 18:00 on Thu 13 May to 06:00 on "
                       "Sat 15 May; between them it is taken to change evenly."));
  EXPECT_NEAR(at_lead(outlook.flow->middle, 24), 60.0, kRoundOff);  // half way in ln
}

// Newest reading 20 h old, first row 20 h after it: by then e^(-20/12) of the difference is left.
TEST(OutlookOfAnAgency, JoinsAReadingThatIsOlderThanItsFirstRow) {
  GaugeRecord record = record_of(
      100, [](int) { return 60.0; }, kNow - hours{20});
  record.official = official(6, 10, [](int) { return 90.3; });
  const auto outlook = outlook_of(inputs(record));
  EXPECT_EQ(outlook.method, FlowMethod::Official);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 0), 90.3 * std::pow(60.0 / 90.3, std::exp(-20.0 / 12.0)), kRoundOff);
}
// Silent for 60 h, the forecast issued 3 h ago: held flows of 60 h ago are off as those of 2 and 3 days, 0.72 to 1.36
// and 0.66 to 1.52 (medians of 16 gauges' daily means, docs/accuracy.md), half way in ln.
TEST(OutlookOfAnAgency, StandsAloneWhereTheGaugeIsSilentWithTheBandOfAFlowHeldSince) {
  GaugeRecord record = record_of(
      100, [](int) { return 60.0; }, kNow - hours{60});
  record.official = official(6, 10, [](int h) { return 90.3 + h; });
  const auto outlook = outlook_of(inputs(record));
  EXPECT_EQ(outlook.method, FlowMethod::OfficialAlone);
  EXPECT_EQ(outlook.state, FlowState::Unknown);
  EXPECT_FALSE(outlook.now.has_value());
  EXPECT_EQ(outlook.why, "official forecast of 09:00 on Thu 13 May alone; gauge silent since 00:00 on Tue 11 May");
  ASSERT_TRUE(outlook.flow.has_value());
  EXPECT_NEAR(at_lead(outlook.flow->middle, 12), 102.3, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->low, 0) / 90.3, std::sqrt(0.72 * 0.66), kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->high, 0) / 90.3, std::sqrt(1.36 * 1.52), kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->high, -80), 60.0, kRoundOff);                      // as it was read
  EXPECT_NEAR(at_lead(outlook.flow->middle, -30), std::sqrt(60.0 * 90.3), kRoundOff);  // half way in ln
  EXPECT_EQ(outlook.forecast_from, kNow - hours{59});
}
TEST(OutlookOfAnAgency, StandsAloneWhereTheGaugeWasNeverRead) {
  GaugeRecord record;
  record.official = official(6, 3, [](int) { return 90.3; });
  const auto outlook = outlook_of(inputs(record));
  EXPECT_THAT(outlook.why, HasSubstr("alone; no flow read at the gauge"));
  EXPECT_NEAR(at_lead(outlook.flow->middle, -90), 90.3, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->high, 21) / 90.3, 1.52, kRoundOff);  // 48 h and 3 to the issue and 21 on: 72
  EXPECT_THAT(outlook.notes, Contains(HasSubstr("ends at 00:00 on Fri 14 May; after it its last flow is held")));
}
TEST(OutlookOfAnAgency, DoesNotSpeakUnderIceNorForAGaugeThatReadsNoFlowNorOnceItHasEnded) {
  GaugeRecord iced = record_of(
      100, [](int) { return 60.0; }, kNow - hours{60});
  iced.official = official(6, 10, [](int) { return 90.3; });
  GaugeRecord dry = record_of(100, [](int h) { return h < 60 ? 0.0 : 60.0; }), ended = iced;
  dry.official = iced.official;
  iced.ice_now = true;
  for (Instant& t : ended.official->flow.times) t -= hours{80};
  for (const GaugeRecord* record : {&iced, &dry, &ended}) EXPECT_FALSE(outlook_of(inputs(*record)).flow.has_value());
}
// The stated band ends at 36 h and is held to 48; then it widens as that of a held flow: 3 days over 2, as above.
TEST(OutlookOfAnAgency, WidensPastTwoDaysAsAHeldFlowDoes) {
  GaugeRecord record = steady_at(90.3);
  record.official = official(6, 20, [](int) { return 90.3; });
  const auto outlook = gauge_outlook(inputs(record), {kNow - hours{96}, hours{1}, 96 + 72 + 1}, kNow);
  EXPECT_NEAR(at_lead(outlook.flow->high, 48) / 90.3, 1.42, kRoundOff);
  EXPECT_NEAR(std::log(at_lead(outlook.flow->high, 72) / 90.3), std::log(1.42) * std::log(1.52) / std::log(1.36),
              kRoundOff);
}

// 1 mm/h for 12 h reaches 12 mm at the twelfth hour; 0.9 for 12 h does not.
TEST(OutlookWithRain, RaisesTheHighCaseFromTheTwelfthMillimetreOn) {
  const GaugeRecord record = steady_at(40.0);
  Weather weather;
  for (int h = 0; h <= 12; ++h) {
    weather.rain.times.push_back(kNow + hours{h});
    weather.rain.values.push_back(Speed::from_si(h < 12 ? 0.0010001 / 3600.0 : 0.0));
  }
  OutlookInputs in = inputs(record);
  in.weather = &weather;
  const auto wet = outlook_of(in);
  EXPECT_NEAR(at_lead(wet.flow->high, 11), at_lead(outlook_of(inputs(record)).flow->high, 11), kRoundOff);
  EXPECT_NEAR(at_lead(wet.flow->high, 24), 40.0 * 1.30 * 1.5, kRoundOff);
  EXPECT_NEAR(at_lead(wet.flow->low, 24), 40.0 * 0.82, kRoundOff);
  EXPECT_THAT(wet.notes, Contains(HasSubstr("12 mm (1/2 in) of rain within 24 h will have fallen by 00:00 on Fri 14 May")));
  for (Speed& rate : weather.rain.values) rate = rate * 0.9;
  EXPECT_THAT(outlook_of(in).notes, IsEmpty());
}

TunedFlow fitted_to(const GaugeRecord& record) {
  TunedFlow tuned;
  tuned.gauge = record.gauge;
  tuned.station = record.station;
  tuned.record_to = kNow - hours{24};
  tuned.median = cubic_metres_per_second(40.0);
  for (const Period lead : kFlowLeads) {
    TunedLead fitted{.lead = lead, .used = lead != hours{12}};
    fitted.coefficients[1] = 2.0;  // of the fall of the last six hours
    tuned.leads.push_back(fitted);
    tuned.skill.errors.push_back({std::nullopt, lead, 100, std::log(0.7), std::log(1.2)});
  }
  tuned.skill.errors.push_back({FlowState::Falling, hours{6}, 80, std::log(0.9), std::log(1.1)});
  return tuned;
}
GaugeRecord falling() {
  GaugeRecord record = record_of(100, [](int h) { return 40.0 * std::exp(0.01 * h); });  // 0.06 in 6 h
  record.station = "usgs:00000001";
  return record;
}

TEST(OutlookOfWhatWasFitted, IsTheFitAtItsLeadsTheUntunedWhereItIsNotUsedAndPastErrorsAboutBoth) {
  const GaugeRecord record = falling();
  const TunedFlow tuned = fitted_to(record);
  OutlookInputs in = inputs(record);
  in.tuned = &tuned;
  const auto outlook = outlook_of(in);
  EXPECT_EQ(outlook.method, FlowMethod::Tuned);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 6), 40.0 * std::exp(-0.12), 1e-6);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 12), 40.0 * std::exp(-0.06 * 0.60), 1e-6);
  // Half way between 6 and 12 h half the departure of 6 h is left: -0.12 against the untuned -0.06 x 0.40.
  EXPECT_NEAR(at_lead(outlook.flow->middle, 9), 40.0 * std::exp(-0.06 * 0.50 + 0.5 * (-0.12 + 0.06 * 0.40)), 1e-6);
  EXPECT_NEAR(at_lead(outlook.flow->low, 6) / at_lead(outlook.flow->middle, 6), 0.9, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->high, 24) / at_lead(outlook.flow->middle, 24), 1.2, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->high, 0), 40.0, kRoundOff);
}
TEST(OutlookOfWhatWasFitted, SaysThatItIsOldAndIsNotUsedWhereItIsNoNumber) {
  const GaugeRecord record = falling();
  TunedFlow tuned = fitted_to(record);
  OutlookInputs in = inputs(record);
  in.tuned = &tuned;
  tuned.record_to = kNow - hours{24 * 400};
  EXPECT_THAT(outlook_of(in).notes, Contains(HasSubstr("ends on 2026-04-08; run `tune` again")));
  tuned.leads[2].coefficients[0] = std::nan("");
  EXPECT_EQ(outlook_of(in).method, FlowMethod::FadingFall);
  EXPECT_THAT(outlook_of(in).notes, Contains(HasSubstr("is no number")));
}
TEST(OutlookOfWhatWasFitted, IsNotTakenFromAnotherStationOrFromBelowAnotherDam) {
  GaugeRecord record = falling();
  const TunedFlow tuned = fitted_to(record);
  record.station = "usgs:00000002";
  OutlookInputs in = inputs(record);
  in.tuned = &tuned;
  const auto outlook = outlook_of(in);
  EXPECT_EQ(outlook.method, FlowMethod::FadingFall);
  EXPECT_THAT(outlook.notes, Contains(HasSubstr("run `tune` again")));
  const GaugeRecord same = falling();
  Dam dam;
  dam.ramping = true;
  OutlookInputs below{same, &dam, false, false, "America/Denver", &tuned};
  EXPECT_EQ(outlook_of(below).method, FlowMethod::SameHour);
}

// The gauge above stands 5 over this one all along but steps up by 30 two hours ago; that arrives two hours from now.
TEST(OutlookBelowADam, SeesInsideTheLagWhatTheGaugeAboveHasShown) {
  const GaugeRecord record = record_of(24 * 15, [](int) { return 40.0; });
  FromAbove above{record_of(
                      24 * 15, [](int h) { return h > 0 ? 45.0 : 75.0; }, kNow + hours{2})
                      .discharge,
                  hours{4}, true};
  for (int h = 1; h <= 30; ++h) {
    above.routed.times.push_back(kNow + hours{2 + h});
    above.routed.values.push_back(cubic_metres_per_second(h <= 2 ? 75.0 : 900.0));  // past the lag: nobody knows yet
  }
  Dam dam;
  dam.ramping = true;
  OutlookInputs in{record, &dam, false, false, "America/Denver", nullptr, &above};
  const auto outlook = outlook_of(in);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 1), 40.0, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 2), 70.0, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 4), 70.0, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 10), 40.0, kRoundOff);  // forgotten six hours past the lag: the same hours
  EXPECT_THAT(outlook.notes, Contains(HasSubstr("until 16:00 on Thu 13 May is what the gauge above has read")));
  above.routed.times.resize(24 * 15 + 2);  // what the gauge above read in the last three hours has not come in
  above.routed.values.resize(24 * 15 + 2);
  EXPECT_THAT(outlook_of(in).notes, Contains(HasSubstr("until 15:00 on Thu 13 May is what the gauge above has read")));
}
TEST(OutlookBelowADam, SaysNothingOfASensorThatMayBeFrozenButDoesOnAFreeRiver) {
  const GaugeRecord record = record_of(24 * 15, [](int) { return 40.0; });
  Dam dam;
  dam.ramping = true;
  EXPECT_THAT(outlook_of({record, &dam, false, false, "America/Denver"}).notes, IsEmpty());
  EXPECT_THAT(outlook_of(inputs(record)).notes, Contains(HasSubstr("may be frozen")));
}
// From 20 to 40 within the last 6 h: in three it may be half way back (in ln) on top of the stated band, but never
// lower than what a steady river of 20 may sink to.
TEST(Outlook, LetsARiseBeUndoneInTheLowCaseAndNoMore) {
  const auto outlook = outlook_of(inputs(record_of(100, [](int h) { return h >= 6 ? 20.0 : 40.0 - 20.0 * h / 6.0; })));
  EXPECT_NEAR(at_lead(outlook.flow->low, 3), 40.0 * std::sqrt(0.86 / 2.0), kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->low, 12), 20.0 * 0.90, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->low, 24), 20.0 * 0.82, kRoundOff);
}
// It was at 30 two days before, at 20 one day before; five days ago it was lower still, which no longer counts.
TEST(Outlook, TakesForWhatWasBeforeARiseTheLeastOfThreeDays) {
  const auto outlook = outlook_of(inputs(record_of(200, [](int h) {
    return h >= 100 ? 5.0 : h >= 40 ? 30.0 : h >= 20 ? 20.0 : 60.0 - h;
  })));
  EXPECT_EQ(outlook.state, FlowState::Rising);
  EXPECT_NEAR(at_lead(outlook.flow->low, 36), std::max(60.0 * 0.50 * 54.0 / 60.0, 20.0 * 0.75), kRoundOff);
}

}  // namespace
}  // namespace floatwright
