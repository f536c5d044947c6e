#include "adapters/cli/believed_then.hpp"

#include <algorithm>

#include "adapters/cli/day_inputs.hpp"
#include "adapters/cli/day_tables.hpp"
#include "adapters/cli/gather_order.hpp"
#include "adapters/cli/message.hpp"
#include "engine/choice/rig_in_water.hpp"
#include "engine/choice/scatter.hpp"
#include "engine/learning/water_named.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/trip/met_water.hpp"
#include "engine/trip/timetable.hpp"
#include "engine/water/bed_profile.hpp"

namespace floatwright {
namespace {

constexpr Period kBefore = std::chrono::hours{120};  // of the first thing met: what a day's outlook looks back, and a day

constexpr Period kReadAbout = std::chrono::hours{48};  // as long as a silent gauge is carried on: without a reading so near,
                                                      // typed releases alone tell nothing of a day that they do not name

bool any_gauge_was_read_about(const std::vector<GaugeRecord>& records, Instant t) {
  const auto near = [&](const Series<Discharge>& read) {
    return std::ranges::any_of(read.times, [&](Instant at) { return std::chrono::abs(at - t) <= kReadAbout; });
  };
  return std::ranges::any_of(records, [&](const GaugeRecord& r) { return near(r.discharge) || near(r.daily_discharge); });
}

const Access* access_of(const River& river, const std::string& id) {
  const auto found = std::ranges::find(river.accesses, id, &Access::id);
  return found == river.accesses.end() ? nullptr : &*found;
}

std::optional<Band<Discharge>> flow_of(const RiverDay& day, std::size_t reach, Instant t) {
  const auto flow = whole_flow(day, reach, t);
  if (!flow.has_value() || !(flow->middle > Discharge{})) return std::nullopt;
  return Band<Discharge>{std::min(flow->low, flow->middle), flow->middle, std::max(flow->high, flow->middle)};
}

std::optional<Band<Discharge>> flow_at_place(const RiverDay& day, RiverPlace place, Instant t) {
  const auto reach = day.graph.at(place);
  return reach ? flow_of(day, *reach, t) : std::nullopt;
}

Passage passage_of(const NamedWater& named) {
  Passage passage{.from = named.place, .to = named.place, .name = named.name, .reach = named.reach};
  if (named.holder == WaterHolder::Spot) passage.spot = named.of;
  return passage;
}

// The rod's best rig in that water at that hour, as a plan would have it.
std::optional<ScoredRig> rig_on(const RiverDay& day, const WaterToFish& water, std::size_t rod) {
  Preferences only_it = day.settings.preferences;
  for (std::size_t other = 0; other < day.tackle.rods.size(); ++other)
    if (other != rod) only_it.rods_elsewhere.insert(other);
  const auto scored = scored_rigs(water, day.tackle, only_it, day.judgement, day.tables);
  const auto under = std::ranges::find_if(scored, [](const ScoredRig& rig) { return rig.technique.method != Method::Dry; });
  return under == scored.end() ? std::nullopt : std::optional(*under);
}

// How deep the fly of that rig goes where there is no bed.
std::optional<FlyReach> fly_reach(const RiverDay& day, const WaterToFish& water, const ScoredRig& scored) {
  const KnownWater known{.depth = water.lane.depth.middle,
                         .surface_speed = water.lane.surface_speed.middle,
                         .profile = bed_profile(water.bed, water.lane.depth.middle),
                         .bed = water.bed,
                         .temperature = water.temperature,
                         .boat_lane = water.boat_lane.middle};
  const auto fished = rig_in_water(day.tackle, scored.rig, scored.technique, known,
                                   day.settings.preferences.anglers.front().cast, day.judgement);
  if (!fished.has_value() || fished->path.samples.empty()) return std::nullopt;
  Length deepest;
  for (const CastSample& sample : fished->path.samples) deepest = std::max(deepest, sample.fly_depth);
  if (!(deepest > Length{})) return std::nullopt;
  return FlyReach{deepest, rig_scatter(scored.technique, day.judgement.scatter)};
}

std::optional<FlyReach> fly_of_rod(const RiverDay& day, const NamedWater& named, std::size_t rod, Instant at) {
  const Passage passage = passage_of(named);
  const Water& water = waters_of(day.river, named.holder, named.of)[named.water];
  const auto met = met_water(day, passage, water, at);
  if (!met.to_fish.has_value()) return std::nullopt;
  const auto rig = rig_on(day, *met.to_fish, rod);
  return rig ? fly_reach(day, *met.to_fish, *rig) : std::nullopt;
}

}  // namespace

BelievedThen::BelievedThen(const CommonOptions& options, const Configuration& configuration, Instant earliest, Instant now)
    : options_(options), configuration_(configuration), now_(now) {
  options_.offline = options_.quiet = true;
  Payloads payloads = gather_series(configuration, stations_of(configuration.river), earliest - kBefore,
                                    gather_order(options_, configuration, now, Period{0}));
  if (!options.quiet)
    for (const auto& trouble : payloads.troubles) say_beside(trouble);
  series_ = std::move(payloads.series);
}

// With what was read up to the end of that day, or to now.
BelievedThen::DayThen& BelievedThen::day_of(Instant t) {
  const std::string& zone = configuration_.river.time_zone;
  const auto day = local_date(t, zone);
  auto& kept = days_[std::chrono::sys_days{day}];
  if (kept) return *kept;
  const Instant until = std::min(now_, local_day(day, zone).end);
  Gathered gathered;
  for (const GaugeSite& gauge : configuration_.river.gauges)
    gathered.records.push_back(gauge_record(gauge.id, gauge.station, series_, "", until));
  kept = std::make_unique<DayThen>(DayThen{day_inputs(options_, Configuration{configuration_}, until, day, std::move(gathered)), {}});
  kept->water = water_of_day(kept->in);
  return *kept;
}

void BelievedThen::complete_float(LogEntry& entry, DayThen& then) {
  const RiverDay day = river_day(then.in, then.water);
  FloatMet& trip = *entry.trip;
  const Access* const from = access_of(day.river, trip.from);
  const Access* const to = access_of(day.river, trip.to);
  if (from == nullptr || to == nullptr || from->place <= to->place) return;
  if (!entry.flow) entry.flow = flow_at_place(day, from->place, entry.at);
  if (!trip.flow_at_end) trip.flow_at_end = flow_at_place(day, to->place, trip.taken_out);
  if (trip.stopped_noted || trip.stopped > Duration{}) return;
  for (const TimedPassage& row : timetable(day, from->place, to->place, entry.at).rows)
    trip.stopped = trip.stopped + row.stops + row.lunch + row.portage;
}

void BelievedThen::complete_water(LogEntry& entry, DayThen& then) {
  const auto named = water_named(then.in.river, then.water.graph, entry.where, entry.water);
  if (!named.has_value()) return;
  if (!entry.flow) entry.flow = flow_of(river_day(then.in, then.water), named->reach, entry.at);
  const auto rod = std::ranges::find(then.in.tackle.rods, entry.rod, &Rod::id);
  if (!entry.bottom || entry.fly || entry.depth || !entry.flow || rod == then.in.tackle.rods.end()) return;
  if (!then.has_tables) then.in.tables = day_tables(then.in, {}, {.quiet = true});
  then.has_tables = true;
  entry.fly = fly_of_rod(river_day(then.in, then.water), *named,
                         static_cast<std::size_t>(rod - then.in.tackle.rods.begin()), entry.at);
}

void BelievedThen::complete(LogEntry& entry) {
  if (entry.at > now_) return;
  DayThen& then = day_of(entry.at);
  if (!any_gauge_was_read_about(then.in.records, entry.at)) return;
  if (entry.trip)
    complete_float(entry, then);
  else
    complete_water(entry, then);
}

}  // namespace floatwright
