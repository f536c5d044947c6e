#pragma once
// What was tuned as the text of tuned.json, and its reports alone for programs. The same values give the same bytes.
// Rows of many numbers stand on one line each, rounded to four decimals: about 23 kB for a gauge and year of flow.
#include <string>

#include "engine/trip/tuning.hpp"

namespace floatwright {

[[nodiscard]] std::string tuned_json(const Tuning& tuning);
[[nodiscard]] std::string reports_json(const TuningReports& reports);

}  // namespace floatwright
