#pragma once
// The words of the printed rows beyond engine/readings/names.hpp. They are an interface: programs read them.
#include <string>
#include <vector>

#include "engine/readings/names.hpp"

namespace floatwright {

// "provisional", "ice" ... in the order of Mark; "daily" at the end where the time is a date label and no instant.
[[nodiscard]] std::vector<std::string> mark_words(const Marks& marks, bool daily);

[[nodiscard]] std::string time_word(Instant time);  // "2026-05-13T12:00:00Z"

}  // namespace floatwright
