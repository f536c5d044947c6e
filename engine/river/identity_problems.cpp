// Ids: none twice in a list, none that names nothing; and enough gauges and accesses to plan with.
#include <algorithm>
#include <map>

#include "engine/river/problem_groups.hpp"

namespace floatwright {
namespace {

template <class Item>
void ids_twice(const std::vector<Item>& items, const std::string& list, Problems& all) {
  std::map<std::string, std::size_t> first;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (items[i].id.empty()) continue;
    const auto [known, is_new] = first.emplace(items[i].id, i);
    if (is_new) continue;
    all.push_back(river_error(pointer_to(list, i, "/id"), "\"" + items[i].id + "\" a second time",
                              "every id once in " + list,
                              "Give it another id; " + pointer_to(list, known->second) + " has this one."));
  }
}

template <class Item>
bool holds(const std::vector<Item>& items, const std::string& id) {
  return std::ranges::find(items, id, &Item::id) != items.end();
}

template <class Item>
std::string ids_of(const std::vector<Item>& items) {
  std::string list;
  for (const auto& item : items) list += (list.empty() ? "" : ", ") + item.id;
  return list.empty() ? "none yet" : list;
}

void unknown_take_outs(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.accesses.size(); ++i) {
    for (const auto& [id, drive] : river.accesses[i].to_take_out) {
      const std::string pointer = pointer_to("accesses", i, "/to_take_out/" + pointer_token(id));
      if (!holds(river.accesses, id)) {
        all.push_back(river_error(pointer, "a drive to \"" + id + "\", which is no access",
                                  "ids of accesses: " + ids_of(river.accesses), "Mend the id, or add the access."));
      } else if (drive < Duration{}) {
        all.push_back(river_error(pointer, short_number(in_minutes(drive)) + " minutes", "0 or more",
                                  "Type the drive in minutes."));
      }
    }
  }
}

void unknown_gauges(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.tributaries.size(); ++i) {
    const auto& tributary = river.tributaries[i];
    if (tributary.gauge.empty()) continue;
    const auto gauge = std::ranges::find(river.gauges, tributary.gauge, &GaugeSite::id);
    const std::string pointer = pointer_to("tributaries", i, "/gauge");
    if (gauge == river.gauges.end()) {
      all.push_back(river_error(pointer, "\"" + tributary.gauge + "\", which is no gauge",
                                "ids of gauges: " + ids_of(river.gauges), "Mend the id, or add the gauge."));
    } else if (gauge->place) {
      all.push_back(river_error(pointer, "\"" + tributary.gauge + "\", which stands on the main stem",
                                "a gauge without a mile", "Take the mile away from the gauge, or name another gauge."));
    }
  }
}

void idle_gauges(const River& river, Problems& all) {
  std::map<std::string, std::size_t> stations;
  for (std::size_t i = 0; i < river.gauges.size(); ++i) {
    const auto& gauge = river.gauges[i];
    const bool used =
        gauge.place || std::ranges::find(river.tributaries, gauge.id, &Tributary::gauge) != river.tributaries.end();
    if (!used) {
      all.push_back(river_warning(pointer_to("gauges", i),
                                  called("gauge", gauge.id, i) + " has no mile and no tributary",
                                  "a mile on the stem, or a tributary that names it",
                                  "Give it its mile, name it in a tributary, or take it out."));
    }
    if (gauge.station.empty()) continue;
    const auto [known, is_new] = stations.emplace(gauge.station, i);
    if (is_new) continue;
    all.push_back(
        river_error(pointer_to("gauges", i, "/station"), gauge.station + " a second time", "every station once",
                    "Take one of the two gauges out; the other is " + pointer_to("gauges", known->second) + "."));
  }
}

void unknown_side_channels(const River& river, Problems& all) {
  std::map<std::string, std::size_t> first;
  for (std::size_t i = 0; i < river.reaches.size(); ++i) {
    const std::string& id = river.reaches[i].in_side_channel;
    if (id.empty()) continue;
    if (!holds(river.side_channels, id)) {
      all.push_back(
          river_error(pointer_to("reaches", i, "/in_side_channel"), "\"" + id + "\", which is no side channel",
                      "ids of side channels: " + ids_of(river.side_channels), "Mend the id, or add the side channel."));
      continue;
    }
    const auto [known, is_new] = first.emplace(id, i);
    if (is_new) continue;
    all.push_back(river_error(pointer_to("reaches", i, "/in_side_channel"),
                              "a second reach in side channel \"" + id + "\"", "one reach for each side channel",
                              "Put its waters into " + pointer_to("reaches", known->second) + "."));
  }
}

void too_few(const River& river, Problems& all) {
  const bool only_lakes =
      river.accesses.empty() && river.reaches.empty() && river.notes.empty() && !river.lakes.empty();
  if (only_lakes) return;
  if (std::ranges::none_of(river.gauges, [](const GaugeSite& g) { return g.place.has_value(); })) {
    all.push_back(river_error("/gauges", "no gauge on the river", "one or more gauges with a mile",
                              "Add the gauge whose flow you plan by, with its station and its river mile."));
  }
  if (river.accesses.size() < 2) {
    all.push_back(river_error("/accesses", std::to_string(river.accesses.size()) + " of them", "two or more",
                              "Add the put-in and the take-out, each with its river mile."));
  }
}

}  // namespace

Problems identity_problems(const River& river) {
  Problems all;
  ids_twice(river.gauges, "gauges", all);
  ids_twice(river.accesses, "accesses", all);
  ids_twice(river.reaches, "reaches", all);
  ids_twice(river.dams, "dams", all);
  ids_twice(river.tributaries, "tributaries", all);
  ids_twice(river.side_channels, "side_channels", all);
  ids_twice(river.diversions, "diversions", all);
  ids_twice(river.spots, "spots", all);
  ids_twice(river.lakes, "lakes", all);
  unknown_take_outs(river, all);
  unknown_gauges(river, all);
  idle_gauges(river, all);
  unknown_side_channels(river, all);
  too_few(river, all);
  return all;
}

}  // namespace floatwright
