// How fast each reader of gauge answers is against a plain parser that keeps nothing, in CPU time and in turns on the
// same 20 MB, and how much memory it takes beyond them. A reader that is slower than it should be, or needs more than
// it may, ends it with 1.
#include <fmt/format.h>
#include <malloc.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <ctime>
#include <fstream>

#include "tests/bench/parser_cases.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kBytes = 20'000'000;
constexpr int kTurns = 7;

template <class Work>
double cpu_seconds(Work work) {
  const std::clock_t start = std::clock();
  work();
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

double resident_mb() {
  std::size_t all = 0, resident = 0;
  std::ifstream("/proc/self/statm") >> all >> resident;
  return static_cast<double>(resident) * static_cast<double>(sysconf(_SC_PAGESIZE)) / 1e6;
}

// In a process of its own, so that the peak is the reader's alone.
double memory_mb(const ParserCase& one, const std::string& bytes) {
  malloc_trim(0);
  const double before = resident_mb();
  const pid_t child = fork();
  if (child == 0) _exit(one.rows_read(bytes) > 0 ? 0 : 1);
  rusage used{};
  int status = 0;
  wait4(child, &status, 0, &used);
  return static_cast<double>(used.ru_maxrss) * 1024.0 / 1e6 - before;
}

// As a program has it that reads one answer and ends: its memory is new to it.
template <class Work>
double cpu_seconds_once(Work work) {
  const pid_t child = fork();
  if (child == 0) {
    work();
    _exit(0);
  }
  rusage used{};
  int status = 0;
  wait4(child, &status, 0, &used);
  const auto seconds = [](const timeval& t) { return static_cast<double>(t.tv_sec) + 1e-6 * static_cast<double>(t.tv_usec); };
  return seconds(used.ru_utime) + seconds(used.ru_stime);
}

bool is_within(const ParserCase& one) {
  const std::string bytes = one.bytes(kBytes);
  double bare = 1e9, own = 1e9, bare_once = 1e9, own_once = 1e9;
  std::size_t rows = 0;
  for (int turn = 0; turn < kTurns; ++turn) {
    bare = std::min(bare, cpu_seconds([&] { one.bare(bytes); }));
    own = std::min(own, cpu_seconds([&] { rows = one.rows_read(bytes); }));
    bare_once = std::min(bare_once, cpu_seconds_once([&] { one.bare(bytes); }));
    own_once = std::min(own_once, cpu_seconds_once([&] { one.rows_read(bytes); }));
  }
  const double ratio = bare / own, mb = static_cast<double>(bytes.size()) / 1e6, memory = memory_mb(one, bytes);
  fmt::print("{:<18} {:5.0f} MB/s, plain parser {:5.0f} MB/s, ratio {:.2f} (least {:.2f}; read once {:.2f}), {} rows, {:.0f} MB\n",
             one.name, mb / own, mb / bare, ratio, one.least_ratio, bare_once / own_once, rows, memory);
  return rows > 0 && ratio >= one.least_ratio && memory <= one.most_memory_mb;
}

}  // namespace
}  // namespace floatwright

// Of all readers, or of those that are named.
int main(int count, char** names) {
  const std::vector<std::string> asked(names + 1, names + count);
  bool all = true;
  for (const floatwright::ParserCase& one : floatwright::parser_cases())
    if (asked.empty() || std::find(asked.begin(), asked.end(), one.name) != asked.end())
      all = floatwright::is_within(one) && all;
  return all ? 0 : 1;
}
