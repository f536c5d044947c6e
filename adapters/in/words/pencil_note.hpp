#pragma once
// A line of a day's pencil notes in the words of the sheet's pencil row, in any order: "Alder mouth run  hour 10:10
// depth 3 1/2 ft  bottom N  rod six  water 52 F". What stands before the first of these words is the place. A float:
// "put-in Mill Bridge 07:30 take-out Old Ferry 14:40 stopped 2 h". A bare number has the unit of the sheet.
#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "adapters/result.hpp"
#include "engine/river/river.hpp"

namespace floatwright {

struct FloatNote {
  std::string from, to, boat;  // accesses; the boat as named, may be empty
  Duration put_in, taken_out;  // local time of day
  std::optional<Duration> stopped;
};

struct PencilNote {
  std::string typed;
  std::string where;
  std::optional<Duration> hour;  // local time of day
  std::optional<Length> depth, fly;
  bool by_count = false;
  std::optional<SurfaceSpeed> surface_speed;
  std::optional<bool> bottom;
  std::string rod, boat;  // the boat whose sheet it was, where it was named
  std::optional<Duration> count;
  std::optional<Temperature> temperature;
  std::optional<FloatNote> trip;
};

// Failure 65 says what can't be read and how to write it. `metric`: the sheet's units.
[[nodiscard]] Result<PencilNote> pencil_note(const std::string& line, bool metric);

// A line that is a day alone: "2027-05-14", "14 May 2027", "Fri 14 May 2027".
[[nodiscard]] std::optional<std::chrono::year_month_day> day_alone(const std::string& line);

}  // namespace floatwright
