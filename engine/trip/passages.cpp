#include "engine/trip/passages.hpp"

#include <algorithm>

#include "engine/river/place_text.hpp"
#include "engine/river/stations.hpp"
#include "engine/trip/closed_water.hpp"
#include "engine/trip/landmark.hpp"

namespace floatwright {
namespace {

// Places where a passage may have to end, upstream to downstream, both ends of the stretch included.
std::vector<RiverPlace> cuts(const RiverDay& day, RiverPlace from, RiverPlace to) {
  std::vector<RiverPlace> places{from, to};
  const auto add = [&](RiverPlace place) {
    if (place < from && place > to) places.push_back(place);
  };
  for (const std::size_t r : day.graph.between(from, to)) {
    add(day.graph.reaches[r].from);
    add(day.graph.reaches[r].to);
  }
  for (const Closure& closure : day.river.closures) {
    if (!closed_on(closure, day.day)) continue;
    add(closure.from);
    add(closure.to);
  }
  std::sort(places.begin(), places.end(), std::greater<>{});
  places.erase(std::unique(places.begin(), places.end(), same_place), places.end());
  places.back() = to;
  return places;
}

std::vector<std::size_t> portages_at(const River& river, RiverPlace place) {
  std::vector<std::size_t> there;
  for (std::size_t i = 0; i < river.hazards.size(); ++i)
    if (river.hazards[i].must_portage && same_place(river.hazards[i].place, place)) there.push_back(i);
  return there;
}

// Water that nobody named is called by what lies above it; miles stand beside it wherever they are printed.
void name_it(const RiverDay& day, Passage& passage) {
  const std::string between = place_text(day.river, passage.from) + "-" + place_number(day.river, passage.to);
  passage.id = passage.named_reach ? day.river.reaches[*passage.named_reach].id : between;
  passage.name = between;
  if (const std::string above = landmark_above(day.river, passage.from); !above.empty()) passage.name = "below " + above;
  if (passage.named_reach) passage.name = day.graph.reaches[passage.reach].name;
}

std::optional<Passage> piece(const RiverDay& day, RiverPlace from, RiverPlace to) {
  Passage passage{.from = from, .to = to};
  const auto reach = day.graph.at(passage.middle());
  if (!reach) return std::nullopt;
  const Reach& there = day.graph.reaches[*reach];
  passage.reach = *reach;
  passage.named_reach = there.named_reach;
  passage.note = there.note;
  passage.lake = there.lake;
  passage.closures = closures_over(day, passage.middle());
  passage.portages = portages_at(day.river, to);
  return passage;
}

const std::vector<Water>& typed_waters(const RiverDay& day, const Passage& passage) {
  if (passage.spot) return day.river.spots[*passage.spot].waters;
  return waters_of(day.river, day.graph.reaches[passage.reach]);
}

bool belong_together(const Passage& a, const Passage& b) {
  if (!a.portages.empty() || a.closures != b.closures || a.lake != b.lake || a.named_reach != b.named_reach) return false;
  return a.named_reach.has_value() || a.note == b.note;
}

}  // namespace

bool closed_on(const Closure& closure, std::chrono::year_month_day day) {
  if (closure.first_day && day < *closure.first_day) return false;
  return !closure.last_day || day <= *closure.last_day;
}

bool lies_between(RiverPlace place, RiverPlace from, RiverPlace to) { return place <= from && place > to; }

std::vector<Passage> passages(const RiverDay& day, RiverPlace from, RiverPlace to) {
  std::vector<Passage> found;
  const auto places = cuts(day, from, to);
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    auto next = piece(day, places[i], places[i + 1]);
    if (!next) continue;
    if (!found.empty() && belong_together(found.back(), *next)) {
      found.back().to = next->to;
      found.back().portages = next->portages;
      found.back().reach = day.graph.at(found.back().middle()).value_or(next->reach);
    } else {
      found.push_back(*next);
    }
  }
  for (Passage& passage : found) name_it(day, passage);
  return found;
}

std::optional<Passage> spot_passage(const RiverDay& day, std::size_t spot) {
  const Spot& there = day.river.spots[spot];
  Passage passage{.from = there.place, .to = there.place, .id = there.id, .name = there.name, .spot = spot};
  if (passage.name.empty()) passage.name = there.id;
  const auto reach = day.graph.at(there.place);
  if (!reach) return std::nullopt;
  passage.reach = *reach;
  passage.closures = closures_over(day, there.place);
  return passage;
}

std::vector<Passage> cut_evenly(const RiverDay& day, const Passage& passage, int parts) {
  std::vector<Passage> cut;
  for (int i = 0; i < parts; ++i) {
    Passage part = passage;
    part.from = upstream_of(passage.to, passage.length() * (double(parts - i) / parts));
    part.to = i + 1 == parts ? passage.to : upstream_of(passage.to, passage.length() * (double(parts - i - 1) / parts));
    part.reach = day.graph.at(part.middle()).value_or(passage.reach);
    if (i + 1 < parts) part.portages.clear();
    name_it(day, part);
    cut.push_back(part);
  }
  return cut;
}

bool is_described(const RiverDay& day, const Passage& passage) {
  return std::ranges::any_of(typed_waters(day, passage), [](const Water& water) { return !water.notes.empty(); });
}

const std::vector<Water>& waters_of(const RiverDay& day, const Passage& passage) {
  const bool likely = day.likely != nullptr && passage.reach < day.likely->size() && !(*day.likely)[passage.reach].empty();
  return likely && !is_described(day, passage) ? (*day.likely)[passage.reach] : typed_waters(day, passage);
}

Bed bed_of(const RiverDay& day, const Passage& passage) {
  const Bed noted = passage.spot ? day.river.spots[*passage.spot].bed : Bed::Unknown;
  return noted != Bed::Unknown ? noted : bed_of(day.river, day.graph.reaches[passage.reach]);
}

}  // namespace floatwright
