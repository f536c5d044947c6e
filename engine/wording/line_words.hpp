#pragma once
// What is said of the line of the day: the words over its picture, and what stands where the picture cannot be seen.
#include <optional>

#include "engine/wording/float_plan_parts.hpp"

namespace floatwright {

// Which rod, where, and what is hatched. The float has a line of the day.
[[nodiscard]] std::vector<std::string> line_picture_heading(const Told& told);

// The picture as a block of a page; none where there is nothing to draw.
[[nodiscard]] std::optional<Figure> line_figure(const Told& told);

}  // namespace floatwright
