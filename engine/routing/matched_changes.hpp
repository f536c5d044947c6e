#pragma once
// The same change of flow seen at two gauges, one above the other: found by what lag the two records move together,
// then each change with its nearest.
#include <optional>
#include <vector>

#include "engine/routing/flow_changes.hpp"

namespace floatwright {

struct MatchedChange {
  FlowChange above, below;

  [[nodiscard]] Duration lag() const { return duration(below.half_way - above.half_way); }
  [[nodiscard]] Discharge flow() const { return front_flow(above.before, above.after); }
};

// Two records on one row of instants: straight lines between rows, none across a gap.
struct PairedFlows {
  TimeGrid grid;
  std::vector<double> above, below;  // m3/s; NaN where not known
};
// From the later first row to the earlier last one, at the longer of the two usual steps; empty where they never ran
// together.
[[nodiscard]] PairedFlows paired_flows(const Series<Discharge>& above, const Series<Discharge>& below);

struct MovesTogether {
  Duration lag;              // of the lower record behind the upper one; negative: it leads
  double correlation = 0.0;  // of the two records' changes over `window` at that lag
};
// The lag from `earliest` to `latest` at which the changes of flow over a window (a step at the least) are most alike;
// none for records without change.
[[nodiscard]] std::optional<MovesTogether> moves_together(const PairedFlows& flows, Duration earliest, Duration latest,
                                                          Duration window);

// Pairs of one direction whose sizes, the lower one over `usual_ratio`, are within a factor of two and whose lag is
// within 40 % of `about` (at least 1.5 h and 1.5 `step`); nearest pairs first, each change once. In the order of time.
[[nodiscard]] std::vector<MatchedChange> matched_changes(const std::vector<FlowChange>& above,
                                                         const std::vector<FlowChange>& below, Duration about,
                                                         double usual_ratio, Period step);

}  // namespace floatwright
