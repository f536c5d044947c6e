#pragma once
// Where the boat is when: launch, each passage's arrival and departure, lunch, portages, off the water.
// Time afloat is by floating_speed (engine/water) and the boat's own pace. Stops are spread over the water that can be
// fished by the time afloat in it.
#include <string>
#include <vector>

#include "engine/trip/passages.hpp"

namespace floatwright {

struct TimedPassage {
  Passage passage{};
  Instant arrive{}, leave{};
  Duration afloat{}, stops{}, lunch{}, portage{};
  bool fished = false;  // described water, and open while the boat is there
  std::string kept_out{};  // at a spot: why nobody fishes in these hours, without numbers

  [[nodiscard]] Duration fishing() const { return fished ? afloat + stops : Duration{}; }
  // The middle of the time in it, to the half hour: when it is read.
  [[nodiscard]] Instant read_at() const;
};

struct Timetable {
  std::vector<TimedPassage> rows{};
  Instant launch{};
  Instant end{};     // off the water
  Instant off_by{};  // with slack, up to the next ten minutes: when those ashore begin to count
};

// The launch asked for, else the earliest of the settings; civil dawn or, on the day itself, now: whichever is latest; "now" is rounded up
// to ten minutes.
[[nodiscard]] Instant launch_time(const RiverDay& day, const SunDay& sun);

// From put-in down to take-out. A passage that takes over two hours is cut, so that each row is read at its own hour.
[[nodiscard]] Timetable timetable(const RiverDay& day, RiverPlace from, RiverPlace to, Instant launch);

// Afloat from one place to another with the flow of the instant `t` (middle case; where it is unknown, of the note).
[[nodiscard]] Duration time_afloat(const RiverDay& day, RiverPlace from, RiverPlace to, Instant t);

}  // namespace floatwright
