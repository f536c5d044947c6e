#pragma once
// Where the fly is, second by second, after a cast: depth of fly and tip and the fly's pace, for one rig and technique
// in one water. Swings and strips are simulated (engine/sinking/pulled_cast.hpp); indicator, tight-line and dry have
// closed forms (engine/sinking/indicator.hpp, led_casts.hpp). No bed in it: depth goes on past the water's, the profile
// frozen; bed, temperature and scatter come at scoring.
#include <optional>
#include <span>
#include <vector>

#include "engine/river/river.hpp"
#include "engine/sinking/drift_limits.hpp"
#include "engine/sinking/tabled_water.hpp"
#include "engine/tackle/tackle.hpp"
#include "engine/units/measured.hpp"
#include "engine/water/profile.hpp"

namespace floatwright {

enum class Mending { Tight, OneMend, MendAndFeed };

struct Technique {
  Method method = Method::Swing;
  Mending mending = Mending::Tight;  // swing
  Duration count;                    // strip: counted before the first pull: 0, 3, 6, 10 s
  Speed strip;                       // strip: 0.3 or 0.6 m/s
  Platform platform = Platform::Drifting;
  friend bool operator==(const Technique&, const Technique&) = default;
};

// The line goes with the rod's pull; else with the water, and has its cast without a table.
[[nodiscard]] constexpr bool is_pulled(Method method) { return method == Method::Swing || method == Method::Strip; }

// One vertical of water as the line meets it, and the boat's pace over it.
struct CastWater {
  Length depth;
  SurfaceSpeed surface_speed;
  Profile profile;
  Speed boat;                               // over the ground, along the stream; 0 anchored or wading
  Temperature temperature = celsius(10.0);  // for the water's density and viscosity
};

struct CastSample {
  Duration t;
  Length fly_depth, tip_depth;
  Speed over_ground;    // of the fly, horizontal
  Speed through_water;  // of the fly relative to the water at its depth
  Angle bearing;        // of the fly from straight downstream of the rod tip; 90 degrees where it does not apply
};

struct CastPath {
  std::vector<CastSample> samples;  // even in time, from landing (strip: from the end of the count)
  Duration time_to_hang_down;       // swing; else the end of the cast
  Length leader;                    // used
  Length indicator_to_fly;          // indicator only, else 0
  Length hangs{};                   // indicator only: how deep the fly is once it has sunk
};

// The leader below an indicator that drifts freely: how deep the fly hangs once it has sunk, and how fast it all goes.
struct IndicatorDrift {
  Length fly_depth;  // y_eq
  Speed indicator;   // u_i: the whole has no net drag
};

// A leader under an indicator, and its drift in the water that is cast into; none: it is solved there.
struct SetLeader {
  Length length;
  std::optional<IndicatorDrift> drift;
};
// As that path has it, for another cast into the same water.
[[nodiscard]] SetLeader set_leader(const CastPath& path);

// Where and how a rig is cast; the water and the limits outlive it.
struct CastSetting {
  const TabledWater& water;
  Speed boat;  // over the ground, along the stream
  Length cast, rod;
  const DriftLimits& limits;
  // For the indicator, the leader solved in the middle case and kept for the others; none: solve it here.
  std::optional<SetLeader> leader_set;
};

// One rig fished several ways by one method from one boat, each an answer of its own; what the ways share is solved
// once. Absent with the reason where the rig has no answer (no mass given for the fly, a solver that found no shape).
[[nodiscard]] std::vector<Measured<CastPath>> cast_paths(const Tackle& tackle, const Rig& rig,
                                                         std::span<const Technique> techniques,
                                                         const CastSetting& setting);

// One way alone, with the limits as shipped.
[[nodiscard]] Measured<CastPath> cast_path(const Tackle& tackle, const Rig& rig, const Technique& technique,
                                           const CastWater& water, Length cast, Length rod);

}  // namespace floatwright
