// Notes that contradict each other, which one counts, and what nobody typed of the boat: all warnings, for a plan is
// made all the same.
#include <algorithm>
#include <cmath>

#include "engine/river/place_text.hpp"
#include "engine/river/problem_groups.hpp"
#include "engine/river/stations.hpp"

namespace floatwright {
namespace {

constexpr double kSameFlow = 1.05;  // as where the lane's law is made of the notes (water/lane_law.cpp)
constexpr double kDepthsApart = 1.3, kSpeedsApart = 1.5;  // ratios: eyes differ by less; judgement

bool apart(double a, double b, double ratio) { return a > ratio * b || b > ratio * a; }

std::string seen(const WaterNote& note) {
  return short_number(in_feet(note.depth)) + " ft deep and " + short_number(in_feet_per_second(note.surface_speed)) +
         " ft/s at " + short_number(in_cubic_feet_per_second(note.at_flow)) + " cfs";
}

bool have_numbers(const WaterNote& a, const WaterNote& b) {
  return a.at_flow > Discharge{} && b.at_flow > Discharge{} && a.depth > Length{} && b.depth > Length{};
}

void compare(const WaterNote& a, const WaterNote& b, const std::string& pointer, Problems& all) {
  if (!have_numbers(a, b)) return;
  const bool one_flow = !apart(a.at_flow.si(), b.at_flow.si(), kSameFlow);
  const bool differ = apart(a.depth.si(), b.depth.si(), kDepthsApart) ||
                      apart(a.surface_speed.si(), b.surface_speed.si(), kSpeedsApart);
  if (one_flow && differ) {
    all.push_back(river_warning(pointer, seen(a) + ", and " + seen(b), "one depth and one speed at one flow",
                                "Leave out the one that is wrong; till then the later one counts."));
  }
  const WaterNote &less = a.at_flow < b.at_flow ? a : b, &more = a.at_flow < b.at_flow ? b : a;
  if (!one_flow && less.depth > more.depth) {
    all.push_back(river_warning(pointer, seen(less) + ", but " + seen(more), "a water that is deeper with more flow",
                                "Look at both again; till then the depth between them is a guess."));
  }
}

template <class Item>
void notes_of_waters(const std::vector<Item>& items, const std::string& list, Problems& all) {
  for (std::size_t i = 0; i < items.size(); ++i)
    for (std::size_t j = 0; j < items[i].waters.size(); ++j) {
      const auto& notes = items[i].waters[j].notes;
      for (std::size_t later = 1; later < notes.size(); ++later)
        compare(notes[later - 1], notes[later], pointer_to(list, i, pointer_to("waters", j)), all);
    }
}

// A short note within a long one is the better of the two (reaches.cpp); of two of one stretch only the first is read.
void stretches_noted_twice(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.notes.size(); ++i) {
    const StretchNote& second = river.notes[i];
    const auto same = [&](const StretchNote& first) {
      return same_place(first.from, second.from) && same_place(first.to, second.to);
    };
    const auto first = std::find_if(river.notes.begin(), river.notes.begin() + static_cast<std::ptrdiff_t>(i), same);
    if (first - river.notes.begin() == static_cast<std::ptrdiff_t>(i)) continue;
    const std::string earlier = pointer_to("notes", static_cast<std::size_t>(first - river.notes.begin()));
    all.push_back(river_warning(pointer_to("notes", i),
                                "a second note of " + place_text(river, second.from) + " to " +
                                    place_text(river, second.to) + ", after " + earlier,
                                "one note a stretch",
                                "Keep the better one, or type both under \"notes\" of the waters of a reach; only " +
                                    earlier + " is read."));
  }
}

void boat_without_limits(const River& river, Problems& all) {
  const BoatLimits& boat = river.boat_limits;
  if ((boat.least_flow && boat.most_flow) || river.accesses.size() < 2) return;
  const std::string found = boat.least_flow ? "no most flow" : boat.most_flow ? "no least flow" : "no flow range";
  all.push_back(river_warning("/boat_limits", found + " for the boat", "least_flow_cfs and most_flow_cfs",
                              "Type the flows that your boat is rowed in; without them no flow rules a stretch out."));
}

}  // namespace

Problems note_problems(const River& river) {
  Problems all;
  notes_of_waters(river.notes, "notes", all);
  notes_of_waters(river.reaches, "reaches", all);
  notes_of_waters(river.spots, "spots", all);
  stretches_noted_twice(river, all);
  boat_without_limits(river, all);
  return all;
}

}  // namespace floatwright
