// tuned.json, written and read back; what is wrong with it, told and left out.
#include "adapters/out/tuned/tuned_json.hpp"

#include <gmock/gmock.h>

#include <cctype>
#include <cmath>
#include <limits>

#include "adapters/in/files/tuned_file.hpp"
#include "engine/forecast/outlook.hpp"
#include "tests/support/run_program.hpp"
#include "tests/support/schema.hpp"

namespace floatwright::testing {
namespace {

using ::testing::AllOf;
using ::testing::Each;
using ::testing::Field;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

constexpr Instant kMade{std::chrono::sys_days{std::chrono::year{2027} / 5 / 13}};

River lantern() {
  River river;
  for (const auto& [id, station] : {std::pair{"heron", "usgs:00000001"}, {"ferry", "usgs:00000003"}}) {
    GaugeSite gauge;
    gauge.id = id;
    gauge.station = station;
    river.gauges.push_back(gauge);
  }
  return river;
}

TunedFlow tuned_flow() {
  TunedFlow flow;
  flow.gauge = "ferry";
  flow.station = "usgs:00000003";
  flow.made_on = kMade;
  flow.median = cubic_metres_per_second(52.25);
  flow.leads.push_back({.lead = std::chrono::hours{6}, .used = true, .coefficients = {0.1, -0.2}});
  flow.skill = {kMade, {{FlowState::DailyWave, std::chrono::hours{6}, 72, -0.11, 0.09}, {std::nullopt, std::chrono::minutes{90}, 9, -1.0, 1.0}}};
  flow.library = {kMade - std::chrono::days{1}, std::chrono::hours{3}, {3.95f, std::numeric_limits<float>::quiet_NaN(), 4.12346f}};
  return flow;
}

TuningReports reports() {
  TuningReports out;
  FlowReport flow;
  flow.gauge = "ferry";
  flow.rows.push_back({.state = FlowState::Rising, .lead = std::chrono::hours{24}, .origins = 40, .forecast = {0.8, std::nan(""), cubic_metres_per_second(3.0)},
                       .holding = {}, .untuned = {}, .banded = 12, .inside_band = 0.75, .inside_default = 0.9});
  flow.notes.push_back("a month is missing");
  out.flows.push_back(flow);
  out.temperatures.emplace_back().gauge = "ferry";
  out.temperatures.back().stops.emplace_back();
  LagReport lag;
  lag.from = "heron";
  lag.to = "ferry";
  lag.routed.nash_sutcliffe = 0.97;
  out.lags.push_back(lag);
  return out;
}

Tuning tuned() {
  Tuning out;
  out.tuned.flows.push_back(tuned_flow());
  TunedDailyFlow daily;
  daily.gauge = "heron";
  daily.station = "usgs:00000001";
  daily.leads.push_back({.days = 2, .used = false, .coefficients = {}, .mean_miss = 0.07});
  out.tuned.daily_flows.push_back(daily);
  TunedTemperature curve;
  curve.gauge = "ferry";
  curve.station = "usgs:00000003";
  curve.leads.emplace_back().lead = std::chrono::hours{12};
  out.tuned.temperatures.push_back(curve);
  out.lags.push_back({"heron", "ferry", cubic_metres_per_second(51.0), hours(5.2), 0.4, 1.5, 60});
  FittedChannel channel;
  channel.gauge = "ferry";
  channel.least = cubic_metres_per_second(10.0);
  channel.most = cubic_metres_per_second(90.0);
  out.channels.push_back(channel);
  out.reports = reports();
  return out;
}

class TunedJson : public ::testing::Test {
 protected:
  TunedFile read(const std::string& text, const River& river = lantern()) {
    write_text(scratch_.path() / kTunedFile, text);
    return read_tuned_file(scratch_.path() / kTunedFile, river);
  }
  ScratchFolder scratch_;
};

TEST_F(TunedJson, IsReadBackAsItWasWritten) {
  const std::string text = tuned_json(tuned());
  const TunedFile back = read(text);
  EXPECT_THAT(back.problems, IsEmpty());
  EXPECT_EQ(tuned_json(back.tuning), text);
  const TunedFlow& flow = back.tuning.tuned.flows.at(0);
  EXPECT_EQ(flow.station, "usgs:00000003");
  EXPECT_EQ(flow.skill.errors.at(0).state, FlowState::DailyWave);
  EXPECT_EQ(flow.skill.errors.at(1).lead, std::chrono::minutes{90});
  EXPECT_TRUE(std::isnan(flow.library.ln_flow.at(1)));
  EXPECT_FLOAT_EQ(flow.library.ln_flow.at(2), 4.1235f) << "four decimals";
  EXPECT_EQ(back.tuning.lags.at(0).time, hours(5.2));
  EXPECT_TRUE(std::isnan(back.tuning.reports.flows.at(0).rows.at(0).forecast.kling_gupta));
}

TEST_F(TunedJson, KeepsToItsSchema) {
  EXPECT_EQ(judged_by_schema("tuned", tuned_json(tuned())), "valid");
}

TEST_F(TunedJson, HoldsAYearOfFlowInThirtyKilobytes) {
  Tuning year;
  year.tuned.flows.push_back(tuned_flow());
  year.tuned.flows[0].library.ln_flow.assign(8 * 365, 4.1234f);
  EXPECT_LT(tuned_json(year).size(), 30'000U);
}

TEST_F(TunedJson, OfAGaugeThatIsGoneOrAnotherIsLeftOutAndTold) {
  River river = lantern();
  river.gauges[1].station = "usgs:00000009";
  const TunedFile back = read(tuned_json(tuned()), river);
  EXPECT_FALSE(back.damaged);
  EXPECT_THAT(back.tuning.tuned.flows, IsEmpty());
  EXPECT_THAT(back.tuning.tuned.daily_flows, SizeIs(1));
  EXPECT_THAT(back.problems, SizeIs(2));
  EXPECT_THAT(back.problems, Each(AllOf(Field(&Problem::warning, true), Field(&Problem::found, HasSubstr("which is now usgs:00000009")))));
  EXPECT_GT(back.problems[0].line, 1);
  river.gauges.clear();
  EXPECT_THAT(read(tuned_json(tuned()), river).tuning.lags, IsEmpty());
}

TEST_F(TunedJson, ThatIsNotThereIsNothing) {
  const TunedFile none = read_tuned_file(scratch_.path() / "no.json", lantern());
  EXPECT_FALSE(none.damaged);
  EXPECT_THAT(none.problems, IsEmpty());
}

TEST_F(TunedJson, CutShortAnywhereIsLeftOutWithAWarning) {
  const std::string text = tuned_json(tuned());
  for (std::size_t end = 1; end + 2 < text.size(); end += 97) {
    const TunedFile back = read(text.substr(0, end));
    ASSERT_TRUE(back.damaged) << end;
    ASSERT_THAT(back.tuning.tuned.flows, IsEmpty());
    EXPECT_THAT(back.problems, Each(Field(&Problem::warning, true)));
  }
}

TEST_F(TunedJson, WithAWrongOrUnknownKeyIsLeftOutWithItsLine) {
  const std::string text = tuned_json(tuned());
  for (const auto& [from, to] : {std::pair<std::string, std::string>{"\"used\": true", "\"used\": 7"},
                                 {"\"below_dam\"", "\"beneath_dam\""},
                                 {"2027-05-13T00:00:00Z", "yesterday"},
                                 {"\"daily_wave\"", "\"wavy\""},
                                 {"\"ln_flow\": [3.95", "\"ln_flow\": [\"3.95\""},
                                 {"\"step_h\": 3", "\"step_h\": 0"}}) {
    std::string spoilt = text;
    const auto at = spoilt.find(from);
    ASSERT_NE(at, std::string::npos) << from;
    const TunedFile back = read(spoilt.replace(at, from.size(), to));
    ASSERT_TRUE(back.damaged) << from;
    EXPECT_GT(back.problems.at(0).line, 1) << from;
    EXPECT_THAT(back.problems.at(0).mend, HasSubstr("floatwright tune"));
  }
}

// Where a value stands in a written file: after a colon, or in a row of numbers.
std::vector<std::pair<std::size_t, std::size_t>> numbers_in(const std::string& text) {
  std::vector<std::pair<std::size_t, std::size_t>> found;
  for (std::size_t at = 1; at < text.size(); ++at) {
    const bool begins = (std::isdigit(static_cast<unsigned char>(text[at])) || text[at] == '-') && text[at - 1] == ' ';
    if (begins) found.emplace_back(at, text.find_first_not_of("-+.eE0123456789", at) - at);
  }
  return found;
}

// Three cases of two days on from fifteen steady ones, by what is left of the fit.
void expect_a_flow_that_can_be(const Tuning& tuning, const std::string& why) {
  GaugeRecord record;
  record.gauge = "ferry";
  record.station = "usgs:00000003";
  for (int h = 15 * 24; h >= 0; --h) {
    record.discharge.times.push_back(kMade - std::chrono::hours{h});
    record.discharge.values.push_back(cubic_metres_per_second(50.0 - 0.01 * h));
  }
  OutlookInputs in{record, nullptr, false, false, "America/Denver"};
  if (!tuning.tuned.flows.empty()) in.tuned = &tuning.tuned.flows[0];
  const auto outlook = gauge_outlook(in, {kMade - std::chrono::hours{72}, std::chrono::hours{6}, 20}, kMade);
  ASSERT_TRUE(outlook.flow.has_value()) << why;
  for (std::size_t i = 0; i < 20; ++i) {
    ASSERT_TRUE(std::isfinite(outlook.flow->high[i].si())) << why;
    ASSERT_LE(outlook.flow->low[i], outlook.flow->middle[i]) << why;
    ASSERT_LE(outlook.flow->middle[i], outlook.flow->high[i]) << why;
  }
}

TEST_F(TunedJson, WithAnyNumberSpoiltIsToldOrGivesAFlowThatCanBe) {
  const std::string text = tuned_json(tuned());
  int told = 0, spoilt = 0;
  for (const auto& [at, length] : numbers_in(text)) {
    for (const char* other : {"NaN", "1e400", "-1e300", "1e11", "\"7\"", "null", "[]"}) {
      const std::string changed = std::string(text).replace(at, length, other);
      const TunedFile back = read(changed);
      ASSERT_THAT(back.problems, Each(AllOf(Field(&Problem::warning, true), Field(&Problem::line, ::testing::Ge(1)))));
      const std::string why = text.substr(at < 40 ? 0 : at - 40, 60) + " with " + other;
      if (!back.damaged) expect_a_flow_that_can_be(back.tuning, why);
      ++spoilt;
      told += !back.problems.empty();
    }
  }
  EXPECT_GT(spoilt, 300);
  EXPECT_GT(told, 0.8 * spoilt) << "of " << spoilt;  // counts and years of reports may be anything
}

TEST_F(TunedJson, WithAKeyTwiceOrValuesThatCannotBeIsToldAndTheRestStays) {
  const std::string text = tuned_json(tuned());
  const auto changed = [&](const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    return at == std::string::npos ? std::string() : std::string(text).replace(at, from.size(), to);
  };
  const TunedFile twice = read(changed("\"below_dam\": false", "\"below_dam\": false, \"below_dam\": true"));
  EXPECT_TRUE(twice.damaged);
  EXPECT_GT(twice.problems.at(0).line, 1);
  const TunedFile turned = read(changed("\"low\": -0.11", "\"low\": 0.5"));  // over its high, 0.09
  EXPECT_FALSE(turned.damaged);
  EXPECT_THAT(turned.tuning.tuned.flows, IsEmpty());
  EXPECT_THAT(turned.tuning.lags, SizeIs(1));
  EXPECT_THAT(turned.problems, SizeIs(1));
  EXPECT_THAT(read(changed("\"exponent\": 0.4", "\"exponent\": 40")).tuning.lags, IsEmpty());
}

}  // namespace
}  // namespace floatwright::testing
