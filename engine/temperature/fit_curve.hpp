#pragma once
// Coefficients of the daily curve fitted to a record, by lead.
#include "engine/temperature/curve_errors.hpp"

namespace floatwright {

using CurveLeads = std::vector<TunedTemperatureLead>;

struct RecordPart {
  Instant from{}, until{};
  [[nodiscard]] bool holds(const CurveErrors& errors, std::size_t i) const {
    return errors.origin(i) >= from && errors.origin(i) + errors.lead() <= until;
  }
};

// To outcomes of the record up to `until`: least absolute error, shrunk to the untuned shares with the weight of 300 h.
[[nodiscard]] CurveLeads fitted_leads(const HourlyTemperatures& record, Instant until);

// Those of `leads` that `judged` (the same leads, perhaps fitted to less) shows to err less on this part than the
// untuned ones, which take the place of the others.
[[nodiscard]] CurveLeads better_leads(const CurveLeads& leads, const CurveLeads& judged,
                                      const HourlyTemperatures& record, const RecordPart& part);

[[nodiscard]] TemperatureChange mean_size(const CurveErrors& errors, const RecordPart& part);  // 0 of none

// Share of the air's change that the errors of one lead follow; shrunk to the untuned share.
[[nodiscard]] double fitted_air_share(const CurveErrors& errors, const Series<Temperature>& air);

}  // namespace floatwright
