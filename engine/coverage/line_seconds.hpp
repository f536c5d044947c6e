#pragma once
// How well each line fishes one water whose flow is known: by each way of fishing, the most effective seconds per minute
// over its flies, techniques and platforms (Z, docs/equations.md). Swings and strips are read from fishing tables where
// there are some; a past day's flow is known, so one case stands for three. At one flow a cast is asked for in the coldest
// and the warmest water alone: between them its depth goes with the temperature in a straight line, as the tables have it.
#include <map>
#include <span>
#include <vector>

#include "engine/choice/score.hpp"
#include "engine/coverage/considered_lines.hpp"

namespace floatwright {

struct LineSeconds {
  double seconds = 0.0;     // Z; 0 where it can't be fished so
  double efficiency = 0.0;  // E of the same rig
};
using SecondsByMethod = std::map<Method, std::vector<LineSeconds>>;  // by considered line

enum class WaysFished { Pulled, Drifted };  // swing and strip; indicator, tight line and dry

struct WaterAtWarmths {
  WaterToFish water;
  std::vector<Measured<Temperature>> warmths;  // which rise, or one that is not known
};

// The rigs of all considered lines, made once: what can be rigged does not hang on the water.
class LinesAtHand {
 public:
  LinesAtHand(const Tackle& tackle, const std::vector<ConsideredLine>& lines, const Preferences& preferences,
              const Judgement& judgement, const FishingTables* tables);
  // By water and warmth. Alike waters asked for together are sooner done: a rig's tables are read for all of them in
  // turn.
  [[nodiscard]] std::vector<std::vector<SecondsByMethod>> seconds_in(std::span<const WaterAtWarmths> waters,
                                                                     WaysFished ways) const;

 private:
  struct Rigged {
    Rig rig;
    std::size_t line = 0;  // into the considered lines
  };
  [[nodiscard]] std::vector<RigWays> ways_of(const Rig& rig, Method method, const WaterToFish& water) const;
  const Tackle& tackle_;
  const Preferences& preferences_;
  const Judgement& judgement_;
  const FishingTables* tables_;
  std::size_t lines_;
  std::map<Method, std::vector<Rigged>> rigs_;
};

}  // namespace floatwright
