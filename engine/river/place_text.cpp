#include "engine/river/place_text.hpp"

#include <fmt/format.h>

namespace floatwright {
namespace {

std::string decimals(double value, int most, int least) {
  std::string trimmed = fmt::format("{:.{}f}", value, most);
  const std::size_t shortest = trimmed.find('.') + static_cast<std::size_t>(least) + 1;
  while (trimmed.size() > shortest && trimmed.back() == '0') trimmed.pop_back();
  return trimmed == "-0.0" ? "0.0" : trimmed;
}

}  // namespace

std::string place_number(const River& river, RiverPlace place) {
  const double counted = river.kilometres ? in_river_kilometres(place) : in_river_miles(place);
  return decimals(river.miles_from_source ? -counted : counted, 3, 1);
}

std::string place_text(const River& river, RiverPlace place) {
  return (river.kilometres ? "km " : "mile ") + place_number(river, place);
}

std::string distance_text(const River& river, Length distance) {
  return river.kilometres ? decimals(in_kilometres(distance), 1, 1) + " km"
                          : decimals(in_miles(distance), 1, 1) + " mi";
}

}  // namespace floatwright
