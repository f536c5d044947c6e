// Notes on waters, fishing times, channels and lakes: numbers that no water has, and waters nobody described.
#include <algorithm>
#include <cmath>

#include "engine/river/graph.hpp"
#include "engine/river/place_text.hpp"
#include "engine/river/problem_groups.hpp"

namespace floatwright {
namespace {

constexpr double kFishingTimeSlack = 0.02;
constexpr Length kDeepestLikely = Length::from_si(15.0);
constexpr SurfaceSpeed kFastestLikely = SurfaceSpeed::from_si(5.0);
constexpr double kChannelMismatch = 0.15;  // of flow, width x depth x speed against the flow it was measured at
constexpr Speed kSlowestFloat = Speed::from_si(0.15), kFastestFloat = Speed::from_si(4.0);
constexpr double kSteepestLikely = 0.05;  // m per m, for a river that is floated

void note_values(const WaterNote& note, const std::string& pointer, Problems& all) {
  if (!(note.depth > Length{}) || !(note.surface_speed >= SurfaceSpeed{}) || !(note.at_flow > Discharge{})) {
    all.push_back(river_error(pointer,
                              "depth " + short_number(in_feet(note.depth)) + " ft, surface speed " +
                                  short_number(in_feet_per_second(note.surface_speed)) + " ft/s, at " +
                                  short_number(in_cubic_feet_per_second(note.at_flow)) + " cfs",
                              "a depth and a flow over 0, a speed of 0 or more",
                              "Type what was seen, and the flow of that day."));
  } else if (note.depth > kDeepestLikely || note.surface_speed > kFastestLikely) {
    all.push_back(river_warning(pointer,
                                "depth " + short_number(in_feet(note.depth)) + " ft, surface speed " +
                                    short_number(in_feet_per_second(note.surface_speed)) + " ft/s",
                                "up to 49 ft and 16 ft/s is likely", "Look at the units in the keys."));
  }
}

void fishing_times(const std::vector<Water>& waters, const std::string& pointer, Problems& all) {
  if (waters.empty()) return;
  double sum = 0.0;
  bool odd = false;
  for (const auto& water : waters) {
    sum += water.fishing_time;
    odd = odd || !(water.fishing_time >= 0.0 && water.fishing_time <= 1.0);
  }
  const std::string allowed = "shares of 0 to 1 that add up to 1";
  const std::string found = "fishing times that add up to " + short_number(sum);
  if (odd || sum > 1.0 + kFishingTimeSlack) {
    all.push_back(river_error(pointer, odd ? "a fishing time outside 0 to 1" : found, allowed,
                              "Type the share of the fishing time in each water; 0.3 is 30 %."));
  } else if (sum < 1.0 - kFishingTimeSlack) {
    all.push_back(
        river_warning(pointer, found, allowed, "Give the rest to a water; as it stands that time is fished nowhere."));
  }
}

template <class Item>
void waters_of_each(const std::vector<Item>& items, const std::string& list, Problems& all) {
  for (std::size_t i = 0; i < items.size(); ++i) {
    const auto& waters = items[i].waters;
    fishing_times(waters, pointer_to(list, i, "/waters"), all);
    for (std::size_t j = 0; j < waters.size(); ++j) {
      for (const auto& note : waters[j].notes) note_values(note, pointer_to(list, i, pointer_to("waters", j)), all);
    }
  }
}

void measured_channel(const ChannelMeasurement& c, const std::string& pointer, Problems& all) {
  if (!(c.discharge > Discharge{} && c.width > Length{} && c.mean_depth > Length{} && c.mean_speed > MeanSpeed{})) {
    all.push_back(river_error(pointer, "a measurement with a 0 in it", "flow, width, depth and speed over 0",
                              "Type all four, or leave the channel out."));
    return;
  }
  const double product = c.width.si() * c.mean_depth.si() * c.mean_speed.si();  // m3/s
  if (std::abs(product / c.discharge.si() - 1.0) <= kChannelMismatch) return;
  all.push_back(river_warning(
      pointer,
      "width x depth x speed is " + short_number(in_cubic_feet_per_second(cubic_metres_per_second(product))) +
          " cfs, measured at " + short_number(in_cubic_feet_per_second(c.discharge)) + " cfs",
      "within 15 % of each other", "Look at the four numbers again; all three are scaled to fit."));
}

void channels(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.reaches.size(); ++i) {
    const auto& reach = river.reaches[i];
    if (reach.slope && !(*reach.slope > 0.0 && *reach.slope < kSteepestLikely)) {
      all.push_back(river_error(pointer_to("reaches", i, "/slope"), short_number(*reach.slope), "over 0 and under 0.05",
                                "Type the fall over the length, in the same unit: 10 ft in a mile is 0.0019."));
    }
    for (std::size_t j = 0; j < reach.channel.size(); ++j) {
      const std::string below = reach.channel.size() == 1 ? "/channel" : pointer_to("channel/measurements", j);
      measured_channel(reach.channel[j], pointer_to("reaches", i, below), all);
    }
  }
}

void float_times(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.notes.size(); ++i) {
    const auto& note = river.notes[i];
    if (!note.float_time || note.from <= note.to) continue;
    const double hours_afloat = in_hours(*note.float_time);
    if (!(hours_afloat > 0.0)) {
      all.push_back(river_error(pointer_to("notes", i), "a float of " + short_number(hours_afloat) + " h", "over 0",
                                "Type the hours afloat, or leave them out."));
      continue;
    }
    const Speed speed = (note.from - note.to) / *note.float_time;
    if (speed >= kSlowestFloat && speed <= kFastestFloat) continue;
    all.push_back(river_warning(pointer_to("notes", i),
                                distance_text(river, note.from - note.to) + " in " + short_number(hours_afloat) +
                                    " h, " + short_number(in_miles_per_hour(speed)) + " mph",
                                "0.34 to 8.9 mph is likely", "Look at the miles and the hours again."));
  }
}

void lakes(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.lakes.size(); ++i) {
    const auto& points = river.lakes[i].profile;
    for (std::size_t j = 0; j < points.size(); ++j) {
      const std::string pointer = pointer_to("lakes", i, pointer_to("profile", j));
      const double t = in_celsius(points[j].temperature);
      if (!(t >= -0.5 && t <= 40.0)) {
        all.push_back(river_error(pointer, short_number(in_fahrenheit(points[j].temperature)) + " F", "31 to 104 F",
                                  "Look at the unit in the key."));
      }
      if (!(points[j].depth >= Length{}) || (j > 0 && points[j].depth <= points[j - 1].depth)) {
        all.push_back(river_error(pointer, "a depth of " + short_number(in_feet(points[j].depth)) + " ft",
                                  "depths that grow from the surface down", "Put the rows in order, each depth once."));
      }
    }
  }
}

// Length of what nobody described between two places, lakes left out.
Length undescribed(const River& river, const RiverGraph& graph, RiverPlace from, RiverPlace to) {
  Length sum;
  for (const auto i : graph.between(from, to)) {
    const auto& reach = graph.reaches[i];
    const auto& waters = waters_of(river, reach);
    const bool described = std::ranges::any_of(waters, [](const Water& w) { return !w.notes.empty(); });
    if (!described && !reach.lake) sum = sum + reach.length;
  }
  return sum;
}

}  // namespace

Problems water_problems(const River& river) {
  Problems all;
  waters_of_each(river.notes, "notes", all);
  waters_of_each(river.reaches, "reaches", all);
  waters_of_each(river.spots, "spots", all);
  channels(river, all);
  float_times(river, all);
  lakes(river, all);
  return all;
}

Problems undescribed_water(const River& river) {
  Problems all;
  const auto graph = river_graph(river);
  auto accesses = river.accesses;
  std::ranges::sort(accesses, [](const Access& a, const Access& b) { return a.place > b.place; });
  for (std::size_t i = 1; i < accesses.size(); ++i) {
    const auto& upper = accesses[i - 1];
    const auto& lower = accesses[i];
    const Length blank = undescribed(river, graph, upper.place, lower.place);
    if (blank <= metres(1.0)) continue;
    all.push_back(river_warning(
        "/notes",
        upper.name + " to " + lower.name + ": " + distance_text(river, blank) + " of " +
            distance_text(river, upper.place - lower.place) + " has no depth noted",
        "a note or a reach with waters for every stretch",
        "Add a note: the flow, and depth and surface speed of one water; until then a line is chosen there by a guess at best."));
  }
  return all;
}

}  // namespace floatwright
