#pragma once
// All that `tune` finds: what plans read, what belongs to the river, and how good each part was on records that it was
// not fitted to. Each list at most one entry a gauge, or a pair of gauges.
#include <vector>

#include "engine/forecast/flow_report.hpp"
#include "engine/river/river.hpp"
#include "engine/routing/tune_lag.hpp"
#include "engine/temperature/temperature_report.hpp"
#include "engine/trip/tuned.hpp"
#include "engine/water/tune_channel.hpp"

namespace floatwright {

struct TuningReports {
  std::vector<FlowReport> flows;
  std::vector<FlowReport> daily_flows;
  std::vector<TemperatureReport> temperatures;
  std::vector<LagReport> lags;
  std::vector<ChannelReport> channels;
};

struct Tuning {
  Tuned tuned;
  std::vector<FittedLag> lags;
  std::vector<FittedChannel> channels;
  TuningReports reports;
};

}  // namespace floatwright
