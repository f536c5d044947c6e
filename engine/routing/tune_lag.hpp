#pragma once
// How long a change of flow takes between two gauges, fitted to their records: the lag of every rise and fall seen at
// both, as t(Q) = t0 (Q0/Q)^m, and a multiplier of the channel's diffusion. Judged on the later half of the record by
// what was fitted to the earlier one; what is handed on is fitted to all of it.
#include <optional>
#include <string>
#include <vector>

#include "engine/readings/gauge_record.hpp"
#include "engine/river/graph.hpp"
#include "engine/units/measured.hpp"

namespace floatwright {

struct LagTuningInputs {
  const River& river;
  const RiverGraph& graph;
  std::size_t upper = 0, lower = 0;  // into River::gauges
  const Series<Discharge>& above;    // their records, of any step
  const Series<Discharge>& below;
};

// How near the hours of the rises were told. A rise is what catches people; falls are not counted here.
struct RiseScore {
  int rises = 0;
  Duration median_error;
  double within_quarter_hour = 0.0;  // share of the rises, 0 to 1
  double within_margin = 0.0;        // share between the earliest and latest told without the least quarter hour:
                                     // 0.85 to 1.2 times the lag, by the channel alone 0.8 to 1.6
  double before_earliest = 0.0;      // share that came before the earliest a plan tells, the quarter hour included
};
// Of the lower gauge's flow by the upper one's, with the water that enters between as a centred 24 h mean of the
// difference (so it is no forecast), or, of records in steps over 6 h, by the ratio of the means of the fitted part.
struct RoutedScore {
  Measured<double> nash_sutcliffe, kling_gupta;
};

struct LagReport {
  std::string from, to;  // ids of the gauges
  Length apart;
  Discharge least_change;                           // what counts as one at the upper gauge
  int changes = 0;                                  // seen at both gauges, in the whole record
  Instant used_from{}, judged_from{}, judged_to{};  // fitted from the first to the second, judged on the rest
  int rises_above = 0;                    // at the upper gauge in the judged part, also those not seen again below
  RiseScore tuned, constant, by_channel;  // constant: one lag for every flow; by_channel: distance and geometry alone
  RoutedScore unrouted, routed, brought_down;  // as it was above; linear, as the river is; flow by flow (from_above)
  std::vector<std::string> notes;              // sentences: a month missing, a lag that changed, why there is none
};

struct LagTuning {
  Measured<FittedLag> lag;
  std::optional<FittedLag> of_first_half;  // what could be known at the record's middle
  LagReport report;
};

inline constexpr int kLeastChanges = 5;

[[nodiscard]] LagTuning tune_lag(const LagTuningInputs& in);

}  // namespace floatwright
