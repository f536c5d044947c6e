#pragma once
// What a recorded answer holds, row by row: series, station, quantity, time (UTC), value (SI), unit, marks. A missing
// value is null, or empty in CSV, and its marks stay. Values are printed with the fewest digits that read back the
// same.
#include <string>

#include "engine/readings/reading.hpp"

namespace floatwright {

// {"schema_version": 1, "kind": "readings", "readings": [...], "notes": [...]}
[[nodiscard]] std::string readings_json(const GaugeAnswer& answer);

// RFC 4180 with "\n" line ends and a header row; marks are separated by a blank. The notes are not in it.
[[nodiscard]] std::string readings_csv(const GaugeAnswer& answer);

}  // namespace floatwright
