#pragma once
// Work shared out among threads, as many as the machine has.
#include <cstddef>
#include <functional>

namespace floatwright {

// Calls work(0) to work(count - 1), each once, and returns when all are done. What one throws is thrown on. `side_by_side`
// takes four threads at most.
void on_all_cores(std::size_t count, const std::function<void(std::size_t)>& work);
void side_by_side(std::size_t count, const std::function<void(std::size_t)>& work);

}  // namespace floatwright
