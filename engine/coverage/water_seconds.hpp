#pragma once
// The lines' seconds in every water of a reach at the flow and temperature of any past day: worked out on a grid of flows
// and of temperatures 2 C apart, the nodes that the record comes near, and read from it along straight lines in the
// logarithm of flow and in temperature. Swings and strips change smoothly with flow, so that nodes 10 % apart serve; under
// an indicator the leader goes by half feet, so that the other methods have nodes 2.5 % apart. Shares by such
// nodes are within 1 % of those of every day worked out by itself; the wider ones move the demo's by less than 1 % more
// (docs/accuracy.md).
#include <cstdint>
#include <map>
#include <tuple>

#include "engine/coverage/line_seconds.hpp"
#include "engine/coverage/reach_days.hpp"

namespace floatwright {

struct FishedWater {
  std::string why_unknown{};  // not empty: depth or way of fishing unknown there at such a flow
  SecondsByMethod seconds{};  // with a hatch on, which only dry flies ask for
};

class WaterSeconds {
 public:
  WaterSeconds(const RecordAsked& asked, const ReachDays& record, const LinesAtHand& lines);

  // Nodes of a few flows of one water together. Each run once before at(); threads may work at different runs.
  [[nodiscard]] std::size_t runs() const { return runs_.size(); }
  void work_out(std::size_t run);

  // `water`: index into waters_of the reach.
  [[nodiscard]] FishedWater at(const ReachDay& day, std::size_t water) const;

 private:
  // One flow: reach, water, steps of flow; and what was found by steps of temperature, kUnknownWarmth for one that is not
  // known.
  using Node = std::tuple<WaysFished, std::size_t, std::size_t, int>;
  using ByWarmth = std::map<int, FishedWater>;
  struct Corner {
    Node node;
    int warmth;
    double weight = 0.0;
  };
  static constexpr int kUnknownWarmth = INT32_MIN;
  [[nodiscard]] static std::vector<Corner> corners(WaysFished ways, const ReachDay& day, std::size_t water);
  void add_between(FishedWater& sum, const std::vector<Corner>& around) const;
  const RecordAsked& asked_;
  const ReachDays& record_;
  const LinesAtHand& lines_;
  std::map<Node, ByWarmth> found_;
  using FoundNode = std::map<Node, ByWarmth>::iterator;
  std::vector<std::vector<FoundNode>> runs_;
};

// One water of one reach at a flow that is known, as a plan meets it, but at no hour and in no light; Absent with why
// nothing can be fished there. `warmth` none: not known.
[[nodiscard]] Measured<WaterToFish> water_at(const RecordAsked& asked, const Passage& passage, std::size_t water,
                                             Discharge flow, std::optional<Temperature> warmth);

}  // namespace floatwright
