#include "engine/routing/network.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "random_network.hpp"

namespace floatwright {
namespace {

constexpr Duration kStep = Duration::from_si(900.0);
constexpr std::size_t kSteps = 500;

double even(std::mt19937_64& deal, double low, double high) { return std::uniform_real_distribution(low, high)(deal); }

WavePath drawn_path(std::mt19937_64& deal) {
  const double length = std::exp(even(deal, 5.0, 8.5));  // m
  return {metres(length), seconds(length / even(deal, 0.5, 3.0)), metres(std::exp(even(deal, 2.0, 8.0)))};
}

// Every river of its own shape, with reaches from far under a step to several, and another celerity in each case.
RandomSystem drawn_system(int seed) {
  std::mt19937_64 deal(static_cast<unsigned>(seed));
  return random_system(15 + static_cast<std::size_t>(seed), 0.3, deal);
}
void draw_cuts(DownstreamSystem& down) {
  for (std::size_t r = 0; r < down.reach.size(); ++r) {
    std::mt19937_64 deal(down.reach[r] + 1);  // by the reach's own number, whatever its place in the order
    const auto cut = [&] { return routing_cut(drawn_path(deal), kStep); };
    down.network.cuts[r] = {cut(), cut(), cut()};
  }
}

// What enters reach `r` beside what comes from above: a steady flow and one flood, another in each case.
Discharge hillside(std::size_t reach, std::size_t step, double factor) {
  const double begins = 60.0 + static_cast<double>(reach % 7) * 5.0, t = (static_cast<double>(step) - begins) / 6.0;
  return cubic_metres_per_second(factor * (0.2 + static_cast<double>(reach % 5) * std::exp(-t * t)));
}

struct Balance {
  double entered = 0.0, taken = 0.0, left = 0.0, least = 1e300;  // m3/s summed over steps, over every case
  std::vector<Discharge> at_mouth;
};

// Every ninth reach is bled of up to 2 m3/s at its head, or of all there is.
Balance run(const DownstreamSystem& down, std::size_t mouth) {
  Balance sum;
  const auto enter = [&](std::uint32_t r, const CaseRow& flow) {
    const std::size_t reach = down.reach[r];
    for (const auto& [row, factor] : {std::pair{flow.low, 0.7}, {flow.middle, 1.0}, {flow.high, 1.6}})
      for (std::size_t i = 0; i < row.size(); ++i) {
        const Discharge more = hillside(reach, i, factor);
        const Discharge there = row[i] * down.share[r] + more;
        const Discharge kept = reach % 9 == 0 ? std::max(there - cubic_metres_per_second(2.0), Discharge{}) : there;
        sum.entered += more.si();
        sum.taken += (there - kept).si();
        row[i] = kept;
      }
  };
  const auto leave = [&](std::uint32_t r, const CaseRow& flow) {
    for (const auto row : {flow.low, flow.middle, flow.high})
      for (const Discharge q : row) {
        sum.least = std::min(sum.least, q.si());
        if (down.reach[r] == mouth) sum.left += q.si();
      }
    if (down.reach[r] == mouth) sum.at_mouth.assign(flow.high.begin(), flow.high.end());
  };
  route(down.network, kSteps, enter, leave);
  return sum;
}

// From one steady state through a flood and back to it the river holds what it held: all that entered has left.
TEST(Network, KeepsItsWaterToRoundOffInRandomRiversWithSplitsAndDiversions) {
  for (int seed = 0; seed < 8; ++seed) {
    DownstreamSystem down = downstream(drawn_system(seed));
    draw_cuts(down);
    const Balance sum = run(down, down.reach.back());
    EXPECT_NEAR(sum.left, sum.entered - sum.taken, 1e-9 * sum.entered) << "river " << seed;
    EXPECT_GT(sum.taken, 0.0) << "river " << seed;
    EXPECT_GE(sum.least, 0.0) << "river " << seed;
  }
}
TEST(Network, DoesNotDependOnTheOrderItsReachesAreGivenIn) {
  for (int seed = 0; seed < 6; ++seed) {
    RandomSystem system = drawn_system(seed);
    DownstreamSystem one = downstream(system);
    std::mt19937_64 deal(3);
    std::ranges::shuffle(system.edges, deal);
    DownstreamSystem other = downstream(system);
    draw_cuts(one);
    draw_cuts(other);
    const auto a = run(one, one.reach.back()).at_mouth, b = run(other, one.reach.back()).at_mouth;
    ASSERT_EQ(a.size(), b.size());
    for (std::size_t i = 0; i < a.size(); ++i) ASSERT_NEAR(a[i].si(), b[i].si(), 1e-9 * a[i].si()) << seed;
  }
}
TEST(Network, RoutesEachCaseAsIfItWereAlone) {
  std::mt19937_64 deal(5);
  const WavePath low = drawn_path(deal), middle = drawn_path(deal), high{};
  const std::vector<Discharge> inflow = [] {
    std::vector<Discharge> flow;
    for (std::size_t i = 0; i < 200; ++i) flow.push_back(hillside(3, i, 1.0));
    return flow;
  }();
  RoutingNetwork network;
  network.add({}, {routing_cut(low, kStep), routing_cut(middle, kStep), routing_cut(high, kStep)});
  const auto enter = [&](std::uint32_t, const CaseRow& flow) {
    for (const auto row : {flow.low, flow.middle, flow.high}) std::ranges::copy(inflow, row.begin());
  };
  const auto leave = [&](std::uint32_t, const CaseRow& flow) {
    EXPECT_TRUE(std::ranges::equal(flow.low, routed(inflow, low, kStep)));
    EXPECT_TRUE(std::ranges::equal(flow.middle, routed(inflow, middle, kStep)));
    EXPECT_TRUE(std::ranges::equal(flow.high, inflow));  // no travel
  };
  route(network, inflow.size(), enter, leave);
}
// A row that two threads wait for is neither spoiled by the first nor lost to the second.
TEST(Network, LetsSeveralReachesTakeFromOne) {
  RoutingNetwork network;
  const auto top = network.add({}, {});
  const auto left = network.add(std::array{top}, {}), right = network.add(std::array{top}, {});
  const auto below = network.add(std::array{left, right}, {});
  std::vector<double> seen;
  route(
      network, 2,
      [&](std::uint32_t r, const CaseRow& flow) {
        for (Discharge& q : flow.middle)
          q = r == top ? cubic_metres_per_second(10) : q * (r == left ? 0.3 : r == right ? 0.7 : 1.0);
      },
      [&](std::uint32_t, const CaseRow& flow) { seen.push_back(flow.middle[1].si()); });
  EXPECT_EQ(seen, (std::vector<double>{10.0, 3.0, 7.0, 10.0}));
  EXPECT_EQ(below, 3u);
}

}  // namespace
}  // namespace floatwright
