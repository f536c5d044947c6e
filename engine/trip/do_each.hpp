#pragma once
// How work of many like pieces is shared out is the caller's to say: the engine starts no thread.
#include <cstddef>
#include <functional>

namespace floatwright {

// Calls work(0) to work(count - 1), each once, in any order or side by side. No answer hangs on it.
using DoEach = std::function<void(std::size_t count, const std::function<void(std::size_t)>& work)>;

inline void one_after_the_other(std::size_t count, const std::function<void(std::size_t)>& work) {
  for (std::size_t i = 0; i < count; ++i) work(i);
}

}  // namespace floatwright
