#pragma once
// The checks behind river_problems, by what they look at. Each is a function of the river alone.
#include <cstddef>
#include <string>

#include "engine/river/river.hpp"
#include "engine/units/problem.hpp"

namespace floatwright {

[[nodiscard]] Problems identity_problems(const River& river);  // ids twice, ids that name nothing, too few things
[[nodiscard]] Problems span_problems(const River& river);      // off the river, two things in one place
[[nodiscard]] Problems extent_problems(const River& river);    // from below to, overlaps
[[nodiscard]] Problems circle_problems(const River& river);    // water that would run in a circle
[[nodiscard]] Problems flow_problems(const River& river);      // shares, areas, dams, wave times, limits
[[nodiscard]] Problems map_problems(const River& river);       // miles against latitude and longitude
[[nodiscard]] Problems water_problems(const River& river);     // notes, fishing times, channels, lakes
[[nodiscard]] Problems section_problems(const River& river);   // surveyed sections
[[nodiscard]] Problems note_problems(const River& river);      // notes that contradict; a boat without flows
[[nodiscard]] Problems undescribed_water(const River& river);  // warnings; call only on a river without errors

[[nodiscard]] Problem river_error(std::string pointer, std::string found, std::string allowed, std::string mend);
[[nodiscard]] Problem river_warning(std::string pointer, std::string found, std::string allowed, std::string mend);
[[nodiscard]] std::string pointer_to(const std::string& list, std::size_t index, const std::string& below = "");
// A key as JSON pointers spell it (RFC 6901): ~ is ~0, / is ~1.
[[nodiscard]] std::string pointer_token(const std::string& key);
// "gauge \"cutbank\""; "hazard 3" for what has no id, counted from 1.
[[nodiscard]] std::string called(const std::string& kind, const std::string& id, std::size_t index);
[[nodiscard]] std::string short_number(double value);  // three figures; whole from 1,000

}  // namespace floatwright
