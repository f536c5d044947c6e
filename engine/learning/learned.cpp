#include "engine/learning/learned.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>
#include <tuple>

#include "engine/learning/belief.hpp"
#include "engine/river/names.hpp"
#include "engine/river/shares.hpp"
#include "engine/water/floating_speed.hpp"
#include "engine/water/reach_at_flow.hpp"

namespace floatwright {
namespace {

constexpr double kSounded = 0.10, kCounted = 0.20, kTimed = 0.10;     // sd of ln; judgement
constexpr double kStopsNoted = 0.10, kStopsGuessed = 0.20;            // likewise, of a float time
constexpr double kContradicts = 3.0;                                  // scatters apart; judgement
constexpr Period kEarliestClock = std::chrono::hours{14};             // the day begins there first (UTC+14)
constexpr Duration kShortestDrift = minutes(10.0);

// What an entry says of one number: that it lies between these, softly. A value is both.
struct Said {
  std::size_t entry = 0;
  double least = 0.0, most = 0.0, sd = 0.1;
};
constexpr double kNoEnd = std::numeric_limits<double>::infinity();

using Evidence = std::vector<Said>;

Correction correction(const Evidence& evidence) {
  if (evidence.empty()) return {};
  std::vector<SeenValue> values;
  std::vector<SeenBound> bounds;
  std::set<std::size_t> entries;  // one may have sounded and touched
  for (const Said& said : evidence) {
    entries.insert(said.entry);
    if (said.least == said.most)
      values.push_back({said.least, said.sd});
    else
      bounds.push_back({std::isfinite(said.most) ? said.most : said.least, said.sd, std::isfinite(said.most)});
  }
  const Belief now = belief(kPriorSd, values, bounds);
  return {now.mean, now.sd / kPriorSd, static_cast<int>(entries.size())};
}

bool apart(const Said& a, const Said& b) {
  return std::max(a.least - b.most, b.least - a.most) > kContradicts * std::hypot(a.sd, b.sd);
}

void add_contradictions(const Evidence& evidence, std::vector<Contradiction>& found) {
  for (std::size_t i = 0; i < evidence.size(); ++i)
    for (std::size_t j = i + 1; j < evidence.size(); ++j)
      if (apart(evidence[i], evidence[j])) found.push_back({evidence[i].entry, evidence[j].entry});
}

struct WaterEvidence {
  NamedWater where;
  Evidence depth, speed;
};

class Judge {
 public:
  Judge(const River& river, const RiverGraph& graph, const std::vector<LogEntry>& entries)
      : river_(river), graph_(graph), entries_(entries) {}

  Learned learned() && {
    for (std::size_t i = 0; i < entries_.size(); ++i) {
      const std::string why = logged_ahead(entries_[i]) ? "it was logged while that hour was still to come"
                              : entries_[i].trip        ? heard_float(i)
                                                        : heard_water(i);
      if (!why.empty()) out_.idle.push_back({i, why});
    }
    for (const auto& [key, water] : waters_) add_water(water);
    for (const auto& [boat, evidence] : boats_) {
      out_.boats.push_back({boat, correction(evidence)});
      add_contradictions(evidence, out_.contradictions);
    }
    return std::move(out_);
  }

 private:
  static bool logged_ahead(const LogEntry& entry) {
    return entry.logged_at && (entry.trip ? entry.trip->taken_out : entry.at) > *entry.logged_at;
  }

  // What the note says of the water at the entry's flow.
  [[nodiscard]] Measured<Lane> as_noted(const NamedWater& named, Discharge flow) const {
    const Water& water = waters_of(river_, named.holder, named.of)[named.water];
    const Reach& reach = graph_.reaches[named.reach];
    const Discharge own = own_flow(river_, reach, flow);
    return ReachAtFlow(river_, reach, {own, own, own}).lane_of(water);
  }

  // The last day on which the note of that flow was seen; an entry from before it was known to whoever wrote it.
  [[nodiscard]] bool before_its_note(const LogEntry& entry, const NamedWater& named, const Lane& noted) const {
    for (const WaterNote& note : waters_of(river_, named.holder, named.of)[named.water].notes)
      if (note.at_flow == noted.noted_at && note.seen_on && entry.at + kEarliestClock < std::chrono::sys_days{*note.seen_on})
        return true;
    return false;
  }

  // Each answers with why the entry teaches nothing; empty where it does.
  std::string heard_water(std::size_t i) {
    const LogEntry& entry = entries_[i];
    const bool speaks = entry.depth || entry.surface_speed || (entry.bottom && entry.fly);
    const auto named = water_named(river_, graph_, entry.where, entry.water);
    if (!named.has_value()) return named.why_absent();
    if (!speaks)
      return entry.bottom ? "how deep the fly was is not known: name the rod, or write fly and its depth"
                          : "it has no depth, no speed and no touch of the bottom";
    if (!entry.flow) return "the flow there and then is not known";
    const auto noted = as_noted(*named, entry.flow->best);
    if (!noted.has_value()) return noted.why_absent();
    if (before_its_note(entry, *named, *noted)) return "the note of that water is newer";
    WaterEvidence& water = waters_[{named->holder, named->of, named->water}];
    water.where = *named;
    add_depth(i, noted->depth.middle, water.depth);
    if (entry.surface_speed) add_speed(i, noted->surface_speed.middle, water.speed);
    return "";
  }

  static void add_value(std::size_t i, double x, double sd, Evidence& evidence) { evidence.push_back({i, x, x, sd}); }
  void add_depth(std::size_t i, Length noted, Evidence& depth) const {
    const LogEntry& entry = entries_[i];
    if (entry.depth) add_value(i, std::log(*entry.depth / noted), entry.by_count ? kCounted : kSounded, depth);
    if (!entry.bottom || !entry.fly) return;
    const double fly = std::log(entry.fly->depth / noted);
    depth.push_back({i, *entry.bottom ? -kNoEnd : fly, *entry.bottom ? fly : kNoEnd, entry.fly->sd_ln});
  }
  void add_speed(std::size_t i, SurfaceSpeed noted, Evidence& speed) const {
    const SurfaceSpeed met = *entries_[i].surface_speed;
    if (met > SurfaceSpeed{} && noted > SurfaceSpeed{}) add_value(i, std::log(met / noted), kTimed, speed);
  }

  std::string heard_float(std::size_t i) {
    const LogEntry& entry = entries_[i];
    const FloatMet& trip = *entry.trip;
    const Access* const from = access(trip.from);
    const Access* const to = access(trip.to);
    if (from == nullptr || to == nullptr)
      return fmt::format("no access here is called \"{}\"", from == nullptr ? trip.from : trip.to);
    if (from->place <= to->place) return fmt::format("{} does not lie downstream of {}", to->name, from->name);
    if (!flows_are_known(entry)) return "the flow there and then is not known";
    const Duration met = duration(trip.taken_out - entry.at) - trip.stopped;
    if (met < kShortestDrift) return "less than ten minutes of it were afloat";
    const Duration noted = time_afloat(*from, *to, entry);
    add_value(i, std::log(noted / met), trip.stopped_noted ? kStopsNoted : kStopsGuessed, boats_[trip.boat]);
    return "";
  }

  static bool flows_are_known(const LogEntry& entry) {
    const auto runs = [](const std::optional<Band<Discharge>>& flow) { return flow && flow->best > Discharge{}; };
    return runs(entry.flow) && (!entry.trip->flow_at_end || runs(entry.trip->flow_at_end));
  }
  [[nodiscard]] const Access* access(const std::string& id) const {
    const auto found = std::ranges::find(river_.accesses, id, &Access::id);
    return found == river_.accesses.end() ? nullptr : &*found;
  }

  // At the boat's noted pace, the flow by its logarithm in even steps from the put-in's to the take-out's.
  [[nodiscard]] Duration time_afloat(const Access& from, const Access& to, const LogEntry& entry) const {
    const double first = std::log(in_cubic_metres_per_second(entry.flow->best));
    const auto& end = entry.trip->flow_at_end;
    const double last = end ? std::log(in_cubic_metres_per_second(end->best)) : first;
    Duration time;
    for (const std::size_t r : graph_.between(from.place, to.place)) {
      const Reach& reach = graph_.reaches[r];
      const RiverPlace top = std::min(from.place, reach.from), foot = std::max(to.place, reach.to);
      if (!(top - foot > Length{})) continue;
      const double along = (from.place - upstream_of(foot, 0.5 * (top - foot))) / (from.place - to.place);
      const Discharge flow = cubic_metres_per_second(std::exp(first + along * (last - first)));
      time = time + (top - foot) / floating_speed(river_, reach, own_flow(river_, reach, flow));
    }
    return time;
  }

  void add_water(const WaterEvidence& met) {
    const Water& water = waters_of(river_, met.where.holder, met.where.of)[met.where.water];
    const WaterNote& note = water.notes.back();
    const auto noted = as_noted(met.where, note.at_flow);
    out_.waters.push_back({met.where, water.type, note.at_flow, noted.has_value() ? noted->depth.middle : note.depth,
                           noted.has_value() ? noted->surface_speed.middle : note.surface_speed, correction(met.depth),
                           correction(met.speed)});
    add_contradictions(met.depth, out_.contradictions);
    add_contradictions(met.speed, out_.contradictions);
  }

  const River& river_;
  const RiverGraph& graph_;
  const std::vector<LogEntry>& entries_;
  std::map<std::tuple<WaterHolder, std::size_t, std::size_t>, WaterEvidence> waters_;
  std::map<std::string, Evidence> boats_;
  Learned out_;
};

}  // namespace

Learned learned(const River& river, const RiverGraph& graph, const std::vector<LogEntry>& entries) {
  return Judge(river, graph, entries).learned();
}

const LearnedWater* learned_of(const Learned& learned, WaterHolder holder, std::size_t of, WaterType type) {
  const auto found = std::ranges::find_if(learned.waters, [&](const LearnedWater& water) {
    return water.where.holder == holder && water.where.of == of && water.type == type;
  });
  return found == learned.waters.end() ? nullptr : &*found;
}

Lane corrected(Lane noted, const LearnedWater& met) {
  noted.depth = each_case(noted.depth, [&](Length depth) { return std::exp(met.depth.ln) * depth; });
  noted.surface_speed = each_case(noted.surface_speed, [&](SurfaceSpeed speed) { return std::exp(met.speed.ln) * speed; });
  noted.sd_ln_depth *= met.depth.scatter_left;
  noted.sd_ln_speed *= met.speed.scatter_left;
  return noted;
}

Correction pace_of(const Learned& learned, const std::string& boat) {
  const auto found = std::ranges::find(learned.boats, boat, &LearnedPace::boat);
  return found == learned.boats.end() ? Correction{} : found->pace;
}

}  // namespace floatwright
