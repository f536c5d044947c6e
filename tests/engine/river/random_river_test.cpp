// Random rivers: what holds for every file a person could type.
#include <gtest/gtest.h>
// The macros below need the framework first.
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <random>

#include "engine/river/graph.hpp"
#include "engine/river/stations.hpp"
#include "tests/engine/river/lantern.hpp"

namespace floatwright {
namespace {

// The same rivers in every run, unless the caller wants others.
[[maybe_unused]] const int kSameRivers = setenv("RC_PARAMS", "seed=7 max_success=200", 0);

// Places on a lattice of 0.01 mi, as people type them.
RiverPlace any_place() { return river_mile(*rc::gen::inRange(0, 6000) / 100.0); }

River any_river() {
  River river;
  const auto many = [] { return *rc::gen::inRange(0, 7); };
  for (int i = 0, n = 2 + many(); i < n; ++i) {
    river.accesses.push_back(
        access("a" + std::to_string(i), "Access " + std::to_string(i), in_river_miles(any_place())));
  }
  for (int i = 0, n = many(); i < n; ++i) {
    river.gauges.push_back(gauge("g" + std::to_string(i), "Gauge", in_river_miles(any_place()), 100.0));
  }
  for (int i = 0, n = many(); i < n; ++i) {
    const RiverPlace a = any_place(), b = any_place();
    river.side_channels.push_back({"s" + std::to_string(i), "Side", std::max(a, b), std::min(a, b), {}});
  }
  for (int i = 0, n = many(); i < n; ++i) {
    river.tributaries.push_back({"t" + std::to_string(i), "Creek", any_place(), square_miles(10.0), ""});
  }
  return river;
}

template <class Item>
void shuffle(std::vector<Item>& items, std::mt19937& deal) {
  std::shuffle(items.begin(), items.end(), deal);
}

std::vector<std::string> ids(const RiverGraph& graph) {
  std::vector<std::string> list;
  for (const auto& reach : graph.reaches) list.push_back(reach.id);
  std::ranges::sort(list);
  return list;
}

RC_GTEST_PROP(RandomRiver, PutsEveryReachAfterTheOnesItTakesWaterFrom, ()) {
  const RiverGraph graph = river_graph(any_river());
  for (std::size_t i = 0; i < graph.reaches.size(); ++i) {
    for (const auto upstream : graph.reaches[i].upstream) {
      RC_ASSERT(upstream < i);
      RC_ASSERT(graph.reaches[upstream].to == graph.reaches[i].from);
    }
  }
}

RC_GTEST_PROP(RandomRiver, HasAStemAsLongAsItsSpan, ()) {
  const River river = any_river();
  const RiverGraph graph = river_graph(river);
  Length stem;
  for (const auto& reach : graph.reaches) {
    RC_ASSERT(reach.length > Length{});
    if (reach.main_thread) stem = stem + reach.length;
  }
  const auto span = river_span(river);
  RC_ASSERT(std::abs((stem - (span->top - span->mouth)).si()) < 2.0 + 1e-6);  // the last station may stand 2 m off
}

RC_GTEST_PROP(RandomRiver, DoesNotDependOnTheOrderInTheFile, (unsigned seed)) {
  const River river = any_river();
  River dealt = river;
  std::mt19937 deal(seed);
  shuffle(dealt.accesses, deal);
  shuffle(dealt.gauges, deal);
  shuffle(dealt.side_channels, deal);
  shuffle(dealt.tributaries, deal);
  RC_ASSERT(ids(river_graph(dealt)) == ids(river_graph(river)));
}

RC_GTEST_PROP(RandomRiver, FindsEveryPlaceOfTheSpanInOneReach, ()) {
  const River river = any_river();
  const RiverGraph graph = river_graph(river);
  RC_PRE(!graph.reaches.empty());
  const auto span = river_span(river);
  const RiverPlace place = std::clamp(any_place(), span->mouth, span->top);
  const auto found = graph.at(place);
  RC_ASSERT(found.has_value());
  const Reach& reach = graph.reaches[*found];
  RC_ASSERT(reach.main_thread && in_metres(place - reach.from) < 2.0 && in_metres(reach.to - place) < 2.0);
}

RC_GTEST_PROP(RandomRiver, IsCheckedWithoutFallingOver, ()) {
  River river = any_river();
  for (auto& side : river.side_channels) {
    if (*rc::gen::arbitrary<bool>()) std::swap(side.leaves, side.returns);
  }
  for (const auto& problem : river_problems(river)) RC_ASSERT(!problem.found.empty() && !problem.mend.empty());
}

}  // namespace
}  // namespace floatwright
