#pragma once
// What is asked of a line in use at other flows than the present one.
#include <functional>
#include <optional>
#include <vector>

#include "engine/choice/choose.hpp"
#include "engine/choice/score.hpp"

namespace floatwright {

// The same water at another flow; none where it is unknown, over the banks or too far from the notes. Asked from
// several threads at once.
using WaterAtFlow = std::function<std::optional<WaterToFish>(Discharge)>;

struct PresentFlow {
  Discharge flow;
  WaterAtFlow water_at;
};

// What another line had over the one in use at the flow expected, where that is enough to take over: the boat's rods
// were chosen without it. Flow makes it the better line only where it has more over it than this.
struct Foregone {
  Rig rig;
  Method method;
  double ratio = 1.0;
};

struct LineAsked {
  std::vector<Way> candidates;  // the best few of each line and method, those of the line in use among them
  ScoredRig in_use;
  const Tackle& tackle;
  const Preferences& preferences;
  const Judgement& judgement;
  const FishingTables* tables;
  std::vector<Foregone> foregone{};
};

}  // namespace floatwright
