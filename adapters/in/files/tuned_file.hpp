#pragma once
// tuned.json: what `tune` has fitted to the gauges' records. A plan never stops for it: what is wrong with it is a warning,
// and the file, or the entry of a gauge that is not there any more, is left out; the stated defaults then hold.
#include <filesystem>

#include "engine/trip/tuning.hpp"
#include "engine/units/problem.hpp"

namespace floatwright {

inline constexpr const char* kTunedFile = "tuned.json";  // in the configuration directory

struct TunedFile {
  Tuning tuning;
  Problems problems;     // warnings
  bool damaged = false;  // it is there and can't be used
};

// Of a file that is not there nothing.
[[nodiscard]] TunedFile read_tuned_file(const std::filesystem::path& file, const River& river);

}  // namespace floatwright
