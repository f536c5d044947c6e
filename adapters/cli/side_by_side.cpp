#include "adapters/cli/side_by_side.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace floatwright {
namespace {

std::size_t cores() { return std::max<std::size_t>(1, std::thread::hardware_concurrency()); }

void by_threads(std::size_t threads, std::size_t count, const std::function<void(std::size_t)>& work) {
  std::atomic<std::size_t> next = 0;
  std::exception_ptr thrown;
  std::mutex alone;
  const auto take_turns = [&] {
    for (std::size_t i = next++; i < count; i = next++) {
      try {
        work(i);
      } catch (...) {
        const std::scoped_lock lock(alone);
        thrown = std::current_exception();
      }
    }
  };
  {
    std::vector<std::jthread> others;
    for (std::size_t i = 1; i < std::min(threads, count); ++i) others.emplace_back(take_turns);
    take_turns();
  }
  if (thrown) std::rethrow_exception(thrown);
}

}  // namespace

void on_all_cores(std::size_t count, const std::function<void(std::size_t)>& work) {
  by_threads(cores(), count, work);
}

void side_by_side(std::size_t count, const std::function<void(std::size_t)>& work) {
  constexpr std::size_t kMostThreads = 4;
  by_threads(std::min(kMostThreads, cores()), count, work);
}

}  // namespace floatwright
