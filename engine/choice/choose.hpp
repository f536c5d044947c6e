#pragma once
// The choice for one water at one hour: which rig, how fished, from which platform. Rigs are ranked by effective
// seconds per minute (Z) inside a method, methods by worth W = preference x suits x min(1, E/0.5). Names no winner of
// nothing.
#include <optional>
#include <string>
#include <vector>

#include "engine/choice/angler.hpp"
#include "engine/choice/judgement.hpp"
#include "engine/sinking/cast_path.hpp"
#include "engine/units/band.hpp"
#include "engine/water/lane.hpp"

namespace floatwright {

class FishingTables;  // engine/sinking/fishing_tables.hpp

struct WaterToFish {
  WaterType type = WaterType::Run;
  Bed bed = Bed::Unknown;
  Lane lane;
  PerCase<SurfaceSpeed> boat_lane;  // surface speed of the thread the boat itself is in
  Measured<Temperature> temperature;
  Measured<Turbidity> clarity;
  std::optional<Angle> sun_elevation;  // low light under 10 degrees; none: not counted
  bool hatch = false;                  // a listed hatch in its hours
  std::optional<Speed> wind;           // forecast for the hour; none: not counted
  std::vector<Platform> platforms;     // what the settings allow at this water
};

struct ScoredRig {
  Rig rig;
  Technique technique;
  Length leader;
  Length indicator_to_fly;     // indicator only
  double seconds = 0.0;        // Z: effective seconds per minute
  double efficiency = 0.0;     // E = Z / (Z with w = 1 and S = 1)
  double worth = 0.0;          // W, never printed
  double snag_per_cast = 0.0;  // 1 - S at the end of a cast, mean
  Band<Length> fly_depth;      // of the fly while it fishes, with the printed band of docs/equations.md
};

struct FlowRange {
  std::optional<Discharge> from, to;  // the same line holds in it, as far as was looked
};
struct LineChange {
  Discharge at;
  ScoredRig to;
};

inline constexpr const char* kNoLineReaches = "No line aboard reaches the fish here; fish the softer edge.";
inline constexpr const char* kNothingFishedHere = "Nothing aboard can be fished here in the ways you fish.";

struct WaterChoice {
  std::optional<ScoredRig> best;  // none: `why_none`
  std::string why_none;
  std::optional<ScoredRig> runner_up;  // other line, or same line other method re-rigged; itself fishes
  std::vector<ScoredRig> as_good;      // within 10 % of the best Z, at most two, other lines first
  std::vector<ScoredRig> by_method;    // the best rig of every method fished
  std::optional<LineChange> changes_below, changes_above;  // filled by changes_at()
  FlowRange holds;
};

// The rigs of every preferred method in this water, scored, best first by worth, then efficiency: the raw list behind
// a choice. In stages, because the path of a cast is what costs: every way of fishing every rig in the middle case
// (finer strips only where coarse ones promise); then, in all three cases, the best dozen ways of each method, the best of
// each platform and line, and each rig that is not far behind its line's best. What is further behind is not in the
// list. Where there are tables, swings and strips are read from them: within 1 to 4 % of the seconds in the mean, by the bed
// (docs/accuracy.md).
[[nodiscard]] std::vector<ScoredRig> ranked_rigs(const WaterToFish& water, const Tackle& tackle,
                                                 const Preferences& preferences, const Judgement& judgement,
                                                 const FishingTables* tables = nullptr);
// The same list with the best dozen swings and strips, and what would be advised among the rest, worked out where `ranked`
// has them from tables.
[[nodiscard]] std::vector<ScoredRig> best_worked_out(const std::vector<ScoredRig>& ranked, const WaterToFish& water,
                                                     const Tackle& tackle, const Preferences& preferences,
                                                     const Judgement& judgement, const FishingTables* tables);
// Both in one.
[[nodiscard]] std::vector<ScoredRig> scored_rigs(const WaterToFish& water, const Tackle& tackle,
                                                 const Preferences& preferences, const Judgement& judgement,
                                                 const FishingTables* tables = nullptr);

// `rigged`: what is on the rods now; kept when within 10 %.
[[nodiscard]] WaterChoice choose(const WaterToFish& water, const Tackle& tackle, const Preferences& preferences,
                                 const Judgement& judgement, const std::vector<Rig>& rigged = {},
                                 const FishingTables* tables = nullptr);

// One water through the day for the rod problem: its minutes, and every scored rig.
struct WaterMinutes {
  Duration time;
  std::vector<ScoredRig> scored;
};
struct RodPlan {
  std::vector<std::size_t> rods;  // indices into Tackle::rods, the k aboard
  std::vector<std::optional<Rig>>
      at_launch;                    // by `rods`: what each carries at launch; none: nothing on it fishes today
  std::vector<std::size_t> spares;  // lines in the bag that a change needs
  std::vector<std::optional<std::size_t>> use;  // by water: index into its `scored`, none where nothing fishes
  int changes = 0;
  Duration lost;
  double worth = 0.0;  // min: what is made the most of, see below
};
// Maximises minutes x W x min(1, Z/(0.9 best Z of the method there)) (best of the k rods aboard) less minutes lost in
// changes (fly 2, leader 5, tip 4, spool 10; the
// dearest that applies, engine/choice/rigging.hpp): a dynamic programme over (water, what each rod carries), exact over
// rod sets and over what they carry, but for sets with more than 1,728 states, which are thinned to
// the rigs that are best for most minutes on their rod. Equal worth: a line made for the method, then plainer tackle
// (engine/choice/rod_load.hpp).
[[nodiscard]] RodPlan rods_aboard(const std::vector<WaterMinutes>& waters, const Tackle& tackle,
                                  const Preferences& preferences, const Judgement& judgement);

}  // namespace floatwright
