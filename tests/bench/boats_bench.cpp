// The outfitter's day: twelve boats of fixtures/outfitter on the demo's river, with the demo's five rods and with an
// outfitter's rack. Readings are the demo's payloads; one thread.
#include <benchmark/benchmark.h>

#include <filesystem>
#include <stdexcept>

#include "adapters/in/files/boats_file.hpp"
#include "adapters/in/files/tackle_file.hpp"
#include "adapters/in/files/whole_text.hpp"
#include "adapters/in/fetch/gather.hpp"
#include "engine/plan_boats.hpp"

namespace floatwright {
namespace {

const std::filesystem::path kRoot{FLOATWRIGHT_SOURCE_DIR};
constexpr Instant kNow{std::chrono::sys_days{std::chrono::year{2027} / 5 / 14} + std::chrono::minutes{110}};  // 19:50 there

GatherOrder from_disk() {
  GatherOrder out;
  out.fetch.now = out.fetch.clock = kNow;
  out.offline = true;
  return out;
}

Configuration demo() {
  auto loaded = load_configuration(kRoot / "config/demo");
  if (!loaded.configuration) throw std::runtime_error("the demo's configuration can't be read");
  return std::move(*loaded.configuration);
}

Tackle rack() {
  const auto text = read_whole_text(kRoot / "fixtures/outfitter/tackle.json");
  if (!text) throw std::runtime_error(text.error().what);
  FileReading reading{"tackle.json", {}, {}};
  const ParsedJson parsed = parse_located_json(reading.file, *text);
  return read_tackle(*parsed.root, reading).all;
}

void plan_twelve(benchmark::State& state, bool outfitters_rack) {
  const Configuration configuration = demo();
  const DaysAllowed allowed{std::chrono::year{2027} / 5 / 13, std::chrono::year{2027} / 5 / 15};
  const auto boats = load_boats(kRoot / "fixtures/outfitter/boats.json", configuration, allowed).boats;
  if (!boats) throw std::runtime_error("the boats can't be read");
  const DayInputs in{configuration.river,     outfitters_rack ? rack() : configuration.tackle,
                     configuration.settings,  configuration.judgement,
                     gather_readings(configuration, from_disk()).records, boats->day, kNow};
  for (auto _ : state) benchmark::DoNotOptimize(plan_boats(in, boats->boats));
}

BENCHMARK_CAPTURE(plan_twelve, five_rods, false)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(plan_twelve, outfitters_rack, true)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace floatwright

BENCHMARK_MAIN();
