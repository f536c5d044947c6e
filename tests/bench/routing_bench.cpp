// Nanoseconds for one reach, one step and one case of routing: the kernel on generated river systems of a thousand to a
// million reaches, beside a bare loop over the same reaches and beside memory; a day of a million reaches from unsorted
// edges to flows; the whole of river_flows on a river such as people type.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdio>
#include <map>

#include "engine/routing/river_flows.hpp"
#include "tests/engine/routing/random_network.hpp"

namespace floatwright {
namespace {

constexpr Instant kNow{std::chrono::seconds{1810000000}};
constexpr Duration kStep = Duration::from_si(900.0);
constexpr std::size_t kDay = 96;

// Wide enough that every reach is one piece, or what comes of links of 1.5 km in the mean.
enum class Links { OnePiece, Drawn };

RandomSystem system_of(std::size_t reaches) {
  std::mt19937_64 deal(7);
  return random_system(reaches / 2, 0.01, deal);
}

// A river that gains 0.012 m3/s a km2 and 1.5 km2 a source: width 6.5 Q^0.5, speed 0.7 Q^0.1, slope 0.004 Q^-0.3.
RoutingCut drawn_cut(double sources, double length, double flow_factor) {
  const double q = 0.018 * sources * flow_factor;     // m3/s
  const double c = 1.06 * std::pow(q, 0.1);           // m/s, celerity
  const double b_s = 6.5 * 0.004 * std::pow(q, 0.2);  // m, width times slope
  return routing_cut({metres(length), seconds(length / c), metres(q / (b_s * c))}, kStep);
}

void draw_cuts(RoutingNetwork& network, Links links) {
  std::mt19937_64 deal(11);
  std::exponential_distribution<double> length(1.0 / 1400.0);  // m
  std::vector<float> sources(network.size(), 0.0F);
  for (std::size_t r = 0; r < network.size(); ++r) {
    for (auto i = network.first_inlet[r]; i < network.first_inlet[r + 1]; ++i) sources[r] += sources[network.inlets[i]];
    sources[r] = std::max(sources[r], 1.0F);
    const double m = links == Links::OnePiece ? 900.0 : 100.0 + length(deal);
    network.cuts[r] = {drawn_cut(sources[r], m, 0.8), drawn_cut(sources[r], m, 1.0), drawn_cut(sources[r], m, 1.3)};
  }
}

// Hillside inflow of every reach, and the outflow of the last: the kernel alone, the order known.
double outflow_of(const DownstreamSystem& down) {
  double out = 0.0;
  route(
      down.network, kDay,
      [&](std::uint32_t r, const CaseRow& flow) {
        const double share = down.share[r];
        for (const auto row : {flow.low, flow.middle, flow.high})
          for (Discharge& q : row) q = q * share + cubic_metres_per_second(0.018);
      },
      [&](std::uint32_t, const CaseRow& flow) { out = flow.high.back().si(); });
  return out;
}

void tell_rate(benchmark::State& state, double reach_steps) {
  state.counters["reach_step"] =
      benchmark::Counter(reach_steps, benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}

void kernel(benchmark::State& state, Links links) {
  DownstreamSystem down = downstream(system_of(static_cast<std::size_t>(state.range(0))));
  draw_cuts(down.network, links);
  double pieces = 0.0;
  for (const auto& cut : down.network.cuts) pieces += static_cast<double>(cut.middle.pieces);
  for (auto _ : state) benchmark::DoNotOptimize(outflow_of(down));
  tell_rate(state, 3.0 * kDay * static_cast<double>(down.network.size()));
  state.counters["pieces"] = pieces / static_cast<double>(down.network.size());
}
BENCHMARK_CAPTURE(kernel, one_piece, Links::OnePiece)
    ->RangeMultiplier(10)
    ->Range(1000, 1000000)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(kernel, drawn_links, Links::Drawn)
    ->RangeMultiplier(10)
    ->Range(1000, 1000000)
    ->Unit(benchmark::kMillisecond);

// What it is held against: one case, constant coefficients, the same reaches in the same order, step by step.
void bare_loop(benchmark::State& state) {
  const DownstreamSystem down = downstream(system_of(static_cast<std::size_t>(state.range(0))));
  const std::size_t n = down.network.size();
  std::vector<std::uint32_t> below(n, static_cast<std::uint32_t>(n));
  for (std::uint32_t r = 0; r < n; ++r)
    for (auto i = down.network.first_inlet[r]; i < down.network.first_inlet[r + 1]; ++i)
      below[down.network.inlets[i]] = r;
  std::vector<double> inflow(n + 1), before(n), outflow(n);
  for (auto _ : state) {
    for (std::size_t step = 0; step < kDay; ++step) {
      std::ranges::fill(inflow, 0.018);
      for (std::size_t r = 0; r < n; ++r) {
        outflow[r] = 0.3 * inflow[r] + 0.4 * before[r] + 0.3 * outflow[r];
        before[r] = inflow[r];
        inflow[below[r]] += outflow[r];
      }
    }
    benchmark::DoNotOptimize(outflow.data());
  }
  tell_rate(state, kDay * static_cast<double>(n));
}
BENCHMARK(bare_loop)->RangeMultiplier(10)->Range(1000, 1000000)->Unit(benchmark::kMillisecond);

// Read two rows, write one: what memory alone would take for a step of one reach.
void memory_stream(benchmark::State& state) {
  const auto n = static_cast<std::size_t>(state.range(0));
  std::vector<double> a(n, 1.0), b(n, 2.0), c(n);
  for (auto _ : state) {
    for (std::size_t i = 0; i < n; ++i) c[i] = a[i] + 0.3 * b[i];
    benchmark::DoNotOptimize(c.data());
    benchmark::ClobberMemory();
  }
  tell_rate(state, static_cast<double>(n));
  state.SetBytesProcessed(state.iterations() * state.range(0) * 24);
}
BENCHMARK(memory_stream)->Arg(20000000)->Unit(benchmark::kMillisecond);

// From edges in no order to the flows of a day in three cases: order, arrays, coefficients, routing.
void a_day_from_edges(benchmark::State& state) {
  const RandomSystem system = system_of(static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) {
    DownstreamSystem down = downstream(system);
    draw_cuts(down.network, Links::Drawn);
    benchmark::DoNotOptimize(outflow_of(down));
  }
}
BENCHMARK(a_day_from_edges)->Arg(1000000)->Unit(benchmark::kMillisecond);

GaugeSite gauge_at(double km, double area_km2) {
  GaugeSite gauge;
  gauge.place = river_kilometre(km);
  gauge.drainage_area = square_kilometres(area_km2);
  return gauge;
}

// An access a kilometre, gauges at either end, a ditch, a tributary and a side channel; five days by the hour.
void whole_river(benchmark::State& state) {
  const auto reaches = static_cast<double>(state.range(0));
  River river;
  river.time_zone = "Etc/UTC";
  river.gauges = {gauge_at(reaches, 2000), gauge_at(0, 2300)};
  for (int i = 0; i <= state.range(0); ++i) {
    Access access;
    access.place = river_kilometre(i);
    river.accesses.push_back(access);
  }
  river.tributaries = {{"", "Alder Creek", river_kilometre(reaches / 2), square_kilometres(150), ""}};
  river.diversions = {{"", "Mill ditch", river_kilometre(reaches / 3), cubic_metres_per_second(2), std::nullopt}};
  const RiverGraph graph = river_graph(river);
  const TimeGrid grid{kNow - std::chrono::hours{96}, std::chrono::hours{1}, 120};
  const auto outlook = [&](double q) {
    const std::vector<Discharge> flow(grid.count, cubic_metres_per_second(q));
    GaugeOutlook out;
    out.flow = PerCase<std::vector<Discharge>>{flow, flow, flow};
    return out;
  };
  for (auto _ : state) benchmark::DoNotOptimize(river_flows(river, graph, {outlook(40), outlook(44)}, grid, kNow));
}
BENCHMARK(whole_river)->Arg(30)->Unit(benchmark::kMillisecond);

// Prints as usual, and keeps what a reach-step took for the ratios.
class KeepsRates : public benchmark::ConsoleReporter {
 public:
  void ReportRuns(const std::vector<Run>& runs) override {
    ConsoleReporter::ReportRuns(runs);
    for (const Run& run : runs)
      if (const auto rate = run.counters.find("reach_step"); rate != run.counters.end())
        seconds_[run.benchmark_name()] = rate->second;
  }
  void tell_ratios() const {
    const auto memory = seconds_.find("memory_stream/20000000");
    for (const char* const reaches : {"1000", "10000", "100000", "1000000"})
      for (const char* const links : {"kernel/one_piece/", "kernel/drawn_links/"}) {
        const auto kernel = seconds_.find(std::string(links) + reaches),
                   bare = seconds_.find(std::string("bare_loop/") + reaches);
        const auto small = seconds_.find(std::string(links) + "1000");
        if (kernel == seconds_.end() || bare == seconds_.end() || small == seconds_.end()) continue;
        std::printf("%s%s: %.2f of the bare loop, %.2f of a thousand reaches", links, reaches,
                    kernel->second / bare->second, kernel->second / small->second);
        if (memory != seconds_.end()) std::printf(", %.2f of a pass through memory", kernel->second / memory->second);
        std::printf("\n");
      }
  }

 private:
  std::map<std::string, double> seconds_;
};

}  // namespace
}  // namespace floatwright

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  floatwright::KeepsRates reporter;
  benchmark::RunSpecifiedBenchmarks(&reporter);
  reporter.tell_ratios();
}
