#pragma once
// Local scatter, independent of the flow: the line's own, the note's depth, and 0.9 of the surface speed's, in logs.
#include <vector>

#include "engine/choice/judgement.hpp"
#include "engine/sinking/cast_path.hpp"
#include "engine/water/lane.hpp"

namespace floatwright {

// What a way's own scatter goes by.
enum class Firmness { Drifted, Tight, Mended };
inline constexpr std::size_t kFirmnesses = 3;
[[nodiscard]] Firmness firmness(const Technique& technique);

// Of the rig fished so, sd of ln depth: drifted on a leader 0.10, tight 0.25, mended or counted 0.30.
[[nodiscard]] double rig_scatter(Firmness firmness, const ScatterJudgement& judgement);
[[nodiscard]] inline double rig_scatter(const Technique& technique, const ScatterJudgement& judgement) {
  return rig_scatter(firmness(technique), judgement);
}

// Factors on the depth of fly and tip, one per member.
[[nodiscard]] std::vector<double> scatter_factors(Firmness firmness, const Lane& lane,
                                                  const ScatterJudgement& judgement);
[[nodiscard]] inline std::vector<double> scatter_factors(const Technique& technique, const Lane& lane,
                                                         const ScatterJudgement& judgement) {
  return scatter_factors(firmness(technique), lane, judgement);
}

}  // namespace floatwright
