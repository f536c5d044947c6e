#pragma once
// The words for how and where from a person fishes, the same in every file.
#include <string>
#include <utility>
#include <vector>

#include "engine/river/river.hpp"
#include "engine/tackle/tackle.hpp"

namespace floatwright {

[[nodiscard]] const std::vector<std::pair<std::string, Platform>>& platform_words();
[[nodiscard]] const std::vector<std::pair<std::string, Method>>& method_words();

}  // namespace floatwright
