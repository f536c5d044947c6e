#pragma once
// `tune geometry`: a gauge's field measurements to the power laws of its channel, with how far they can be trusted.
// Judged first: fitted to the earlier half of the visits, foretelling the later half from its flows alone, beside plain
// least squares in logarithms. What is given is then fitted to all.
#include <optional>
#include <string>
#include <vector>

#include "engine/river/river.hpp"
#include "engine/units/measured.hpp"
#include "engine/water/measured_visits.hpp"

namespace floatwright {

inline constexpr int kLeastVisits = 8;  // judgement; fewer give no law

// Of the later half; errors are medians of |ln(foretold/measured)|.
struct ChannelSkill {
  int fitted = 0, judged = 0;  // visits
  Instant from{};              // the first visit judged
  double depth_error = 0.0, speed_error = 0.0;
  double plain_depth_error = 0.0, plain_speed_error = 0.0;  // of plain least squares
  double depth_held = 0.0, speed_held = 0.0;  // share of visits in the 10-90 spread that the earlier half stated
};

struct ChannelReport {
  std::string gauge;
  int visits = 0;                             // sound ones
  std::optional<ChannelSkill> skill;          // none: `notes` say why
  std::vector<FittedChannel> other_sections;  // told apart by width, the most visited first; no plan uses them
  std::vector<VisitLeftOut> left_out;         // before fitting
  std::vector<VisitLeftOut> outliers;         // too far off their section's law (channel_fit.hpp)
  std::vector<std::string> notes;             // phrases: why there is no law, why it was not judged
};

struct ChannelTuning {
  Measured<FittedChannel> channel;  // of the section visited most
  ChannelReport report;
};

struct ChannelTuningInputs {
  std::string gauge;  // its id in river.json
  const std::vector<FieldMeasurement>& visits;  // of that gauge alone, in any order
};

// The stated spread (sd_ln_depth, sd_ln_speed) is the 80th percentile of the errors over 1.2816 when each half of the
// visits is foretold from the other, so that a bed that moves is in it; of the most visited section all visits, of
// another its own.
[[nodiscard]] ChannelTuning tune_channel(const ChannelTuningInputs& inputs);

}  // namespace floatwright
