#pragma once
// A generated river system: all shapes of a river with so many sources are equally likely (random topology, Shreve
// 1966, from memory), a few reaches divide and join again, and numbers are dealt at random, as in a file nobody sorted.
#include <algorithm>
#include <numeric>
#include <random>

#include "engine/river/flow_order.hpp"
#include "engine/routing/network.hpp"

namespace floatwright {

struct RandomSystem {
  std::size_t reaches = 0;
  std::vector<FlowEdge> edges;
};

// A walk of +1 (a source) and -1 (a confluence) that stays over 0 is a river from its sources down. Of all turns of a
// walk that ends at 1 just one is such: the one that begins after its last lowest point (cycle lemma).
inline std::vector<int> river_walk(std::size_t sources, std::mt19937_64& deal) {
  std::vector<int> walk(2 * sources - 1, -1);
  std::fill_n(walk.begin(), sources, 1);
  std::shuffle(walk.begin(), walk.end(), deal);
  int height = 0, lowest = 1;
  std::size_t start = 0;
  for (std::size_t i = 0; i < walk.size(); ++i) {
    height += walk[i];
    if (height <= lowest) lowest = height, start = i + 1;
  }
  std::rotate(walk.begin(), walk.begin() + static_cast<std::ptrdiff_t>(start % walk.size()), walk.end());
  return walk;
}

inline void shuffle(RandomSystem& system, std::mt19937_64& deal) {
  std::vector<std::size_t> number(system.reaches);
  std::iota(number.begin(), number.end(), std::size_t{0});
  std::shuffle(number.begin(), number.end(), deal);
  for (auto& [from, into] : system.edges) from = number[from], into = number[into];
  std::shuffle(system.edges.begin(), system.edges.end(), deal);
}

// `splits` is the share of confluences below which the river runs in two threads for a reach.
inline RandomSystem random_system(std::size_t sources, double splits, std::mt19937_64& deal) {
  RandomSystem system;
  std::vector<std::size_t> ends;  // reaches that nothing runs on from yet
  for (const int kind : river_walk(sources, deal)) {
    const std::size_t reach = system.reaches++;
    for (int inlet = 0; kind < 0 && inlet < 2; ++inlet) {
      system.edges.emplace_back(ends.back(), reach);
      ends.pop_back();
    }
    ends.push_back(reach);
    if (kind > 0 || !std::bernoulli_distribution(splits)(deal)) continue;
    const std::size_t joined = reach + 3;
    for (const std::size_t thread : {reach + 1, reach + 2}) {
      system.edges.emplace_back(reach, thread);
      system.edges.emplace_back(thread, joined);
    }
    system.reaches += 3;
    ends.back() = joined;
  }
  shuffle(system, deal);
  return system;
}

struct DownstreamSystem {
  std::vector<std::size_t> reach;  // as numbered in the system, downstream
  RoutingNetwork network;          // numbered downstream; its cuts are for the caller
  std::vector<double> share;       // of what comes to its head: threads share alike
};

inline DownstreamSystem downstream(const RandomSystem& system) {
  DownstreamSystem down{flow_order(system.reaches, system.edges).order, {}, {}};
  std::vector<std::uint32_t> place(system.reaches);
  for (std::size_t i = 0; i < down.reach.size(); ++i) place[down.reach[i]] = static_cast<std::uint32_t>(i);
  auto& first = down.network.first_inlet;
  first.assign(system.reaches + 1, 0);
  for (const auto& [from, into] : system.edges) ++first[place[into] + 1];
  std::partial_sum(first.begin(), first.end(), first.begin());
  std::vector<std::uint32_t> next(first.begin(), first.end() - 1);
  down.network.inlets.resize(system.edges.size());
  for (const auto& [from, into] : system.edges) down.network.inlets[next[place[into]]++] = place[from];
  down.network.cuts.resize(system.reaches);
  std::vector<int> threads(system.reaches, 0);
  for (const std::uint32_t inlet : down.network.inlets) ++threads[inlet];
  for (std::size_t r = 0; r < system.reaches; ++r)
    down.share.push_back(first[r] == first[r + 1] ? 1.0 : 1.0 / threads[down.network.inlets[first[r]]]);
  return down;
}

}  // namespace floatwright
