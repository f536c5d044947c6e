#pragma once
// Which rod a letter of a day's sheet meant: the place of the rod in the plan that was handed out last for that day. Plans
// are kept for a week.
#include <chrono>
#include <string>

#include "adapters/in/files/configuration.hpp"
#include "adapters/result.hpp"

namespace floatwright {

struct RodLetter {
  char letter = 'A';
  std::chrono::year_month_day day;
  std::string boat;  // whose sheet it was; empty where nobody said
};

[[nodiscard]] bool is_rod_letter(const std::string& typed);

// The rod's id. Failure 65 where no plan of the day is kept, it had fewer rods, or the boats of the day differ in it.
[[nodiscard]] Result<std::string> rod_of_letter(const RodLetter& asked, const Configuration& configuration);

}  // namespace floatwright
