#include "adapters/in/files/time_zone.hpp"

#include <date/tz.h>

#include <stdexcept>

#include "adapters/in/files/nearest.hpp"

namespace floatwright {
namespace {

std::vector<std::string> zone_names() {
  std::vector<std::string> names;
  for (const auto& zone : date::get_tzdb().zones) names.push_back(zone.name());
  return names;
}

}  // namespace

void tell_unknown_zone(TypedObject& in, std::string_view key, const std::string& name) {
  try {
    (void)date::locate_zone(name);
  } catch (const std::runtime_error&) {
    const std::string nearest = nearest_word(name, zone_names());
    in.tell(key, describe(*in.find(key)), "a zone of the system's tz database, as \"America/Denver\"",
            nearest.empty() ? "Install the tzdata package." : "The nearest known zone is \"" + nearest + "\".");
  }
}

}  // namespace floatwright
