#pragma once
// What each line covers, by flow: a row a line over the logarithm of flow, its hatched height the share of the fishing at
// that flow that the line covers; the top row how the fishing itself is spread. Rows best first, owned lines over others.
#include "adapters/out/figure/drawing.hpp"
#include "engine/wording/coverage_page.hpp"

namespace floatwright {

[[nodiscard]] Drawing coverage_picture(const Coverage& found, const CoverageWords& words, double width);
[[nodiscard]] std::string coverage_picture_alt(const Coverage& found, const CoverageWords& words);

}  // namespace floatwright
