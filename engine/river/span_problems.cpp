// Where things stand: on the river, and not two of a kind in one place.
#include <algorithm>
#include <cmath>

#include "engine/river/place_text.hpp"
#include "engine/river/problem_groups.hpp"
#include "engine/river/stations.hpp"

namespace floatwright {
namespace {

constexpr Length kFarApart =
    kilometres(160.0);  // judgement: two days of travel, where nobody floats from one to the other

struct Off {
  const River& river;
  RiverSpan span;
  Problems& all;

  [[nodiscard]] std::string reach_of_it() const {
    return place_text(river, span.top) + " down to " + place_text(river, span.mouth);
  }
  void check(RiverPlace place, const std::string& pointer, const std::string& what) const {
    if (lies_on(span, place)) return;
    all.push_back(
        river_error(pointer, what + " at " + place_text(river, place) + ", off the river",
                    reach_of_it() + ", which is as far as accesses, gauges, dams, lakes, reaches and notes go",
                    "Mend the mile, or add an access or a gauge beyond it."));
  }
};

void off_the_river(const River& river, const RiverSpan& span, Problems& all) {
  const Off off{river, span, all};
  for (std::size_t i = 0; i < river.hazards.size(); ++i) {
    off.check(river.hazards[i].place, pointer_to("hazards", i), "hazard " + river.hazards[i].what);
  }
  for (std::size_t i = 0; i < river.tributaries.size(); ++i) {
    off.check(river.tributaries[i].joins_at, pointer_to("tributaries", i),
              called("tributary", river.tributaries[i].id, i));
  }
  for (std::size_t i = 0; i < river.diversions.size(); ++i) {
    off.check(river.diversions[i].place, pointer_to("diversions", i), called("diversion", river.diversions[i].id, i));
  }
  for (std::size_t i = 0; i < river.spots.size(); ++i) {
    off.check(river.spots[i].place, pointer_to("spots", i), called("spot", river.spots[i].id, i));
  }
  for (std::size_t i = 0; i < river.side_channels.size(); ++i) {
    off.check(river.side_channels[i].leaves, pointer_to("side_channels", i),
              called("head of side channel", river.side_channels[i].id, i));
    off.check(river.side_channels[i].returns, pointer_to("side_channels", i),
              called("foot of side channel", river.side_channels[i].id, i));
  }
  for (std::size_t i = 0; i < river.wave_times.size(); ++i) {
    off.check(river.wave_times[i].from, pointer_to("wave_times", i), "start of wave time " + std::to_string(i + 1));
    off.check(river.wave_times[i].to, pointer_to("wave_times", i), "end of wave time " + std::to_string(i + 1));
  }
  for (std::size_t i = 0; i < river.closures.size(); ++i) {
    const auto& closure = river.closures[i];
    if (closure.to < span.top && closure.from > span.mouth) continue;
    all.push_back(river_warning(pointer_to("closures", i), "a closure that touches none of this river",
                                off.reach_of_it(), "Mend its miles if it is meant for these waters."));
  }
}

// A channel that leaves where the river begins has no water to take.
void splits_at_the_top(const River& river, const RiverSpan& span, Problems& all) {
  for (std::size_t i = 0; i < river.side_channels.size(); ++i) {
    const auto& side = river.side_channels[i];
    if (!same_place(side.leaves, span.top)) continue;
    all.push_back(
        river_error(pointer_to("side_channels", i),
                    called("side channel", side.id, i) + " leaves at the top of the river, where no water comes from",
                    "below " + place_text(river, span.top), "Add the gauge or access above it."));
  }
}

// Two rivers in one file count their miles apart: the first stations of the one lie far above the last of the other.
void far_apart(const River& river, Problems& all) {
  struct Stand {
    RiverPlace place;
    std::string pointer, name;
  };
  std::vector<Stand> stands;
  for (std::size_t i = 0; i < river.gauges.size(); ++i)
    if (river.gauges[i].place)
      stands.push_back({*river.gauges[i].place, pointer_to("gauges", i), called("gauge", river.gauges[i].id, i)});
  for (std::size_t i = 0; i < river.accesses.size(); ++i)
    stands.push_back({river.accesses[i].place, pointer_to("accesses", i), called("access", river.accesses[i].id, i)});
  std::ranges::stable_sort(stands, [](const Stand& a, const Stand& b) { return a.place > b.place; });
  for (std::size_t i = 1; i < stands.size(); ++i) {
    const Stand &upper = stands[i - 1], &lower = stands[i];
    const Length gap = upper.place - lower.place, rest = stands.front().place - stands.back().place - gap;
    if (gap < kFarApart || gap < rest) continue;
    all.push_back(river_warning(lower.pointer,
                                distance_text(river, gap) + " of river without an access or a gauge between " +
                                    upper.name + " and " + lower.name,
                                "one river, with its own miles",
                                "Write each river into a file of its own, or mend a mile."));
  }
}

template <class Item, class PlaceOf>
void two_in_one_place(const River& river, const std::vector<Item>& items, const std::string& list,
                      const std::string& kind, PlaceOf place_of, Problems& all) {
  for (std::size_t i = 0; i < items.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const std::optional<RiverPlace> a = place_of(items[j]), b = place_of(items[i]);
      if (!a || !b || !same_place(*a, *b)) continue;
      all.push_back(river_error(pointer_to(list, i),
                                called(kind, items[i].id, i) + " at " + place_text(river, *b) + ", where " +
                                    called(kind, items[j].id, j) + " is already",
                                "one " + kind + " in one place", "Mend one of the two miles, or take one out."));
    }
  }
}

void places_on_earth(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.accesses.size(); ++i) {
    const auto& at = river.accesses[i].at;
    if (!at || (std::abs(at->latitude_deg) <= 90.0 && std::abs(at->longitude_deg) <= 180.0)) continue;
    all.push_back(
        river_error(pointer_to("accesses", i),
                    "latitude " + short_number(at->latitude_deg) + ", longitude " + short_number(at->longitude_deg),
                    "latitude -90 to 90, longitude -180 to 180",
                    "Mend them; west and south are negative, and latitude comes first."));
  }
}

}  // namespace

Problems span_problems(const River& river) {
  Problems all;
  if (const auto span = river_span(river)) {
    off_the_river(river, *span, all);
    splits_at_the_top(river, *span, all);
  }
  two_in_one_place(
      river, river.gauges, "gauges", "gauge", [](const GaugeSite& g) { return g.place; }, all);
  two_in_one_place(
      river, river.accesses, "accesses", "access", [](const Access& a) { return std::optional{a.place}; }, all);
  two_in_one_place(
      river, river.dams, "dams", "dam", [](const Dam& d) { return std::optional{d.place}; }, all);
  two_in_one_place(
      river, river.side_channels, "side_channels", "side channel head",
      [](const SideChannel& s) { return std::optional{s.leaves}; }, all);
  far_apart(river, all);
  places_on_earth(river, all);
  return all;
}

}  // namespace floatwright
