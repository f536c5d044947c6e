#pragma once
// Instants as a service writes a series of them, each mostly of the same day and zone as the one before: only what
// differs is read anew.
#include <string>

#include "adapters/in/calendar/written_time.hpp"

namespace floatwright {

class InstantsInOrder {
 public:
  // As instant_in().
  [[nodiscard]] std::optional<Instant> next(std::string_view text);

 private:
  std::string before_;       // the text read before, where it has the usual places for its parts
  Instant its_hour_zero_{};  // what it would be at 00:00 of its clock, its seconds and zone kept
};

}  // namespace floatwright
