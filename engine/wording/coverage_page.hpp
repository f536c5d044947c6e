#pragma once
// Which lines earn their place, in words: what the record held, what each line and each set of owned lines covers, what
// to buy and when it would serve, what could stay at home.
#include <array>

#include "engine/coverage/coverage.hpp"
#include "engine/trip/settings.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

struct CoverageWords {
  const River& river;
  const Tackle& tackle;  // that the coverage is of
  UnitSystem units = UnitSystem::Us;
  bool usual_lines = false;  // nobody typed a line to think of: usual ones stand in
};

[[nodiscard]] Page coverage_page(const Coverage& found, const CoverageWords& words);

// "sinking tip 12 1/2 ft 5 in/s"; with its rod "..., on the 9 ft 6-wt".
[[nodiscard]] std::string say_considered(const ConsideredLine& line, const Tackle& tackle, UnitSystem units);
[[nodiscard]] std::string say_considered_on_rod(const ConsideredLine& line, const Tackle& tackle, UnitSystem units);
// "61 %"; a share that rounds to nothing but is not nothing "under 1 %".
[[nodiscard]] std::string say_share(double share);
// "Apr to Jun and Oct": the months with a tenth of it or more.
[[nodiscard]] std::string say_months(const std::array<double, kMonths>& by_month);
// A record shorter than a year tells nothing of the months it lacks; empty where it is longer.
[[nodiscard]] std::string say_short_record(const DaysCounted& counted);

}  // namespace floatwright
