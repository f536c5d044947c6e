#include "engine/trip/closed_water.hpp"

#include <algorithm>
#include <iterator>

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

std::vector<std::size_t> closures_met(const RiverDay& day, const Passage& passage, Instant arrive, Instant leave) {
  const auto clock = [&](Instant t) { return time_of_day(t, day.river.time_zone); };
  std::vector<std::size_t> met;
  std::ranges::copy_if(passage.closures, std::back_inserter(met), [&](std::size_t i) {
    const auto& closed = day.river.closures[i].hours;
    return !closed || meet_hours(*closed, clock(arrive), clock(leave));
  });
  return met;
}

std::string why_closed(const River& river, const std::vector<std::size_t>& closures) {
  std::vector<std::string> reasons;
  for (const std::size_t i : closures)
    if (std::ranges::find(reasons, river.closures[i].why) == reasons.end()) reasons.push_back(river.closures[i].why);
  std::string words;
  for (const std::string& reason : reasons) words += (words.empty() ? "" : "; ") + reason;
  return words;
}

}  // namespace floatwright
