// Nanoseconds for one reach and one quarter of an hour of Muskingum-Cunge, and for a whole river of reaches in three
// cases.
#include <benchmark/benchmark.h>

#include "engine/routing/muskingum.hpp"
#include "engine/routing/river_flows.hpp"

namespace floatwright {
namespace {

constexpr Instant kNow{std::chrono::seconds{1810000000}};

void one_reach(benchmark::State& state) {
  const std::vector<Discharge> inflow(static_cast<std::size_t>(state.range(0)), cubic_metres_per_second(40));
  const auto weights = muskingum_cunge_weights(0.9, 0.4);
  for (auto _ : state) benchmark::DoNotOptimize(routed(inflow, weights, inflow.front()));
  state.SetItemsProcessed(state.iterations() * state.range(0));
}
BENCHMARK(one_reach)->Arg(512)->Arg(4096);

// One reach a kilometre, a gauge at the top, five days by the hour.
River long_river(int reaches) {
  River river;
  river.time_zone = "Etc/UTC";
  GaugeSite gauge;
  gauge.id = "top";
  gauge.place = river_kilometre(reaches);
  gauge.drainage_area = square_kilometres(2000);
  river.gauges = {gauge};
  for (int i = 0; i <= reaches; ++i) {
    Access access;
    access.place = river_kilometre(i);
    river.accesses.push_back(access);
  }
  return river;
}

void whole_river(benchmark::State& state) {
  const River river = long_river(static_cast<int>(state.range(0)));
  const RiverGraph graph = river_graph(river);
  const TimeGrid grid{kNow - std::chrono::hours{96}, std::chrono::hours{1}, 120};
  const std::vector<Discharge> flow(grid.count, cubic_metres_per_second(40));
  GaugeOutlook outlook;
  outlook.flow = PerCase<std::vector<Discharge>>{flow, flow, flow};
  for (auto _ : state) benchmark::DoNotOptimize(river_flows(river, graph, {outlook}, grid, kNow));
  state.SetItemsProcessed(state.iterations() * state.range(0) * static_cast<std::int64_t>(grid.count));
}
BENCHMARK(whole_river)->Arg(30)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace floatwright

BENCHMARK_MAIN();
