#pragma once
// A river system as arrays in downstream order, routed in three cases at once: all steps of a reach, then the next
// reach. A row of flows lives from the head of its reach until the last reach below has taken it, so a system in the
// order of flow_order (engine/river/flow_order.hpp) holds few rows at a time and these stay in the cache, however large
// it is. Linear: the cuts are fixed for a run.
#include <cstdint>
#include <functional>
#include <span>
#include <vector>

#include "engine/routing/muskingum.hpp"
#include "engine/units/per_case.hpp"

namespace floatwright {

struct RoutingNetwork {
  std::vector<std::uint32_t> first_inlet{0};  // reach r takes from inlets[first_inlet[r]] to before first_inlet[r + 1]
  std::vector<std::uint32_t> inlets;          // reaches, each before the one it runs into
  std::vector<PerCase<RoutingCut>> cuts;      // by reach

  [[nodiscard]] std::size_t size() const { return cuts.size(); }
  // The next reach in downstream order; gives its number. `from` are numbers given before.
  std::uint32_t add(std::span<const std::uint32_t> from, const PerCase<RoutingCut>& cut);
};

// Step by step; `more` is as long as `sum`.
void add_to(std::span<Discharge> sum, std::span<const Discharge> more);

using CaseRow = PerCase<std::span<Discharge>>;  // one flow by step
using AtReach = std::function<void(std::uint32_t reach, const CaseRow& flow)>;

// Every reach from a steady state at its first inflow. `at_head` gets the sum of what the inlets bring and makes of it
// what enters: a share where the river splits, what joins, what is taken. `at_foot` gets the outflow; the row is gone
// when it returns. `steps` is over 0.
void route(const RoutingNetwork& network, std::size_t steps, const AtReach& at_head, const AtReach& at_foot);

}  // namespace floatwright
