#pragma once
// One rig fished one way in one water that is known: how deep, from when to when where the fish are, how many seconds
// of a minute, and what it risks at the bed. The same reckoning as the choice between rigs (engine/choice/score.hpp),
// for one depth and speed as typed, so that the scatter is the rig's own.
#include <optional>
#include <string>

#include "engine/choice/choose.hpp"
#include "engine/choice/line_over_bed.hpp"
#include "engine/choice/zone.hpp"

namespace floatwright {

struct KnownWater {
  Length depth;
  SurfaceSpeed surface_speed;
  Profile profile;
  Bed bed = Bed::Unknown;
  Measured<Temperature> temperature;
  SurfaceSpeed boat_lane;  // of the thread that the boat is in
};

// While the fly is where at least half of the fish that hold there take it: from the first to the last time, and how
// long in all.
struct TimeInZone {
  Duration from, to, in_all;  // from landing; a strip's from the end of its count
};

enum class Finding { Fishes, TooHigh, OnTheBed, TooFast, NoFish };  // why a rig fishes too little, or that it does not

struct RigInWater {
  ScoredRig scored;  // its worth is not reckoned: that compares methods
  CastPath path;
  Zone zone;
  Length zone_top;  // depth from which down half of the fish take
  std::optional<TimeInZone> in_zone;
  Length deepest_tip;  // while the fly fishes, no bed in it
  Finding finding = Finding::Fishes;
  double turbulence = 0.0;        // bound: share of the depth that turbulence may take off a slow sinking part
  Measured<LineOverBed> drawn;    // absent for a way of fishing that has no shape
  Measured<double> surface_hold;  // share of the line's drag in the fast surface layer
};

// Absent with the reason where the rig cannot be fished so.
[[nodiscard]] Measured<RigInWater> rig_in_water(const Tackle& tackle, const Rig& rig, const Technique& technique,
                                                const KnownWater& water, Length cast, const Judgement& judgement);

// Why this line is not fished this way from there, whatever the water: a sentence. None where it can be.
[[nodiscard]] std::optional<std::string> way_ruled_out(const Tackle& tackle, const Rig& rig, const Technique& technique,
                                                       const KnownWater& water, const Judgement& judgement);

// How much shallower than said turbulence may hold a sinking part, as a share: 0.22 at 3 in/s and 0.53 at 1.5 in/s in
// water of 1 m/s, between and beyond by the power of the ratio of sink rate to speed that joins the two; at most 0.6.
// A bound of judgement, not a correction.
[[nodiscard]] double turbulence_bound(Speed sink_rate, SurfaceSpeed surface);

}  // namespace floatwright
