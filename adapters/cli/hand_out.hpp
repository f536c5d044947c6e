#pragma once
// What was printed leaves: to standard output, or as one file a kind in the directory of --out.
#include <chrono>
#include <string>
#include <vector>

#include "adapters/cli/kinds.hpp"
#include "adapters/out/files/whole_file.hpp"

namespace floatwright {

// Makes the directory; an empty name is standard output and always ready.
[[nodiscard]] Result<Written> prepare_out(const std::string& out);

// Onto standard output.
[[nodiscard]] Result<Written> print_out(const std::string& text);

// `kinds`: names that kinds_named() knows.
[[nodiscard]] Result<Written> hand_out(const std::vector<std::string>& kinds, const Printed& printed, const std::string& out);

}  // namespace floatwright
