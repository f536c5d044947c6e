#pragma once
// The clock on the river: local time of an instant, 24 h, to the ten minutes that a trip is planned in, and days by
// name. Zones come from the system's tzdata. A zone that it does not know: every time is UTC and says so ("19:40 UTC").
#include <chrono>
#include <string>

#include "engine/units/instant.hpp"

namespace floatwright {

class LocalClock {
 public:
  explicit LocalClock(std::string zone);

  [[nodiscard]] bool known() const { return known_; }
  [[nodiscard]] std::string ten_minutes(Instant t) const;         // nearest
  [[nodiscard]] std::string ten_minutes_before(Instant t) const;  // never later than t: a thing to be ready for
  [[nodiscard]] std::string ten_minutes_after(Instant t) const;   // never earlier
  [[nodiscard]] std::string minute(Instant t) const;
  [[nodiscard]] std::chrono::year_month_day day(Instant t) const;
  // "19:45", with "yesterday", or with its date when it is neither that day nor the one before `day`.
  [[nodiscard]] std::string minute_seen_from(Instant t, std::chrono::year_month_day day) const;
  // "2027-05-14T07:30:00-06:00" (RFC 3339), where files want local time.
  [[nodiscard]] std::string written(Instant t) const;

 private:
  [[nodiscard]] Period offset(Instant t) const;

  std::string zone_;
  bool known_ = false;
};

[[nodiscard]] std::string say_day(std::chrono::year_month_day day);      // "Friday 14 May 2027"
[[nodiscard]] std::string head_of_day(std::chrono::year_month_day day);  // "FRI 14 MAY 2027"
[[nodiscard]] std::string day_of_week(std::chrono::year_month_day day);  // "Fri 14 May"
[[nodiscard]] std::string short_day(std::chrono::year_month_day day);    // "14 May 2027"

}  // namespace floatwright
