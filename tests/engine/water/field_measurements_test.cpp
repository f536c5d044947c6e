// One measurement carried to other flows, against 129 field measurements at one gauge of the US Geological Survey
// (01096500, 1984 to 2005, 0.7 to 317 m3/s). They were made at different sections, so their scatter is real.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <fstream>
#include <sstream>
#include <string>

#include "engine/statistics/quantile.hpp"
#include "engine/water/channel.hpp"
#include "engine/water/tune_channel.hpp"

namespace floatwright {
namespace {

struct Row {
  std::string date;
  ChannelMeasurement channel;
};

std::vector<Row> dated_rows() {
  std::ifstream file(FLOATWRIGHT_SOURCE_DIR
                     "/fixtures/recorded/usgs-field-measurements/measurements_01096500_1984_2005.csv");
  std::vector<Row> rows;
  std::string line;
  std::getline(file, line);  // site,date,discharge_m3s,mean_depth_m,velocity_m_s,top_width_m
  while (std::getline(file, line)) {
    std::istringstream cells(line);
    std::string site, date, flow, depth, speed, top;
    std::getline(cells, site, ',') && std::getline(cells, date, ',') && std::getline(cells, flow, ',') &&
        std::getline(cells, depth, ',') && std::getline(cells, speed, ',') && std::getline(cells, top);
    rows.push_back({date, {cubic_metres_per_second(std::stod(flow)), metres(std::stod(top)), metres(std::stod(depth)),
                           mean_metres_per_second(std::stod(speed))}});
  }
  return rows;
}

std::vector<ChannelMeasurement> field_measurements() {
  std::vector<ChannelMeasurement> rows;
  for (const Row& row : dated_rows()) rows.push_back(row.channel);
  return rows;
}

std::vector<FieldMeasurement> visits() {
  std::vector<FieldMeasurement> out;
  for (const auto& [date, m] : dated_rows()) {
    const std::chrono::year_month_day day{std::chrono::year(std::stoi(date.substr(0, 4))),
                                          std::chrono::month(static_cast<unsigned>(std::stoi(date.substr(5, 2)))),
                                          std::chrono::day(static_cast<unsigned>(std::stoi(date.substr(8, 2))))};
    FieldMeasurement visit;
    visit.visit = date;
    visit.time = Instant{std::chrono::sys_days{day}};
    visit.discharge = m.discharge;
    visit.channels.emplace_back();
    visit.channels[0].width = m.width;
    visit.channels[0].area = square_metres(m.width.si() * m.mean_depth.si());
    visit.channels[0].speed = m.mean_speed;
    out.push_back(visit);
  }
  return out;
}

// Median over all starting measurements of the median |ln(predicted/measured)| at all the others' flows.
template <class Predict>
double typical_miss(const Predict& predicted_over_measured) {
  const auto rows = field_measurements();
  std::vector<double> of_each_start;
  for (const auto& start : rows) {
    std::vector<double> misses;
    for (const auto& row : rows) misses.push_back(std::abs(std::log(predicted_over_measured(start, row))));
    of_each_start.push_back(median(misses));
  }
  return median(of_each_start);
}

// The aims of the project: no worse than plain least squares in logarithms, the stated spread holding 80 +- 8 %.
TEST(FieldMeasurements, OfTheEarlierHalfForetellTheLaterOnes) {
  const auto all = visits();
  const ChannelTuning tuning = tune_channel({"01096500", all});
  ASSERT_TRUE(tuning.report.skill.has_value());
  const ChannelSkill& skill = *tuning.report.skill;
  EXPECT_EQ(skill.judged, 65);
  EXPECT_LE(skill.depth_error, skill.plain_depth_error);
  EXPECT_LE(skill.speed_error, skill.plain_speed_error);
  EXPECT_NEAR(skill.speed_held, 0.80, 0.08);
  EXPECT_NEAR(skill.depth_held, 0.80, 0.08);
}

TEST(FieldMeasurements, ThatContradictThemselvesAreListed) {
  // 1990-02-13: 29.87 m x 1.067 m x 0.472 m/s is 15.05 m3/s, and 30.58 stands beside it.
  const auto all = visits();
  const ChannelTuning tuning = tune_channel({"01096500", all});
  ASSERT_FALSE(tuning.report.left_out.empty());
  EXPECT_EQ(tuning.report.left_out.front().visit, "1990-02-13");
  EXPECT_EQ(tuning.report.visits + static_cast<int>(tuning.report.left_out.size()), 129);
}

// The guess from nothing but the ground drained (435 mi2, from memory), within what is said of it: sd of ln 0.30, so that
// four in five are within a factor of 1.47. Of depths they are; the speed is a quarter too high at the median.
TEST(FieldMeasurements, AreMetByTheGuessFromDrainageArea) {
  const Channel guess = channel_from_area(square_miles(435.0));
  std::vector<double> depth, speed;
  for (const ChannelMeasurement& row : field_measurements()) {
    depth.push_back(std::log(mean_depth(guess, row.discharge) / row.mean_depth));
    speed.push_back(std::log(mean_speed(guess, row.discharge) / row.mean_speed));
  }
  const auto held = [](const std::vector<double>& misses) {
    return double(std::ranges::count_if(misses, [](double miss) { return std::abs(miss) < 1.2816 * 0.30; })) / double(misses.size());
  };
  EXPECT_NEAR(held(depth), 0.80, 0.08);
  EXPECT_GT(held(speed), 0.65);
  EXPECT_NEAR(median(depth), 0.0, 0.15);
  EXPECT_NEAR(median(speed), 0.25, 0.05);
}

TEST(FieldMeasurements, AreAllRead) { EXPECT_EQ(field_measurements().size(), 129u); }

TEST(FieldMeasurements, OneOfThemTellsDepthAndSpeedAtOtherFlowsToAQuarter) {
  const double depth = typical_miss([](const ChannelMeasurement& start, const ChannelMeasurement& row) {
    return mean_depth(channel_through(start), row.discharge) / row.mean_depth;
  });
  const double speed = typical_miss([](const ChannelMeasurement& start, const ChannelMeasurement& row) {
    return mean_speed(channel_through(start), row.discharge) / row.mean_speed;
  });
  EXPECT_LT(depth, 0.25);
  EXPECT_LT(speed, 0.25);
}

TEST(FieldMeasurements, AreMetTwiceAsWellAsByADepthThatNeverChanges) {
  const double with_flow = typical_miss([](const ChannelMeasurement& start, const ChannelMeasurement& row) {
    return mean_depth(channel_through(start), row.discharge) / row.mean_depth;
  });
  const double unchanged = typical_miss(
      [](const ChannelMeasurement& start, const ChannelMeasurement& row) { return start.mean_depth / row.mean_depth; });
  EXPECT_LT(with_flow, 0.5 * unchanged);
}

}  // namespace
}  // namespace floatwright
