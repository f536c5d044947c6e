#include "engine/trip/closed_water.hpp"

#include <algorithm>

#include "engine/trip/local_time.hpp"
#include "engine/trip/season.hpp"

namespace floatwright {

std::vector<std::size_t> closures_over(const RiverDay& day, RiverPlace place) {
  std::vector<std::size_t> over;
  for (std::size_t i = 0; i < day.river.closures.size(); ++i) {
    const Closure& closure = day.river.closures[i];
    if (closed_on(closure, day.day) && place <= closure.from && place >= closure.to) over.push_back(i);
  }
  return over;
}

bool closed_all_day(const RiverDay& day, const Passage& passage) {
  return std::ranges::any_of(passage.closures, [&](std::size_t i) { return !day.river.closures[i].hours; });
}

std::vector<const Closure*> closures_met(const RiverDay& day, const Passage& passage, Instant arrive, Instant leave) {
  const auto clock = [&](Instant t) { return time_of_day(t, day.river.time_zone); };
  std::vector<const Closure*> met;
  for (const std::size_t i : passage.closures) {
    const Closure& closure = day.river.closures[i];
    if (!closure.hours || meet_hours(*closure.hours, clock(arrive), clock(leave))) met.push_back(&closure);
  }
  return met;
}

std::string why_closed(const std::vector<const Closure*>& closures) {
  std::string words;
  for (std::size_t i = 0; i < closures.size(); ++i) {
    const auto same = [&](const Closure* before) { return before->why == closures[i]->why; };
    if (std::any_of(closures.begin(), closures.begin() + static_cast<std::ptrdiff_t>(i), same)) continue;
    words += (words.empty() ? "" : "; ") + closures[i]->why;
  }
  return words;
}

}  // namespace floatwright
