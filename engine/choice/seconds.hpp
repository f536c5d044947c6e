#pragma once
// Effective seconds: of every minute fished this way, how many the fly is where a holding fish takes it, at a pace it
// takes. Everything that costs is seconds.
//   Z = 60 sum_c g_c mean_k[integral w s S dt] / (t_cast + t_count + mean_k[integral S dt + 30 s (1 - S_end)])
// c the three flow cases, k five scatter members. A member multiplies the depth of fly and tip before anything is held
// to the bed: a line that would hang under the bed lies on it. S is the chance that nothing has snagged yet; the fly,
// the shot (counted at the fly) or the lower end of the sinking part within 0.03 m of the bed snags at the bed's rate.
#include <optional>
#include <vector>

#include "engine/choice/zone.hpp"
#include "engine/sinking/cast_path.hpp"
#include "engine/units/per_case.hpp"

namespace floatwright {

// One rig fished one way in one case of the water. No path: it cannot be fished in that case, and scores nothing there.
struct FishedCase {
  const CastPath* path = nullptr;
  Zone zone;
};

// What is the same in all cases.
struct Fishing {
  Method method = Method::Swing;
  Bed bed = Bed::Unknown;
  bool hatch = false;
  Speed easy;                   // easy_speed() of the water's temperature
  Duration paid;                // cast and count
  std::vector<double> scatter;  // factors on depth
};

struct CaseSeconds {
  double seconds = 0.0;  // effective, per minute
  double ideal = 0.0;    // with w = 1 and S = 1, per minute
  double snag_per_cast = 0.0;
  Length fly_depth;  // mean while it fishes, no scatter, at most the water's depth
};
[[nodiscard]] CaseSeconds seconds_of(const Fishing& fishing, const FishedCase& fished, const Judgement& judgement);
// The same but for the fly's depth, which is 0; none where the seconds are surely not more than `beaten`.
[[nodiscard]] std::optional<CaseSeconds> seconds_over(double beaten, const Fishing& fishing, const FishedCase& fished,
                                                      const Judgement& judgement);
// E of one case, 0 where its ideal is 0.
[[nodiscard]] inline double efficiency_of(const CaseSeconds& found) {
  return found.ideal > 0 ? found.seconds / found.ideal : 0.0;
}

struct EffectiveSeconds {
  double seconds = 0.0;     // Z
  double efficiency = 0.0;  // E = Z/ideal, 0 where the ideal is 0
  double snag_per_cast = 0.0;
  PerCase<Length> fly_depth;
};
[[nodiscard]] EffectiveSeconds effective_seconds(const Fishing& fishing, const PerCase<FishedCase>& fished,
                                                 const Judgement& judgement);
// From one case alone, as if the river were known.
[[nodiscard]] EffectiveSeconds effective_seconds(const CaseSeconds& known);

}  // namespace floatwright
