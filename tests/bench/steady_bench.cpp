// How long one steady shape and one cast take: a day with a dozen lines asks for some thirty thousand casts, many of
// which share their steady shapes. A cast here makes its table of the water too, which a day does once a water. A
// steady shape stands beside the plain solver of plain_steady.hpp, and the ratio of the two in the same run.
#include <benchmark/benchmark.h>

#include <ctime>

#include "engine/sinking/cast_path.hpp"
#include "engine/sinking/steady.hpp"
#include "tests/bench/plain_steady.hpp"
#include "tests/engine/tackle/rack.hpp"

namespace floatwright {
namespace {

// A 14 ft tip of 6 in/s in a run, the stream sheared.
SteadyCase tip_in_a_run(SurfaceEnd end) {
  SteadyCase in;
  in.parts = {
      {PartKind::Leader, metres(1.2), millimetres(0.30), kilograms_per_cubic_metre(1140.0), {}, {}},
      {PartKind::Sinking, metres(4.27), millimetres(1.0), {}, metres_per_second(0.1524), metres_per_second(0.1524)},
      {PartKind::Floating, metres(20.0), millimetres(1.6), kilograms_per_cubic_metre(870.0), {}, {}}};
  in.fly = {newtons(0.001), metres_per_second(0.0762), square_metres(8.611e-5)};
  in.depth = metres(1.5);
  in.surface_speed = surface_metres_per_second(7.0 / 6.0);
  in.end = end;
  return in;
}

void steady(benchmark::State& state, SurfaceEnd end) {
  const SteadyCase in = tip_in_a_run(end);
  for (auto _ : state) benchmark::DoNotOptimize(steady_shape(in));
}
BENCHMARK_CAPTURE(steady, butt_held, SurfaceEnd::ButtAtSurface);
BENCHMARK_CAPTURE(steady, body_pulled_under, SurfaceEnd::BodyPulledUnder);

void plain_steady(benchmark::State& state, SurfaceEnd end) {
  const SteadyCase in = tip_in_a_run(end);
  for (auto _ : state) benchmark::DoNotOptimize(plain::steady(in));
}
BENCHMARK_CAPTURE(plain_steady, butt_held, SurfaceEnd::ButtAtSurface);
BENCHMARK_CAPTURE(plain_steady, body_pulled_under, SurfaceEnd::BodyPulledUnder);

// Both in turn, by processor time: `ratio` is the plain solver's time over ours.
void plain_over_ours(benchmark::State& state, SurfaceEnd end) {
  constexpr int kOurs = 100, kPlain = 10;  // a turn, so that reading the clock counts for nothing
  const SteadyCase in = tip_in_a_run(end);
  double ours = 0.0, plainly = 0.0;  // clock ticks a shape
  for (auto _ : state) {
    const std::clock_t start = std::clock();
    for (int i = 0; i < kOurs; ++i) benchmark::DoNotOptimize(steady_shape(in));
    const std::clock_t between = std::clock();
    for (int i = 0; i < kPlain; ++i) benchmark::DoNotOptimize(plain::steady(in));
    ours += static_cast<double>(between - start) / kOurs;
    plainly += static_cast<double>(std::clock() - between) / kPlain;
  }
  const double microseconds = 1e6 / CLOCKS_PER_SEC / static_cast<double>(state.iterations());
  state.counters["ours_us"] = ours * microseconds;
  state.counters["plain_us"] = plainly * microseconds;
  state.counters["ratio"] = plainly / ours;
}
BENCHMARK_CAPTURE(plain_over_ours, butt_held, SurfaceEnd::ButtAtSurface);
BENCHMARK_CAPTURE(plain_over_ours, body_pulled_under, SurfaceEnd::BodyPulledUnder);

void cast_of(benchmark::State& state, std::size_t line, std::size_t fly, const Technique& technique) {
  const Tackle tackle = rack::tackle();
  const CastWater water{metres(1.2), surface_metres_per_second(0.9), {}, Speed{}, celsius(10.0)};
  for (auto _ : state) {
    benchmark::DoNotOptimize(cast_path(tackle, {line, {}, fly, {}}, technique, water, metres(12.0), feet(9.0)));
  }
}
BENCHMARK_CAPTURE(cast_of, swing_of_a_tip, rack::kTip5, rack::kWeighted,
                  Technique{Method::Swing, Mending::MendAndFeed, {}, {}, Platform::Anchored});
BENCHMARK_CAPTURE(cast_of, strip_of_a_full_sinking_line, rack::kFull, rack::kPlain,
                  Technique{Method::Strip, Mending::Tight, seconds(6.0), metres_per_second(0.3), Platform::Anchored});
BENCHMARK_CAPTURE(cast_of, indicator, rack::kNymphTaper, rack::kNymph,
                  Technique{Method::Indicator, Mending::Tight, {}, {}, Platform::Drifting});

}  // namespace
}  // namespace floatwright
