// How long a rig sheet and a day's pictures take to print, and how large they are: the sample day of the invented river.
#include <benchmark/benchmark.h>

#include "adapters/out/figure/day_drawings.hpp"
#include "adapters/out/figure/png.hpp"
#include "adapters/out/pdf/print_pdf.hpp"
#include "engine/wording/rig_sheet.hpp"
#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

void tell_bytes(benchmark::State& state, std::size_t bytes, std::int64_t pages) {
  state.counters["bytes_per_page"] = static_cast<double>(bytes) / static_cast<double>(pages);
  state.SetItemsProcessed(state.iterations() * pages);
}

void sheets(benchmark::State& state) {
  const DayInputs in = sample_inputs();
  const DayPlan plan = sample_plan();
  const auto boats = static_cast<std::size_t>(state.range(0));
  std::size_t bytes = 0;
  for (auto _ : state) {
    PdfOptions options;
    std::vector<Page> pages;
    for (std::size_t i = 0; i < boats; ++i) {
      pages.push_back(rig_sheet(plan, in));
      options.drawings.push_back(day_drawings(plan, in, width_for_drawings(options.paper)));
    }
    bytes = as_pdf(pages, options)->size();
  }
  tell_bytes(state, bytes, state.range(0));
}
BENCHMARK(sheets)->Arg(1)->Arg(12)->Unit(benchmark::kMillisecond);

void hydrograph_as_png(benchmark::State& state) {
  const Drawing drawing = day_drawings(sample_plan(), sample_inputs(), 552.0).at("hydrograph");
  std::size_t bytes = 0;
  for (auto _ : state) bytes = as_png(drawing, 2.0)->size();
  tell_bytes(state, bytes, 1);
}
BENCHMARK(hydrograph_as_png)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace floatwright::testing
