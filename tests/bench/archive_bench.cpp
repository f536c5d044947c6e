// Storing a gauge-year (flow, stage and water temperature every 15 minutes) against a bare loop over one prepared
// statement on the same rows and the same tables; rows in random order; rows that are held already; reading for a plan.
#include <benchmark/benchmark.h>
#include <sqlite3.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <random>

#include "adapters/in/archive/archive.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;

constexpr Instant kStart{Period{1810166400}};  // 2027-05-13
constexpr int kYear = 365 * 96;

fs::path file() { return fs::temp_directory_path() / "archive_bench" / "readings.sqlite3"; }

std::vector<GaugeSeries> gauge_year(const std::string& station, int rows = kYear) {
  std::vector<GaugeSeries> out;
  for (const Variable variable : {Variable::Flow, Variable::GaugeHeight, Variable::WaterTemperature}) {
    GaugeSeries series;
    series.station = station;
    series.series_id = "series " + std::to_string(out.size());
    series.variable = variable;
    for (int i = 0; i < rows; ++i)
      series.readings.push_back({kStart + std::chrono::minutes{15 * i}, 40 + 0.01 * (i % 977), {Mark::Provisional}});
    out.push_back(std::move(series));
  }
  return out;
}

std::int64_t rows_of(const std::vector<GaugeSeries>& all) {
  std::int64_t out = 0;
  for (const GaugeSeries& series : all) out += std::int64_t(series.readings.size());
  return out;
}

Archive fresh() {
  fs::remove_all(file().parent_path());
  return Archive::open_to_write(file(), kStart).value();
}

void must(bool well) {
  if (!well) std::abort();
}

void bare_loop(sqlite3* database, const std::vector<GaugeSeries>& all) {
  must(sqlite3_exec(database, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr) == SQLITE_OK);
  sqlite3_stmt* put = nullptr;
  must(sqlite3_prepare_v2(database,
                          "INSERT INTO readings (series, instant, si, marks, fetched_at) VALUES (?, ?, ?, ?, ?) ON "
                          "CONFLICT DO UPDATE SET si = excluded.si, marks = excluded.marks, fetched_at = "
                          "excluded.fetched_at",
                          -1, &put, nullptr) == SQLITE_OK);
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (const Reading& row : all[i].readings) {
      sqlite3_bind_int64(put, 1, std::int64_t(i) + 1);
      sqlite3_bind_int64(put, 2, row.time.time_since_epoch().count());
      sqlite3_bind_double(put, 3, *row.si);
      sqlite3_bind_int(put, 4, row.marks.bits());
      sqlite3_bind_int64(put, 5, 1810166400);
      must(sqlite3_step(put) == SQLITE_DONE);
      sqlite3_reset(put);
    }
  }
  sqlite3_finalize(put);
  must(sqlite3_exec(database, "COMMIT", nullptr, nullptr, nullptr) == SQLITE_OK);
}

void bare_prepared_statement(benchmark::State& state) {
  const auto all = gauge_year("usgs:00000001");
  for (auto _ : state) {
    state.PauseTiming();
    { const Archive made = fresh(); }
    sqlite3* database = nullptr;
    must(sqlite3_open(file().c_str(), &database) == SQLITE_OK);
    sqlite3_exec(database, "PRAGMA synchronous = FULL", nullptr, nullptr, nullptr);
    state.ResumeTiming();
    bare_loop(database, all);
    state.PauseTiming();
    sqlite3_close(database);
    state.ResumeTiming();
  }
  state.SetItemsProcessed(state.iterations() * rows_of(all));
}

void store_fresh(benchmark::State& state, const std::vector<GaugeSeries>& all) {
  for (auto _ : state) {
    state.PauseTiming();
    {
      Archive archive = fresh();
      state.ResumeTiming();
      must(archive.store(all, kStart)->added == std::size_t(rows_of(all)));
      state.PauseTiming();
    }
    state.ResumeTiming();
  }
  state.SetItemsProcessed(state.iterations() * rows_of(all));
}

void store(benchmark::State& state) { store_fresh(state, gauge_year("usgs:00000001")); }

void store_in_random_order(benchmark::State& state) {
  auto all = gauge_year("usgs:00000001");
  std::mt19937 draw(7);
  for (GaugeSeries& series : all) std::ranges::shuffle(series.readings, draw);
  store_fresh(state, all);
}

void store_what_is_held(benchmark::State& state) {
  const auto all = gauge_year("usgs:00000001");
  Archive archive = fresh();
  must(archive.store(all, kStart).has_value());
  for (auto _ : state) must(archive.store(all, kStart)->same == std::size_t(rows_of(all)));
  state.SetItemsProcessed(state.iterations() * rows_of(all));
}

// Two days of one gauge, a quarter hour of them new: what a run brings that fetches every half hour.
void store_the_newest(benchmark::State& state) {
  Archive archive = fresh();
  must(archive.store(gauge_year("usgs:00000001"), kStart).has_value());
  int rows = kYear;
  for (auto _ : state) {
    state.PauseTiming();
    auto all = gauge_year("usgs:00000001", ++rows);
    for (GaugeSeries& series : all) series.readings.erase(series.readings.begin(), series.readings.end() - 192);
    state.ResumeTiming();
    must(archive.store(all, kStart)->added == all.size());
  }
}

// The 15 days before a plan, of four gauges each with a year held.
void read_for_a_plan(benchmark::State& state) {
  {
    Archive archive = fresh();
    for (int i = 0; i < 4; ++i) must(archive.store(gauge_year("usgs:" + std::to_string(i)), kStart).has_value());
  }
  const Instant to = kStart + std::chrono::days{364};
  for (auto _ : state) {
    const Archive archive = Archive::open_to_read(file()).value();
    for (int i = 0; i < 4; ++i)
      must(rows_of(archive.series_of("usgs:" + std::to_string(i), to - std::chrono::days{15}, to).value()) ==
           3 * (15 * 96 + 1));
  }
}

BENCHMARK(bare_prepared_statement)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(store)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(store_in_random_order)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(store_what_is_held)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(store_the_newest)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(read_for_a_plan)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
}  // namespace floatwright

// The file of a gauge-year, then the benchmarks.
int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  {
    floatwright::Archive archive = floatwright::fresh();
    floatwright::must(archive.store(floatwright::gauge_year("usgs:00000001"), floatwright::kStart).has_value());
  }
  std::printf("a gauge-year on disk: %ju bytes\n", std::uintmax_t(std::filesystem::file_size(floatwright::file())));
  benchmark::RunSpecifiedBenchmarks();
  std::filesystem::remove_all(floatwright::file().parent_path());
}
