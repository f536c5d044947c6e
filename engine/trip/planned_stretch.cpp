#include "engine/trip/planned_stretch.hpp"

#include <algorithm>

#include "engine/choice/advise.hpp"
#include "engine/choice/changes.hpp"
#include "engine/choice/ranking.hpp"
#include "engine/choice/rigging.hpp"
#include "engine/trip/bands.hpp"
#include "engine/trip/cautions.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/trip/planned_reach.hpp"

namespace floatwright {
namespace {

constexpr const char* kRuledOut = "not looked at: ruled out";
constexpr const char* kNoLine = "No line aboard reaches the fish here; fish the softer edge.";
constexpr const char* kNoRodLeft = "No rod left in the pool fishes here.";

// A water of the plan that can be fished, and where it stands.
struct Fishable {
  std::size_t reach, water;
  const ScoredWater* page;
};

Measured<Band<Discharge>> flow_band(const RiverDay& day, std::size_t reach, Instant t) {
  const auto flow = known_flow(day, reach, t);
  return flow.has_value() ? Measured<Band<Discharge>>{band_of(*flow)} : Absent{flow.why_absent()};
}
Measured<Band<Temperature>> temperature_band(const RiverDay& day, std::size_t reach, Instant t) {
  const auto there = known_temperature(day, reach, t);
  return there.has_value() ? Measured<Band<Temperature>>{band_of(*there)} : Absent{there.why_absent()};
}

void add_spot(const Spot& spot, PlannedStretch& planned) {
  planned.spot = spot.platform;
  planned.from = planned.to = spot.id;
  planned.from_name = planned.to_name = spot.name.empty() ? spot.id : spot.name;
  planned.from_place = planned.to_place = spot.place;
}

void add_places(const RiverDay& day, const Stretch& stretch, PlannedStretch& planned) {
  if (stretch.spot) return add_spot(day.river.spots[*stretch.spot], planned);
  const Access& from = day.river.accesses[stretch.put_in];
  const Access& to = day.river.accesses[stretch.take_out];
  planned.from = from.id;
  planned.to = to.id;
  planned.from_name = from.name;
  planned.to_name = to.name;
  planned.from_place = from.place;
  planned.to_place = to.place;
  planned.length = from.place - to.place;
  const auto drive = from.to_take_out.find(to.id);
  if (drive != from.to_take_out.end()) planned.shuttle = drive->second;
}

void add_hours(const RiverDay& day, const Timetable& times, PlannedStretch& planned) {
  planned.launch = times.launch;
  planned.end = times.end;
  planned.off_by = times.off_by;
  planned.on_water = duration(times.end - times.launch);
  const std::size_t first = times.rows.front().passage.reach, last = times.rows.back().passage.reach;
  planned.flow_at_launch = flow_band(day, first, times.launch);
  planned.water_at_launch = temperature_band(day, first, times.launch);
  planned.water_at_end = temperature_band(day, last, times.end);
}

void add_notes(const RiverDay& day, const Timetable& times, PlannedStretch& planned) {
  for (const SideChannel& side : day.river.side_channels) {
    if (!lies_between(side.leaves, planned.from_place, planned.to_place)) continue;
    planned.notes.push_back((side.name.empty() ? side.id : side.name) + " is not floated: the plan keeps to the main channel.");
  }
  for (const TimedPassage& row : times.rows) {
    if (!row.passage.lake) continue;
    planned.notes.push_back(day.river.lakes[*row.passage.lake].name + " is rowed across.");
  }
  const auto& asked = day.settings.launch;
  if (asked && times.launch > at_local(day.day, *asked, day.river.time_zone))
    planned.notes.push_back("The launch asked for is before first light, or past: it is put off until then.");
}

// The rows with their waters; what can be fished is listed too.
std::vector<Fishable> add_reaches(const RiverDay& day, WaterBook& book, Scored how, const Stretch& stretch,
                                  PlannedStretch& planned) {
  std::vector<Fishable> fishable;
  for (const TimedPassage& row : stretch.times.rows) {
    PlannedReach reach = planned_reach(day, row);
    const Duration fishing = fishing_in(row, planned.stop_by);
    const std::string why_not = stretch.broken ? kRuledOut : why_not_fished(reach, fishing);
    const auto& waters = waters_of(day, row.passage);
    for (std::size_t w = 0; w < waters.size(); ++w) {
      const ScoredWater* page = why_not.empty() ? &book.at({row.passage, w, reach.read_at}, how) : nullptr;
      reach.waters.push_back(page ? page->met.printed : met_water(day, row.passage, waters[w], reach.read_at).printed);
      PlannedWater& water = reach.waters.back();
      water.choice.why_none = why_not;
      if (page == nullptr) continue;
      water.fishing = fishing * water.fishing_time;
      if (!page->met.to_fish.has_value()) water.choice.why_none = page->met.to_fish.why_absent();
      if (page->met.to_fish.has_value()) fishable.push_back({planned.reaches.size(), w, page});
    }
    planned.reaches.push_back(std::move(reach));
  }
  return fishable;
}

// What is scored there on the rods that the boat may have.
std::vector<ScoredRig> scored_for_this_boat(const RiverDay& day, const ScoredWater& page) {
  std::vector<ScoredRig> scored = page.scored;
  std::erase_if(scored, [&](const ScoredRig& s) { return is_elsewhere(s.rig, day.tackle, day.settings.preferences); });
  return scored;
}

std::string why_not_used(const RiverDay& day, const ScoredWater& page, const std::string& why) {
  const bool on_some_rod = std::any_of(page.scored.begin(), page.scored.end(),
                                       [&](const ScoredRig& s) { return fishes(s, day.judgement.choice); });
  const bool pool = !day.settings.preferences.rods_elsewhere.empty();
  if (pool && on_some_rod) return kNoRodLeft;
  return why.empty() ? kNoLine : why;
}

// What is rigged and used, with what the whole table has to say of the water beside it.
WaterChoice choice_of(const RiverDay& day, const ScoredWater& page, const std::optional<std::size_t>& use) {
  std::vector<Rig> rigged;
  if (use) rigged.push_back(page.scored[*use].rig);
  WaterChoice choice = advise(scored_for_this_boat(day, page), day.tackle, day.judgement.choice, rigged);
  if (!use) {
    choice.best.reset();
    choice.why_none = why_not_used(day, page, choice.why_none);
    return choice;
  }
  const ScoredRig& used = page.scored[*use];
  const auto better = choice.best;
  choice.best = used;
  choice.why_none.clear();
  const auto same = [&](const ScoredRig& other) { return other.rig == used.rig && other.technique == used.technique; };
  std::erase_if(choice.as_good, same);
  if (choice.runner_up && same(*choice.runner_up)) {
    choice.runner_up.reset();
    if (better && !same(*better)) choice.runner_up = better;
  }
  return choice;
}

std::vector<WaterMinutes> minutes_of(const std::vector<Fishable>& fishable, const PlannedStretch& planned) {
  std::vector<WaterMinutes> minutes;
  for (const Fishable& f : fishable) minutes.push_back({planned.reaches[f.reach].waters[f.water].fishing, f.page->scored});
  return minutes;
}

void add_choices(const RiverDay& day, const std::vector<Fishable>& fishable, PlannedStretch& planned) {
  planned.rods = rods_aboard(minutes_of(fishable, planned), day.tackle, day.settings.preferences, day.judgement);
  for (std::size_t i = 0; i < fishable.size(); ++i) {
    PlannedWater& water = planned.reaches[fishable[i].reach].waters[fishable[i].water];
    water.choice = choice_of(day, *fishable[i].page, i < planned.rods.use.size() ? planned.rods.use[i] : std::nullopt);
  }
}

// Rods on which nothing fishes today stay ashore.
void add_rigged(PlannedStretch& planned) {
  std::vector<std::size_t> rods;
  std::vector<std::optional<Rig>> at_launch;
  for (std::size_t i = 0; i < planned.rods.rods.size() && i < planned.rods.at_launch.size(); ++i) {
    if (!planned.rods.at_launch[i]) continue;
    rods.push_back(planned.rods.rods[i]);
    at_launch.push_back(planned.rods.at_launch[i]);
    planned.rigged.push_back(*planned.rods.at_launch[i]);
  }
  planned.rods.rods = std::move(rods);
  planned.rods.at_launch = std::move(at_launch);
}

void add_worth(PlannedStretch& planned) {
  for (const PlannedReach& reach : planned.reaches) {
    for (const PlannedWater& water : reach.waters) {
      planned.fishing = planned.fishing + water.fishing;
      if (!water.choice.best) continue;
      planned.fished = planned.fished + water.fishing;
    }
  }
  planned.worth = planned.rods.worth;
}

// Of a choice that has a best rig.
std::optional<ChangeSearch> search_for_changes(const RiverDay& day, WaterBook& book, const WaterAtHour& where,
                                               const WaterChoice& choice) {
  const auto flow = whole_flow(day, where.passage.reach, where.read_at);
  if (!flow.has_value() || flow->middle <= Discharge{}) return std::nullopt;
  const Water& water = waters_of(day, where.passage)[where.water];
  const auto water_at = [&day, &where, &water](Discharge q) {
    return water_at_flow(day, where.passage, water, where.read_at, q);
  };
  return ChangeSearch(*choice.best, scored_for_this_boat(day, book.at(where, Scored::WorkedOut)),
                      {flow->middle, water_at}, day.tackle, day.settings.preferences, day.judgement, day.tables);
}

}  // namespace

PlannedStretch planned_stretch(const RiverDay& day, WaterBook& book, Scored how, const Stretch& stretch) {
  PlannedStretch planned;
  add_places(day, stretch, planned);
  planned.limit = stretch.broken;
  if (stretch.broken) planned.verdict = Verdict::RuledOut;
  if (stretch.broken) planned.why = say_limit(*stretch.broken);
  if (!stretch.times.rows.empty()) {
    add_hours(day, stretch.times, planned);
    planned.stop_by = heat_of(day, stretch.times, heat_limits(day.river, day.settings)).stop_by;
    add_notes(day, stretch.times, planned);
    add_choices(day, add_reaches(day, book, how, stretch, planned), planned);
    add_rigged(planned);
    add_worth(planned);
  }
  planned.cautions = stretch.spot ? spot_cautions(day, stretch, planned) : stretch_cautions(day, stretch, planned);
  return planned;
}

std::vector<WaterMinutes> waters_fished(const RiverDay& day, WaterBook& book, const Stretch& stretch) {
  PlannedStretch planned;
  if (stretch.times.rows.empty()) return {};
  planned.stop_by = heat_of(day, stretch.times, heat_limits(day.river, day.settings)).stop_by;
  return minutes_of(add_reaches(day, book, Scored::WorkedOut, stretch, planned), planned);
}

void add_changes(const RiverDay& day, WaterBook& book, const Stretch& stretch, PlannedStretch& planned,
                 const DoEach& do_each) {
  std::vector<WaterAtHour> waters;
  std::vector<WaterChoice*> choices;  // by water
  for (std::size_t r = 0; r < planned.reaches.size(); ++r) {
    for (std::size_t w = 0; w < planned.reaches[r].waters.size(); ++w) {
      WaterChoice& choice = planned.reaches[r].waters[w].choice;
      if (!choice.best) continue;
      waters.push_back({stretch.times.rows[r].passage, w, planned.reaches[r].read_at});
      choices.push_back(&choice);
    }
  }
  std::vector<std::optional<ChangeSearch>> searches(waters.size());
  do_each(waters.size(), [&](std::size_t i) {
    if (auto search = search_for_changes(day, book, waters[i], *choices[i])) searches[i].emplace(*std::move(search));
  });
  do_each(2 * waters.size(), [&](std::size_t i) {  // a side each: one may take far longer than another
    const auto& search = searches[i / 2];
    if (!search) return;
    if (i % 2 == 0) search->look_below(*choices[i / 2]);
    if (i % 2 == 1) search->look_above(*choices[i / 2]);
  });
}

}  // namespace floatwright
