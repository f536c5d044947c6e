#pragma once
// What is on record of one station, for a person at a terminal: each series with its newest reading, its range and a
// small plot. 78 columns.
#include <string>
#include <vector>

#include "engine/readings/reading.hpp"
#include "engine/trip/settings.hpp"

namespace floatwright {

struct ReadingsShown {
  std::string gauge, station, zone;  // the id in river.json, and an IANA zone
  UnitSystem units = UnitSystem::Us;
  Instant from{}, now{};
};

[[nodiscard]] std::string readings_text(const std::vector<GaugeSeries>& series, const ReadingsShown& shown);

}  // namespace floatwright
