#pragma once
// The band that a forecast of the past would have had: only from errors whose outcome was known by then.
#include "engine/temperature/curve_band.hpp"

namespace floatwright {

class PastBands {
 public:
  explicit PastBands(const CurveErrors& errors);

  // Of the forecast from origin i; none where the 365 days before it hold under 60 errors.
  [[nodiscard]] std::optional<ErrorBand> at(std::size_t i);
  // P10 and P90 of errors over the mean |error| of their time, known at origin i; `errors` 0 where they are too few.
  struct Quotients {
    std::size_t errors = 0;
    double low = 0.0, high = 0.0;
  };
  [[nodiscard]] Quotients quotients(std::size_t i) const;

 private:
  const CurveErrors* errors_;
  std::vector<std::optional<double>> quotient_;  // by origin
  std::size_t worked_out_for_ = 0;
  std::optional<Quotients> at_block_;
};

}  // namespace floatwright
