// One simulated cast at the coarse resolution beside a chain as one writes it first, 40 ms steps both: 71 s of it, and
// to hang-down and 3 s more; then eight waters abreast, whose time is that of all eight. `deepest_m` is the answer (of
// the water of the others); `times_faster` a cast is the prototype's processor time in the same run over this one's.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <cmath>
#include <ctime>
#include <vector>

#include "engine/sinking/cast_run.hpp"
#include "engine/sinking/tabled_water.hpp"
#include "tests/bench/prototype_chain.hpp"

namespace floatwright {
namespace {

constexpr double kStep = 0.04;                         // s
constexpr double kHung = 8.0 / 57.29577951308232;      // rad from straight downstream
constexpr double kLinger = 3.0, kLongestCast = 71.0;   // s

CastCase a_swing() {
  CastCase in;
  in.parts = {{PartKind::Leader, metres(1.2), millimetres(0.30), kilograms_per_cubic_metre(1140.0), {}, {}},
              {PartKind::Sinking, metres(3.8), millimetres(1.0), {}, inches_per_second(5.0), inches_per_second(5.0)},
              {PartKind::Floating, metres(20.0), millimetres(1.6), kilograms_per_cubic_metre(870.0), {}, {}}};
  in.fly = {newtons(0.001), metres_per_second(0.0762), square_metres(8.611e-5)};
  in.depth = metres(1.5);
  in.surface_speed = surface_metres_per_second(1.0);
  in.slack = 0.0;
  in.line_out = metres(7.0);
  in.has_bed = false;
  return in;
}

// Steps until `done(bearing, t)` and tells how deep the fly came.
template <class Advance, class Depth, class Bearing>
double deepest(const Advance& advance, const Depth& depth, const Bearing& bearing, bool to_hang_down) {
  double most = 0.0, hung_at = kLongestCast;
  for (double t = 0.0; t < std::min(kLongestCast, to_hang_down ? hung_at + kLinger : kLongestCast); t += kStep) {
    advance();
    most = std::max(most, depth());
    if (hung_at == kLongestCast && std::abs(bearing()) < kHung) hung_at = t;
  }
  return most;
}

double prototype_takes[2];  // s a cast: of 71 s, to hang-down

double now() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }  // s of processor time

void prototype(benchmark::State& state, bool to_hang_down) {
  double most = 0.0;
  const double start = now();
  for (auto _ : state) {
    PrototypeChain chain(a_swing(), in_metres(kCoarse.body), in_metres(kCoarse.sinking), in_metres(kCoarse.leader));
    most = deepest([&] { chain.step(kStep); }, [&] { return chain.fly_depth(); }, [&] { return chain.bearing(); },
                   to_hang_down);
  }
  prototype_takes[to_hang_down ? 1 : 0] = (now() - start) / static_cast<double>(state.iterations());
  state.counters["deepest_m"] = most;
}

void engine(benchmark::State& state, bool to_hang_down) {
  const CastCase in = a_swing();
  double most = 0.0;
  const double start = now();
  for (auto _ : state) {
    const auto water = tabled_water(in.depth, in.surface_speed, in.profile, in.temperature);
    const WaterAndBoat place{&*water, in.boat};
    CastRun<Alone> run(in, {&place, 1}, kCoarse);
    most = deepest([&] { run.advance(); }, [&] { return run.row(0).fly_depth.si(); },
                   [&] { return run.row(0).bearing.si(); }, to_hang_down);
  }
  const double takes = (now() - start) / static_cast<double>(state.iterations());
  state.counters["deepest_m"] = most;
  state.counters["times_faster"] = prototype_takes[to_hang_down ? 1 : 0] / takes;
}

void engine_abreast(benchmark::State& state, bool to_hang_down) {
  const CastCase in = a_swing();
  double most = 0.0;
  const double start = now();
  for (auto _ : state) {
    std::vector<TabledWater> made;
    for (std::size_t i = 0; i < kWatersAbreast; ++i)
      made.push_back(*tabled_water(metres(1.5 + 0.5 * static_cast<double>(i)), in.surface_speed, in.profile, in.temperature));
    std::vector<WaterAndBoat> places;
    for (const TabledWater& water : made) places.push_back({&water, in.boat});
    CastRun<Abreast> run(in, places, kCoarse);
    const auto slowest = [&] {
      double widest = 0.0;
      for (std::size_t lane = 0; lane < places.size(); ++lane)
        widest = std::max(widest, std::abs(run.row(lane).bearing.si()));
      return widest;
    };
    most = deepest([&] { run.advance(); }, [&] { return run.row(0).fly_depth.si(); }, slowest, to_hang_down);
  }
  const double takes = (now() - start) / static_cast<double>(kWatersAbreast) / static_cast<double>(state.iterations());
  state.counters["deepest_m"] = most;
  state.counters["times_faster"] = prototype_takes[to_hang_down ? 1 : 0] / takes;
}

BENCHMARK_CAPTURE(prototype, 71_s, false)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(engine, 71_s, false)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(engine_abreast, 71_s, false)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(prototype, to_hang_down, true)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(engine, to_hang_down, true)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(engine_abreast, to_hang_down, true)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace floatwright
