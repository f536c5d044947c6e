#pragma once
// A dam's schedule as CSV: a header line "time,flow_cfs" or "time,flow_m3_s", then one change a line, oldest first:
// "2027-05-14T09:00-06:00,1750". A flow holds until the next line. Blank lines and lines that begin with # are skipped.
#include <string>
#include <string_view>
#include <vector>

#include "engine/river/river.hpp"
#include "engine/units/problem.hpp"

namespace floatwright {

struct ReadReleases {
  std::vector<Release> schedule;  // strictly rising in time; only whole if there are no problems
  Problems problems;
};

[[nodiscard]] ReadReleases read_releases(const std::string& file, std::string_view text);

}  // namespace floatwright
