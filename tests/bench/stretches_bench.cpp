// Every stretch of a long river looked at for a day: timetables and hard limits, nothing scored. Accesses a mile apart, each
// mile noted; 250 of them are 31,125 stretches.
#include <benchmark/benchmark.h>

#include "engine/trip/stretches.hpp"
#include "tests/engine/trip/hand_made_day.hpp"

namespace floatwright {
namespace {

HandMadeDay with_accesses(std::size_t count) {
  HandMadeDay made;
  auto& accesses = made.river.accesses;
  accesses.clear();
  made.river.notes.clear();
  for (std::size_t i = count; i-- > 0;)
    accesses.push_back(access("a" + std::to_string(i), 0.5 + static_cast<double>(i), 0.001 * static_cast<double>(i)));
  for (std::size_t i = 0; i + 1 < count; ++i) made.river.notes.push_back(note_between(accesses[i], accesses[i + 1], 0.42));
  return made;
}

void stretches_of_a_day(benchmark::State& state) {
  const auto count = static_cast<std::size_t>(state.range(0));
  HandMadeDay made = with_accesses(count);
  const RiverDay& day = made.day();
  std::size_t told = 0;
  for (auto _ : state) benchmark::DoNotOptimize(told = stretches(day).size());
  const auto pairs = static_cast<double>(count * (count - 1) / 2);
  state.counters["pairs"] = pairs;
  state.counters["told"] = static_cast<double>(told);
}
BENCHMARK(stretches_of_a_day)->Arg(24)->Arg(60)->Arg(250)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace floatwright
