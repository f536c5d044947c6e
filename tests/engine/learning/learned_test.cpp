// What entries teach of waters and boats, on a river of one stretch. Closed forms are those of a conjugate normal update
// with the scatters that the header states.
#include "engine/learning/learned.hpp"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "engine/water/floating_speed.hpp"
#include "engine/water/surface_rise.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

constexpr Instant kNoon{std::chrono::sys_days{std::chrono::year{2027} / 5 / 14} + std::chrono::hours{18}};

Water noted(WaterType type, double depth_ft, double speed_ft_s) {
  return {type, 0.5, {{cubic_feet_per_second(1800), feet(depth_ft), surface_feet_per_second(speed_ft_s), DepthSource::Noted, {}}}};
}

River one_stretch() {
  River river;
  river.name = "Lantern River";
  river.accesses = {{"mill", "Mill Bridge", "", river_mile(10), {}, {}}, {"bar", "Alder Bar", "", river_mile(4), {}, {}}};
  river.notes = {{river_mile(10), river_mile(4), "Mill Bridge", "Alder Bar", cubic_feet_per_second(1800), hours(2.0),
                  {noted(WaterType::Run, 4.0, 3.0), noted(WaterType::Bank, 2.0, 1.5)}}};
  NamedReach reach;
  reach.id = "mill_run";
  reach.name = "Mill run";
  reach.from = river_mile(9);
  reach.to = river_mile(8);
  reach.waters = {noted(WaterType::Run, 5.0, 3.5), noted(WaterType::Bank, 3.0, 2.0)};
  river.reaches = {reach};
  river.spots = {{"bend", "The Bend", river_mile(6), Platform::Wading, Bed::Gravel, {noted(WaterType::Pool, 6.0, 1.0)}}};
  return river;
}

Band<Discharge> flow(double cfs) {
  const Discharge q = cubic_feet_per_second(cfs);
  return {q, q, q};
}
LogEntry met(const std::string& where, double cfs = 1800.0) {
  LogEntry entry;
  entry.at = kNoon;
  entry.where = where;
  entry.flow = flow(cfs);
  return entry;
}
LogEntry sounded(const std::string& where, double depth_ft, double cfs = 1800.0) {
  LogEntry entry = met(where, cfs);
  entry.depth = feet(depth_ft);
  return entry;
}
LogEntry touched(const std::string& where, bool bottom, double fly_ft, double cfs = 1800.0) {
  LogEntry entry = met(where, cfs);
  entry.bottom = bottom;
  entry.fly = FlyReach{feet(fly_ft), 0.25};
  return entry;
}
LogEntry floated(double hours_afloat, bool stops_noted = true) {
  LogEntry entry = met("");
  entry.trip = FloatMet{"mill", "bar", kNoon + period(hours(hours_afloat + 1.0)), hours(1.0), stops_noted, "green", {}};
  return entry;
}

struct Taught {
  River river = one_stretch();
  RiverGraph graph = river_graph(river);
  Learned operator()(const std::vector<LogEntry>& entries) const { return learned(river, graph, entries); }
  Lane lane_of(const NamedWater& where, double cfs) const {
    const Discharge q = cubic_feet_per_second(cfs);
    const Reach& reach = graph.reaches[where.reach];
    return *lane(waters_of(river, where.holder, where.of)[where.water], channel_of(river, reach, q), {q, q, q},
                 surface_law_of(river, reach));
  }
};

TEST(Learned, FromSoundingsIsTheConjugateUpdateInLogarithms) {
  const Taught taught;
  const Learned all = taught({sounded("Mill run run", 5.5), sounded("Mill run run", 5.8), sounded("mill_run run", 5.2)});
  ASSERT_THAT(all.waters, SizeIs(1));
  const Correction depth = all.waters[0].depth;
  const double precision = 1 / 0.0225 + 3 / 0.01;
  EXPECT_NEAR(depth.ln, (std::log(5.5 / 5) + std::log(5.8 / 5) + std::log(5.2 / 5)) / 0.01 / precision, 1e-12);
  EXPECT_NEAR(0.15 * depth.scatter_left, 1 / std::sqrt(precision), 1e-12);
  EXPECT_EQ(depth.entries, 3);
  EXPECT_EQ(all.waters[0].speed.entries, 0);
  EXPECT_THAT(all.idle, IsEmpty());
}

TEST(Learned, FromACountTellsAQuarterOfASounding) {
  const Taught taught;
  LogEntry counted = sounded("The Bend", 7.0);
  counted.by_count = true;
  EXPECT_NEAR(taught({counted}).waters[0].depth.ln, std::log(7.0 / 6) * 25 / (25 + 1 / 0.0225), 1e-12);
}

TEST(Learned, OfSpeedIsItsOwnNumber) {
  const Taught taught;
  LogEntry entry = met("mile 8.5 bank");
  entry.surface_speed = surface_feet_per_second(2.4);
  const LearnedWater water = taught({entry}).waters.at(0);
  EXPECT_EQ(water.type, WaterType::Bank);
  EXPECT_EQ(water.where.name, "Mill run");
  EXPECT_NEAR(water.speed.ln, std::log(1.2) * 100 / (100 + 1 / 0.0225), 1e-12);
  EXPECT_EQ(water.depth.entries, 0);
}

TEST(Learned, IsJudgedByTheNoteCarriedToTheFlowOfTheEntry) {
  const Taught taught;
  const NamedWater where = *water_named(taught.river, taught.graph, "The Bend");
  const double noted_ft = in_feet(taught.lane_of(where, 900).depth.middle);
  ASSERT_LT(noted_ft, 6.0);
  EXPECT_NEAR(taught({sounded("The Bend", noted_ft, 900)}).waters[0].depth.ln, 0.0, 1e-12);
}

TEST(Learned, FromATouchIsShallowerAndFromNoneDeeper) {
  const Taught taught;
  EXPECT_LT(taught({touched("The Bend", true, 5.0)}).waters[0].depth.ln, -0.03);
  EXPECT_GT(taught({touched("The Bend", false, 7.0)}).waters[0].depth.ln, 0.03);
}

TEST(Learned, MakesDepthAndBandOfTheLane) {
  const Taught taught;
  const Learned all = taught({sounded("The Bend", 7.0), sounded("The Bend", 7.0)});
  const Lane before = taught.lane_of(all.waters[0].where, 1500), after = corrected(before, all.waters[0]);
  EXPECT_NEAR(after.depth.middle / before.depth.middle, std::exp(all.waters[0].depth.ln), 1e-12);
  EXPECT_LT(after.sd_ln_depth, before.sd_ln_depth);
  EXPECT_EQ(after.surface_speed.middle, before.surface_speed.middle);
  EXPECT_EQ(after.sd_ln_speed, before.sd_ln_speed);
  EXPECT_EQ(after.source, before.source);
}

// Pace: 2 h noted, 1 h 40 min afloat: 1.2 times as fast.
TEST(Learned, FromAFloatIsTheBoatsPace) {
  const Taught taught;
  const Learned all = taught({floated(100.0 / 60)});
  const double drifted = 100 / (100 + 1 / 0.0225);
  EXPECT_NEAR(pace_of(all, "green").ln, std::log(1.2) * drifted, 1e-4);  // a second's rounding in the hour
  EXPECT_EQ(pace_of(all, "red").entries, 0);
  EXPECT_LT(pace_of(taught({floated(100.0 / 60, false)}), "green").ln, pace_of(all, "green").ln);
}

TEST(Learned, DoesNotHangOnTheOrderOfTheEntries) {
  const Taught taught;
  std::vector<LogEntry> entries{sounded("The Bend", 7.0), touched("The Bend", true, 6.5), touched("The Bend", false, 5.0),
                                sounded("Mill run run", 4.0), floated(1.5)};
  const Learned first = taught(entries);
  std::mt19937 random{1};
  for (int i = 0; i < 10; ++i) {
    std::shuffle(entries.begin(), entries.end(), random);
    const Learned again = taught(entries);
    for (std::size_t w = 0; w < first.waters.size(); ++w) EXPECT_EQ(again.waters[w].depth.ln, first.waters[w].depth.ln);
    EXPECT_EQ(pace_of(again, "green").ln, pace_of(first, "green").ln);
  }
}

struct Idle {
  LogEntry entry;
  const char* why;
};
TEST(Learned, SaysWhyAnEntryTeachesNothing) {
  Taught taught;
  taught.river.spots[0].waters[0].notes[0].seen_on = std::chrono::year{2027} / 6 / 1;
  LogEntry no_flow = sounded("Mill run run", 5.0), no_fly = met("Mill run run"), wrong_way = floated(1.0), short_one = floated(0.1);
  no_flow.flow.reset();
  no_fly.bottom = true;
  std::swap(wrong_way.trip->from, wrong_way.trip->to);
  for (const Idle& idle : {Idle{sounded("Mull rin", 5.0), "no water here is called \"Mull rin\""},
                           Idle{sounded("Mill run eddy", 5.0), "Mill run has no eddy: it has run, bank"},
                           Idle{sounded("mile 5", 5.0), "has several waters: say which, run, bank"},
                           Idle{no_flow, "the flow there and then is not known"}, Idle{no_fly, "how deep the fly was"},
                           Idle{sounded("The Bend", 5.0), "the note of that water is newer"},
                           Idle{met("Mill run bank"), "no depth, no speed"}, Idle{wrong_way, "does not lie downstream"},
                           Idle{short_one, "less than ten minutes"}}) {
    const Learned all = taught({idle.entry});
    ASSERT_THAT(all.idle, SizeIs(1)) << idle.why;
    EXPECT_THAT(all.idle[0].why, HasSubstr(idle.why));
    EXPECT_THAT(all.waters, IsEmpty());
  }
}

TEST(Learned, FindsAWaterByNameIdMileAndWhatLiesAbove) {
  const Taught taught;
  const auto name_of = [&](const std::string& where) {
    const auto found = water_named(taught.river, taught.graph, where);
    return found.has_value() ? found->name + "/" + std::to_string(found->water) : found.why_absent();
  };
  EXPECT_EQ(name_of("Mill run"), "Mill run/0");  // called after its run
  EXPECT_EQ(name_of("MILL RUN bank"), "Mill run/1");
  EXPECT_EQ(name_of("Mill run 8.5"), "Mill run/0");
  EXPECT_EQ(name_of("bend"), "The Bend/0");
  EXPECT_EQ(name_of("Mill Bridge bank"), "Mill Bridge to Alder Bar/1");
  EXPECT_EQ(name_of("below Mill run bank"), "Mill Bridge to Alder Bar/1");
  EXPECT_EQ(name_of("mile 8.2 run"), "Mill run/0");
  EXPECT_THAT(name_of("mile 80 run"), HasSubstr("no water here"));
}

TEST(Learned, TellsEntriesThatSpeakAgainstEachOtherAndKeepsBoth) {
  const Taught taught;
  const Learned all = taught({sounded("The Bend", 6.0), sounded("The Bend", 6.3), sounded("The Bend", 11.0)});
  ASSERT_THAT(all.contradictions, SizeIs(2));
  EXPECT_EQ(all.contradictions[0].other, 2u);
  EXPECT_EQ(all.waters[0].depth.entries, 3);
  EXPECT_THAT(taught({touched("The Bend", true, 2.0), sounded("The Bend", 7.0)}).contradictions, SizeIs(1));
  EXPECT_THAT(taught({touched("The Bend", true, 7.0), sounded("The Bend", 6.0)}).contradictions, IsEmpty());
}

// Two hundred waters whose notes are wrong by what the model says of notes (sd of ln 0.15), ten days each of soundings
// (sd 0.10) and touches (a rig's own scatter, 0.25), at flows from half to twice the noted one: the median error of the
// corrected depth is at most half of the note's.
TEST(Learned, HalvesTheErrorOfANoteInTenDays) {
  const Taught taught;
  const NamedWater where = *water_named(taught.river, taught.graph, "The Bend");
  std::mt19937 random{2027};
  std::normal_distribution<double> unit;
  std::vector<double> before, after;
  for (int water = 0; water < 200; ++water) {
    const double truth = 0.15 * unit(random);
    std::vector<LogEntry> entries;
    for (int day = 0; day < 10; ++day) {
      const double cfs = 1800.0 * std::exp2(std::clamp(unit(random), -1.0, 1.0));
      const double depth_ft = in_feet(taught.lane_of(where, cfs).depth.middle) * std::exp(truth);
      const double fly_ft = depth_ft * std::exp(0.2 * unit(random));
      if (day % 2 == 0) entries.push_back(sounded("The Bend", depth_ft * std::exp(0.10 * unit(random)), cfs));
      if (day % 2 == 1) entries.push_back(touched("The Bend", fly_ft * std::exp(0.25 * unit(random)) > depth_ft, fly_ft, cfs));
    }
    before.push_back(std::abs(truth));
    after.push_back(std::abs(taught(entries).waters[0].depth.ln - truth));
  }
  std::ranges::sort(before);
  std::ranges::sort(after);
  RecordProperty("median_before", std::to_string(before[100]));
  RecordProperty("median_after", std::to_string(after[100]));
  EXPECT_LE(after[100], 0.5 * before[100]) << "before " << before[100] << ", after " << after[100];
}

}  // namespace
}  // namespace floatwright::testing
