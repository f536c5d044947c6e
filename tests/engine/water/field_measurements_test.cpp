// One measurement carried to other flows, against 129 field measurements at one gauge of the US Geological Survey
// (01096500, 1984 to 2005, 0.7 to 317 m3/s). They were made at different sections, so their scatter is real.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>
#include <string>

#include "engine/water/channel.hpp"

namespace floatwright {
namespace {

std::vector<ChannelMeasurement> field_measurements() {
  std::ifstream file(FLOATWRIGHT_SOURCE_DIR
                     "/fixtures/recorded/usgs-field-measurements/measurements_01096500_1984_2005.csv");
  std::vector<ChannelMeasurement> rows;
  std::string line;
  std::getline(file, line);  // site,date,discharge_m3s,mean_depth_m,velocity_m_s,top_width_m
  while (std::getline(file, line)) {
    std::istringstream cells(line);
    std::string site, date, flow, depth, speed, top;
    std::getline(cells, site, ',') && std::getline(cells, date, ',') && std::getline(cells, flow, ',') &&
        std::getline(cells, depth, ',') && std::getline(cells, speed, ',') && std::getline(cells, top);
    rows.push_back({cubic_metres_per_second(std::stod(flow)), metres(std::stod(top)), metres(std::stod(depth)),
                    mean_metres_per_second(std::stod(speed))});
  }
  return rows;
}

double median(std::vector<double> values) {
  std::ranges::nth_element(values, values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2));
  return values[values.size() / 2];
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
