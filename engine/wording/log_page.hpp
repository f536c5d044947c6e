#pragma once
// The page of `log --show`: what each water and boat learned, which entries teach nothing and why, which speak against
// each other, all entries with the ids by which they are taken back, and those that were.
#include "engine/learning/learned.hpp"
#include "engine/trip/settings.hpp"
#include "engine/wording/clock.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

struct LogTold {
  const River& river;
  const std::vector<LogEntry>& entries;
  const std::vector<LogEntry>& retracted;
  const Learned& learned;
  UnitSystem units = UnitSystem::Us;
  LocalClock clock;
};

[[nodiscard]] Page log_page(const LogTold& told);

// "13 May 2027 10:10 Mill run bank: depth 3 1/2 ft, bottom N"
[[nodiscard]] std::string say(const LogEntry& entry, UnitSystem units, const LocalClock& clock);
// "a1b2c3d4 and e5f6a7b8 speak against each other; both are kept and count."
[[nodiscard]] std::string say(const Contradiction& contradiction, const std::vector<LogEntry>& entries);

}  // namespace floatwright
