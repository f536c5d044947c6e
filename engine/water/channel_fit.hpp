#pragma once
// The channel's power laws through many field measurements, not bent by those that belong to it no more than a slip of
// the pen does; and which measurements were made at another section of the river, where their widths say so.
#include <cstddef>
#include <span>
#include <vector>

#include "engine/water/channel.hpp"

namespace floatwright {

struct RobustChannel {
  Channel channel;                    // `least` and `most`: of the measurements it stands on
  std::vector<std::size_t> outliers;  // indices of those left aside, ascending
};

// Left aside is what lies over eight robust standard deviations (1.4826 times the median distance) off a Theil-Sen line
// of width, depth or speed, in logarithms, and over five where a factor of three parts its flow from the rest; through
// what is left least squares, b + f + m = 1 and a c k = 1 exactly (channel_through). Eight, since visits to several
// sections scatter widely without being wrong: a stricter cut foretold later visits worse. At least one row, all over 0.
[[nodiscard]] RobustChannel robust_channel(std::span<const ChannelMeasurement> measured);

// Indices of the measurements by section, the most visited first; ascending in each. Two sections are told apart where
// the widths less their common law fall into two groups of 8 visits or more whose means are a factor of 1.2 apart or
// more and 3.3 times their pooled standard deviation (one normal law cut in two: 2.7); each group is looked at again.
[[nodiscard]] std::vector<std::vector<std::size_t>> sections_by_width(std::span<const ChannelMeasurement> measured);

}  // namespace floatwright
