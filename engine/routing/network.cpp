#include "engine/routing/network.hpp"

#include <algorithm>

#include "engine/routing/piece_pass.hpp"

namespace floatwright {
namespace {

// Rows that are in use, and those that wait to be used again.
class RowStore {
 public:
  explicit RowStore(std::size_t steps) : steps_(steps) {}

  // Its flows are what was left there.
  std::uint32_t take() {
    if (idle_.empty()) {
      rows_.emplace_back(3 * steps_);
      return static_cast<std::uint32_t>(rows_.size() - 1);
    }
    const std::uint32_t row = idle_.back();
    idle_.pop_back();
    return row;
  }
  void give_back(std::uint32_t row) { idle_.push_back(row); }
  std::span<Discharge> all_cases(std::uint32_t row) { return rows_[row]; }
  CaseRow by_case(std::uint32_t row) {
    const std::span<Discharge> all = rows_[row];
    return {all.subspan(0, steps_), all.subspan(steps_, steps_), all.subspan(2 * steps_, steps_)};
  }

 private:
  std::size_t steps_;
  std::vector<std::vector<Discharge>> rows_;
  std::vector<std::uint32_t> idle_;
};

void pass_reach(const CaseRow& flow, const PerCase<RoutingCut>& cut) {
  constexpr MuskingumWeights kThrough{1.0, 0.0, 0.0};  // a case that needs fewer pieces waits for the others
  const std::size_t pieces = std::max({cut.low.pieces, cut.middle.pieces, cut.high.pieces});
  for (std::size_t piece = 0; piece < pieces; ++piece) {
    const auto weights = [&](const RoutingCut& c) { return piece < c.pieces ? c.weights : kThrough; };
    pass_piece<3>({flow.low, flow.middle, flow.high}, {weights(cut.low), weights(cut.middle), weights(cut.high)},
                  {flow.low[0], flow.middle[0], flow.high[0]});
  }
}

class Run {
 public:
  Run(const RoutingNetwork& network, std::size_t steps)
      : network_(network), rows_(steps), row_of_(network.size()), takers_(network.size(), 0) {
    for (const std::uint32_t inlet : network.inlets) ++takers_[inlet];
  }

  void reach(std::uint32_t r, const AtReach& at_head, const AtReach& at_foot) {
    const std::uint32_t row = inflow_of(r);
    const CaseRow flow = rows_.by_case(row);
    at_head(r, flow);
    pass_reach(flow, network_.cuts[r]);
    at_foot(r, flow);
    row_of_[r] = row;
    if (takers_[r] == 0) rows_.give_back(row);
  }

 private:
  // The row of an inlet that nobody else waits for is used on; else a new one.
  std::uint32_t inflow_of(std::uint32_t r) {
    const auto first = network_.inlets.begin() + network_.first_inlet[r];
    const auto last = network_.inlets.begin() + network_.first_inlet[r + 1];
    const auto mine = std::find_if(first, last, [&](std::uint32_t inlet) { return takers_[inlet] == 1; });
    const std::uint32_t row = mine == last ? rows_.take() : row_of_[*mine];
    if (mine == last) std::ranges::fill(rows_.all_cases(row), Discharge{});
    for (auto inlet = first; inlet != last; ++inlet) {
      --takers_[*inlet];
      if (inlet == mine) continue;
      add_to(rows_.all_cases(row), rows_.all_cases(row_of_[*inlet]));
      if (takers_[*inlet] == 0) rows_.give_back(row_of_[*inlet]);
    }
    return row;
  }

  const RoutingNetwork& network_;
  RowStore rows_;
  std::vector<std::uint32_t> row_of_, takers_;  // by reach; how many reaches have yet to take from it
};

}  // namespace

void add_to(std::span<Discharge> sum, std::span<const Discharge> more) {
  for (std::size_t i = 0; i < sum.size(); ++i) sum[i] = sum[i] + more[i];
}

std::uint32_t RoutingNetwork::add(std::span<const std::uint32_t> from, const PerCase<RoutingCut>& cut) {
  inlets.insert(inlets.end(), from.begin(), from.end());
  first_inlet.push_back(static_cast<std::uint32_t>(inlets.size()));
  cuts.push_back(cut);
  return static_cast<std::uint32_t>(cuts.size() - 1);
}

void route(const RoutingNetwork& network, std::size_t steps, const AtReach& at_head, const AtReach& at_foot) {
  Run run(network, steps);
  for (std::uint32_t r = 0; r < network.size(); ++r) run.reach(r, at_head, at_foot);
}

}  // namespace floatwright
