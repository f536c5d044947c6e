#pragma once
// A gauge's record as means of local days, each at its date's 00:00Z, in the manner of daily records.
#include <string>

#include "engine/readings/gauge_record.hpp"

namespace floatwright {

// The daily record where it has the date, else the mean of the readings at the full hours of the local day, whether it has
// 23, 24 or 25 of them. A date with readings for less than three quarters of its hours is not in it.
[[nodiscard]] Series<Discharge> days_of_record(const Series<Discharge>& daily, const Series<Discharge>& readings,
                                               const std::string& time_zone);
[[nodiscard]] Series<Temperature> days_of_record(const Series<Temperature>& daily, const Series<Temperature>& readings,
                                                 const std::string& time_zone);

}  // namespace floatwright
