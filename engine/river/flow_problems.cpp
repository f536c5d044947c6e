// Flows, areas and times: shares of side channels, drainage areas, dams, wave times, limits.
#include <algorithm>
#include <cmath>

#include "engine/river/place_text.hpp"
#include "engine/river/problem_groups.hpp"
#include "engine/river/shares.hpp"

namespace floatwright {
namespace {

constexpr Length kGaugeSpeaksForDam = Length::from_si(8000.0);  // a gauge this near below shows what a dam lets out
constexpr Speed kSlowestWave = Speed::from_si(0.2),
                kFastestWave = Speed::from_si(8.0);  // beyond these a mile or hour is off
constexpr double kLeastAreaRatio = 0.3, kMostAreaRatio = 3.0;

std::string cfs(Discharge q) { return short_number(in_cubic_feet_per_second(q)) + " cfs"; }
std::string square_mile_text(Area a) { return short_number(in_square_miles(a)) + " mi2"; }

void shares(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.side_channels.size(); ++i) {
    const auto& rows = river.side_channels[i].share_by_flow;
    if (rows.empty()) {
      all.push_back(river_warning(pointer_to("side_channels", i),
                                  called("side channel", river.side_channels[i].id, i) + " has no share of the flow",
                                  "one or more rows in share_by_flow",
                                  "Guess its share at one flow; without it, it is dry."));
    }
    for (std::size_t j = 0; j < rows.size(); ++j) {
      const std::string pointer = pointer_to("side_channels", i, pointer_to("share_by_flow", j));
      if (!(rows[j].share >= 0.0 && rows[j].share <= 1.0)) {
        all.push_back(river_error(pointer, "a share of " + short_number(rows[j].share), "0 to 1",
                                  "Type the part of the whole flow that goes down the side channel; 0.15 is 15 %."));
      }
      if (j > 0 && !(rows[j].at_flow > rows[j - 1].at_flow)) {
        all.push_back(river_error(pointer, cfs(rows[j].at_flow) + " after " + cfs(rows[j - 1].at_flow),
                                  "flows that grow", "Put the rows in order of flow, each flow once."));
      }
    }
  }
}

// What all channels that are out at the head of this one take together, at the typed flow where that is most.
double taken_at_head(const River& river, const SideChannel& head) {
  const auto is_out = [&](const SideChannel& side) { return side.leaves >= head.leaves && side.returns < head.leaves; };
  double most = 0.0;
  for (const auto& side : river.side_channels) {
    for (const auto& row : side.share_by_flow) {
      double sum = 0.0;
      for (const auto& other : river.side_channels) sum += is_out(other) ? side_share(other, row.at_flow) : 0.0;
      if (is_out(side)) most = std::max(most, sum);
    }
  }
  return most;
}

void shares_together(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.side_channels.size(); ++i) {
    const auto& side = river.side_channels[i];
    const double taken = taken_at_head(river, side);
    const bool each_right =
        std::ranges::all_of(side.share_by_flow, [](const FlowShare& row) { return row.share <= 1.0; });
    if (taken <= 1.0 - kLeastOfTheStem || !each_right) continue;
    all.push_back(river_error(pointer_to("side_channels", i, "/share_by_flow"),
                              "side channels that take " + short_number(100.0 * taken) +
                                  " % of the river together below " + place_text(river, side.leaves),
                              "98 % or less: the main channel keeps some water",
                              "Mend a share; if most of the water goes that way, call it the main channel."));
  }
}

std::vector<std::size_t> gauges_with_area_from_the_top(const River& river) {
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < river.gauges.size(); ++i) {
    if (river.gauges[i].place && river.gauges[i].drainage_area) found.push_back(i);
  }
  std::ranges::sort(found, [&](auto a, auto b) { return *river.gauges[a].place > *river.gauges[b].place; });
  return found;
}

Area typed_tributaries(const River& river, RiverPlace upper, RiverPlace lower) {
  Area sum;
  for (const auto& t : river.tributaries) {
    if (t.joins_at <= upper && t.joins_at > lower && t.drainage_area) sum = sum + *t.drainage_area;
  }
  return sum;
}

void areas(const River& river, Problems& all) {
  const auto order = gauges_with_area_from_the_top(river);
  for (std::size_t k = 1; k < order.size(); ++k) {
    const auto& upper = river.gauges[order[k - 1]];
    const auto& lower = river.gauges[order[k]];
    const Area gain = *lower.drainage_area - *upper.drainage_area;
    const Area tributaries = typed_tributaries(river, *upper.place, *lower.place);
    const std::string pointer = pointer_to("gauges", order[k]);
    const std::string both = square_mile_text(*upper.drainage_area) + " at \"" + upper.id + "\" and " +
                             square_mile_text(*lower.drainage_area) + " at \"" + lower.id + "\" below it";
    if (gain < Area{}) {
      all.push_back(river_error(pointer, both, "drainage areas that grow downstream", "Mend an area or a mile."));
    } else if (tributaries > gain) {
      all.push_back(river_warning(pointer, both + ", and tributaries of " + square_mile_text(tributaries) + " between",
                                  "tributaries no larger than the gain between the gauges", "Mend an area or a mile."));
    }
  }
}

// A tributary's flow is its gauge's times the ratio of the areas, which is told up to three times either way.
void tributary_gauges(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.tributaries.size(); ++i) {
    const auto& tributary = river.tributaries[i];
    const auto gauge = std::ranges::find(river.gauges, tributary.gauge, &GaugeSite::id);
    if (tributary.gauge.empty() || gauge == river.gauges.end() || gauge->place) continue;
    if (!tributary.drainage_area || !gauge->drainage_area) continue;
    if (!(*tributary.drainage_area > Area{}) || !(*gauge->drainage_area > Area{})) continue;  // told as such
    const double ratio = *tributary.drainage_area / *gauge->drainage_area;
    if (ratio >= kLeastAreaRatio && ratio <= kMostAreaRatio) continue;
    all.push_back(river_warning(pointer_to("tributaries", i),
                                square_mile_text(*tributary.drainage_area) + " where it joins and " +
                                    square_mile_text(*gauge->drainage_area) + " at its gauge \"" + gauge->id + "\"",
                                "areas between 0.3 and 3 times each other",
                                "Mend an area; as it stands its flow is not told from that gauge."));
  }
}

template <class Item>
void positive_areas(const std::vector<Item>& items, const std::string& list, Problems& all) {
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (!items[i].drainage_area || *items[i].drainage_area > Area{}) continue;
    all.push_back(river_error(pointer_to(list, i), "a drainage area of " + square_mile_text(*items[i].drainage_area),
                              "over 0", "Mend it, or leave it out."));
  }
}

bool gauge_speaks_for(const River& river, const Dam& dam) {
  return std::ranges::any_of(river.gauges, [&](const GaugeSite& gauge) {
    return gauge.place && *gauge.place <= dam.place && dam.place - *gauge.place <= kGaugeSpeaksForDam &&
           std::ranges::none_of(
               river.dams, [&](const Dam& other) { return other.place < dam.place && other.place > *gauge.place; });
  });
}

void dams(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.dams.size(); ++i) {
    const auto& dam = river.dams[i];
    if (!dam.schedule.empty() || !dam.schedule_file.empty() || gauge_speaks_for(river, dam)) continue;
    all.push_back(river_warning(pointer_to("dams", i),
                                called("dam", dam.id, i) + " has no releases, and no gauge within " +
                                    distance_text(river, kGaugeSpeaksForDam) + " below shows them",
                                "a releases file, or a gauge below the dam",
                                "Add one; without it a change at the dam is not seen coming."));
  }
}

void wave_times(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.wave_times.size(); ++i) {
    const auto& wave = river.wave_times[i];
    if (!(wave.time > Duration{}) || !(wave.at_flow > Discharge{})) {
      all.push_back(
          river_error(pointer_to("wave_times", i), short_number(in_hours(wave.time)) + " h at " + cfs(wave.at_flow),
                      "a time and a flow over 0", "Type how long a change takes, and the flow it was seen at."));
      continue;
    }
    const Speed speed = (wave.from - wave.to) / wave.time;
    if (wave.from <= wave.to || (speed >= kSlowestWave && speed <= kFastestWave)) continue;
    all.push_back(river_warning(
        pointer_to("wave_times", i), "a change that travels at " + short_number(in_miles_per_hour(speed)) + " mph",
        short_number(in_miles_per_hour(kSlowestWave)) + " to " + short_number(in_miles_per_hour(kFastestWave)) + " mph",
        "Look at its miles and hours again."));
  }
}

void limits(const River& river, Problems& all) {
  const auto& boat = river.boat_limits;
  if (boat.least_flow && boat.most_flow && *boat.least_flow >= *boat.most_flow) {
    all.push_back(river_error("/boat_limits", "least " + cfs(*boat.least_flow) + ", most " + cfs(*boat.most_flow),
                              "a least flow under the most", "Exchange the two, or mend one."));
  }
  if (!(river.area_exponent > 0.0 && river.area_exponent <= 2.0)) {
    all.push_back(river_error("/area_exponent", short_number(river.area_exponent), "over 0, to 2; 1 is usual",
                              "Leave it out if you don't know it."));
  }
}

void hazards(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.hazards.size(); ++i) {
    const auto& hazard = river.hazards[i];
    if (hazard.must_portage && !hazard.portage_time) {
      all.push_back(river_warning(pointer_to("hazards", i), "a portage at " + hazard.what + " of unknown length",
                                  "portage_min", "Add the minutes it takes; without them the timetable counts none."));
    }
    if (hazard.portage_time && *hazard.portage_time < Duration{}) {
      all.push_back(river_error(pointer_to("hazards", i),
                                "a portage of " + short_number(in_minutes(*hazard.portage_time)) + " minutes",
                                "0 or more", "Type the minutes it takes."));
    }
  }
}

void diversions(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.diversions.size(); ++i) {
    if (river.diversions[i].flow >= Discharge{}) continue;
    all.push_back(river_error(pointer_to("diversions", i), cfs(river.diversions[i].flow), "0 or more",
                              "Type what it takes as a positive flow; water that comes in is a tributary."));
  }
}

}  // namespace

Problems flow_problems(const River& river) {
  Problems all;
  shares(river, all);
  shares_together(river, all);
  areas(river, all);
  tributary_gauges(river, all);
  positive_areas(river.gauges, "gauges", all);
  positive_areas(river.tributaries, "tributaries", all);
  dams(river, all);
  wave_times(river, all);
  limits(river, all);
  hazards(river, all);
  diversions(river, all);
  return all;
}

}  // namespace floatwright
