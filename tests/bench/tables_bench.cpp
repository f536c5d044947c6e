// A cast read from a table and scored, beside the same cast worked out: what the ranking of a water costs a way of
// fishing. The last counter is the ratio in this run.
#include <benchmark/benchmark.h>

#include <ctime>

#include "engine/choice/score.hpp"
#include "engine/choice/tables_needed.hpp"
#include "tests/engine/choice/demo_box.hpp"

namespace floatwright {
namespace {

const Tackle kBox = guides_box();
const Judgement kJudgement;
const DriftLimits kLimits;
constexpr Length kCast = metres(12.0);
constexpr Rig kRig{0, {}, 0, {}};  // a sinking tip and a weighted streamer

Technique technique(Method method) {
  if (method == Method::Swing) return {method, Mending::MendAndFeed, {}, {}, Platform::Anchored};
  return {method, Mending::Tight, seconds(6), metres_per_second(0.3), Platform::Anchored};
}
TableOrder order(Method method) { return table_order(kBox, kRig, kCast, 0.0, {technique(method)}, kLimits).value(); }

CastPath worked_out(Method method) {
  const auto water = tabled_water(metres(1.2), surface_metres_per_second(0.9), Profile{}, celsius(10));
  const Technique way = technique(method);
  return *cast_paths(kBox, kRig, {&way, 1}, {*water, Speed{}, kCast, feet(9), kLimits, {}}).front();
}

double seconds_to_work_out(Method method) {
  constexpr int kTimes = 50;
  const auto start = std::clock();
  for (int i = 0; i < kTimes; ++i) benchmark::DoNotOptimize(worked_out(method));
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC / kTimes;
}

void work_a_cast_out(benchmark::State& state, Method method) {
  for (auto _ : state) benchmark::DoNotOptimize(worked_out(method));
}
BENCHMARK_CAPTURE(work_a_cast_out, swing, Method::Swing);
BENCHMARK_CAPTURE(work_a_cast_out, strip, Method::Strip);

void read_a_series(benchmark::State& state, Method method) {
  const FishingTable table = *fishing_tables(kBox, order(method), kLimits).front();
  const GridPoint at = *grid_point(metres(1.2), surface_metres_per_second(0.9));
  const auto start = std::clock();
  for (auto _ : state) benchmark::DoNotOptimize(series_at(table, at));
  const double each =
      static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC / static_cast<double>(state.iterations());
  state.counters["times_faster"] = seconds_to_work_out(method) / each;
}
BENCHMARK_CAPTURE(read_a_series, swing, Method::Swing);
BENCHMARK_CAPTURE(read_a_series, strip, Method::Strip);

void score_a_series(benchmark::State& state, Method method) {
  const FishingTable table = *fishing_tables(kBox, order(method), kLimits).front();
  const CastPath path =
      path_of(series_at(table, *grid_point(metres(1.4), surface_metres_per_second(1.1))), table.leader);
  const WaterToFish water = run_at(50);
  const Preferences preferences = guides_preferences();
  const Scene scene = scene_of(water, kBox, preferences, kJudgement);
  const Way way{kRig, technique(method)};
  for (auto _ : state) benchmark::DoNotOptimize(score_middle(scene, way, path));
}
BENCHMARK_CAPTURE(score_a_series, swing, Method::Swing);
BENCHMARK_CAPTURE(score_a_series, strip, Method::Strip);

void work_a_table_out(benchmark::State& state, Method method) {
  const TableOrder one = order(method);
  for (auto _ : state) benchmark::DoNotOptimize(fishing_tables(kBox, one, kLimits));
}
BENCHMARK_CAPTURE(work_a_table_out, swing, Method::Swing)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(work_a_table_out, strip, Method::Strip)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace floatwright
