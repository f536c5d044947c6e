#pragma once
// Fits the forecast from daily means to a gauge's record and says how good it has been: fitted to the first half,
// judged on the second, each day by what was known at its end. What is kept is then fitted to the whole record.
#include <string>
#include <vector>

#include "engine/forecast/flow_report.hpp"
#include "engine/forecast/tuned_daily_flow.hpp"
#include "engine/readings/gauge_record.hpp"

namespace floatwright {

struct DailyMeansOf {
  std::string gauge, station;
  Series<Discharge> means;  // dates as 00:00Z
};

struct DailyTuningInputs {
  DailyMeansOf own;
  // Gauges up the river, nearest first. Of the first two the one is used with which the forecast errs least on the
  // fitting part, left out by turns in five blocks, and none where neither helps there.
  std::vector<DailyMeansOf> above = {};
  Instant made_on{};
};

struct DailyTuning {
  Measured<TunedDailyFlow> tuned;  // Absent where the record is too short to be judged
  FlowReport report;               // rows of one day and two; Falling stands for falling or steady
};

[[nodiscard]] DailyTuning tune_daily_flow(const DailyTuningInputs& in);

}  // namespace floatwright
