// A gauge's flow fitted and judged: ten years of made-up hours, of a stream with storms and of one below a ramping dam.
// The floor beside it is the like instants' own arithmetic, in a bare loop: ten differences of all earlier rows, every
// three hours, for an origin every six.
#include <benchmark/benchmark.h>

#include <cmath>
#include <random>

#include "engine/forecast/tune_flow.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr int kHours = 24 * 3652;

GaugeRecord storms() {
  GaugeRecord record;
  std::mt19937 random(1);
  std::uniform_real_distribution<double> chance;
  double water = 0.0;  // m3/s over a base flow of 5
  for (int h = 0; h < kHours; ++h) {
    if (chance(random) < 1.0 / 120.0) water -= 20.0 * std::log(1.0 - chance(random));
    water *= 0.97;
    record.discharge.times.push_back(std::chrono::sys_days{std::chrono::year{2015} / 1 / 1} + std::chrono::hours{h});
    record.discharge.values.push_back(cubic_metres_per_second(5.0 + water + 0.1 * std::sin(h / 8.0)));
  }
  return record;
}

void tune(benchmark::State& state, bool below_dam) {
  const GaugeRecord record = storms();
  for (auto _ : state)
    benchmark::DoNotOptimize(
        tune_flow({record, below_dam, "America/Denver", nullptr, record.discharge.times.back()}).report.rows.size());
}
void tune_a_stream(benchmark::State& state) { tune(state, false); }
void tune_below_a_dam(benchmark::State& state) { tune(state, true); }

void bare_differences(benchmark::State& state) {
  constexpr std::size_t kRows = kHours / 3, kTerms = 10;
  const std::vector<float> column(kRows, 0.5F);
  std::vector<float> sums(kRows);
  for (auto _ : state)
    for (std::size_t origin = 2; origin < kRows; origin += 2) {
      for (std::size_t term = 0; term < kTerms; ++term)
        for (std::size_t i = 0; i < origin; ++i) sums[i] += std::abs(column[i] - static_cast<float>(term));
      benchmark::ClobberMemory();
    }
}

BENCHMARK(tune_a_stream)->Unit(benchmark::kMillisecond);
BENCHMARK(tune_below_a_dam)->Unit(benchmark::kMillisecond);
BENCHMARK(bare_differences)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace floatwright
