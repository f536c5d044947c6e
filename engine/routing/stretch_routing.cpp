#include "engine/routing/stretch_routing.hpp"

#include <algorithm>

#include "engine/river/shares.hpp"
#include "engine/routing/mean_flow.hpp"
#include "engine/routing/network.hpp"
#include "engine/routing/wave_travel.hpp"

namespace floatwright {
namespace {

constexpr double kLongestStep = 1.3;       // C of one routed piece
constexpr double kLargestDiffusion = 2.0;  // D of one routed piece

bool long_enough(const WavePath& path, Duration dt) {
  return dt <= path.travel * kLongestStep && path.spread <= path.length * kLargestDiffusion;
}

// Short reaches are joined for routing: each is routed from the head of its piece, and the piece ends when it is long
// enough, where something joins or is taken, and at either end of a lake.
class StretchNetwork {
 public:
  StretchNetwork(const RoutingInputs& in, const StemStretch& stretch, const CaseSeries& top)
      : in_(in), stretch_(stretch), at_top_(each_case(top, mean_flow)), mean_(at_top_) {
    for (std::size_t k = stretch.from; k < stretch.to; ++k) {
      if (begins_piece(k)) add_head(k);
      add_reach(k);
    }
  }

  ReachFlows routed(const CaseSeries& top, bool& short_of_water) const {
    ReachFlows flows(stretch_.to - stretch_.from);
    const auto enter = [&](std::uint32_t element, const CaseRow& flow) {
      if (!is_head_[element]) return;
      if (element == 0) copy(top, flow);
      pass_node(in_.sides, at_[element], flow, short_of_water);
    };
    const auto leave = [&](std::uint32_t element, const CaseRow& flow) {
      if (!is_head_[element]) flows[at_[element] - stretch_.from] = each_case(flow, as_series);
    };
    route(network_, in_.fine.count, enter, leave);
    return flows;
  }

 private:
  static void copy(const CaseSeries& from, const CaseRow& to) {
    std::ranges::copy(from.low, to.low.begin());
    std::ranges::copy(from.middle, to.middle.begin());
    std::ranges::copy(from.high, to.high.begin());
  }
  static std::vector<Discharge> as_series(std::span<const Discharge> row) { return {row.begin(), row.end()}; }

  [[nodiscard]] bool begins_piece(std::size_t k) const {
    if (k == stretch_.from || anything_at(in_.sides, k)) return true;
    if (in_.reach(k).lake != in_.reach(k - 1).lake) return true;
    return !in_.reach(k).lake && long_enough(path_.middle, duration(in_.fine.step));
  }

  // Where water may join or be taken; it has no length.
  void add_head(std::size_t k) {
    path_ = {};
    mean_ = mean_below_node(in_.sides, k, mean_);
    head_ = add(k, true, last_, {});
  }

  void add_reach(std::size_t k) {
    path_ = {joined(path_.low, wave(k, mean_.low, at_top_.low)),
             joined(path_.middle, wave(k, mean_.middle, at_top_.middle)),
             joined(path_.high, wave(k, mean_.high, at_top_.high))};
    const Duration dt = duration(in_.fine.step);
    const bool in_lake = in_.reach(k).lake.has_value();
    last_ = add(k, false, head_, each_case(path_, [&](const WavePath& path) {
                  return in_lake ? reservoir_cut(path.travel, dt) : routing_cut(path, dt);
                }));
  }

  [[nodiscard]] WavePath wave(std::size_t k, Discharge whole, Discharge at_top) const {
    const Reach& reach = in_.reach(k);
    return reach_wave(in_.river, reach, own_flow(in_.river, reach, whole), at_top).path;
  }

  std::optional<std::uint32_t> add(std::size_t k, bool head, std::optional<std::uint32_t> from,
                                   const PerCase<RoutingCut>& cut) {
    at_.push_back(k);
    is_head_.push_back(head);
    if (!from) return network_.add({}, cut);
    return network_.add(std::array{*from}, cut);
  }

  const RoutingInputs& in_;
  const StemStretch& stretch_;
  PerCase<Discharge> at_top_, mean_;
  PerCase<WavePath> path_{};
  std::optional<std::uint32_t> head_, last_;  // elements of the network: heads of pieces, and reaches
  RoutingNetwork network_;
  std::vector<std::size_t> at_;  // by element, index into the stem
  std::vector<bool> is_head_;
};

}  // namespace

ReachFlows routed_down(const RoutingInputs& in, const StemStretch& stretch, const CaseSeries& top,
                       std::vector<std::string>& doubts) {
  bool dry = false;
  ReachFlows flows = StretchNetwork(in, stretch, top).routed(top, dry);
  const std::string sentence = "A diversion is typed to take more than the river carries: all of it is taken.";
  if (dry && std::ranges::find(doubts, sentence) == doubts.end()) doubts.push_back(sentence);
  return flows;
}

}  // namespace floatwright
