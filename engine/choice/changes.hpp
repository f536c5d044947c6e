#pragma once
// The flow at which another line becomes the one to use, everything else as it is: flows 2^(j/8) times the present one,
// outwards, at fixed temperature, clarity and hour; the first at which another line brings 15 % more seconds (same
// method) or worth (other method), then bisected twice. Looks only at flows that the notes bear, 0.4 to 2.5 times a
// noted one, and stops where the line in use no longer fishes. To be cheap it scores, in the middle case, the best few
// ways of every line and method that the present ranking names; where there are tables, what matters by them is worked
// out. Flows are not rounded here: two figures are enough to print.
#include <functional>

#include "engine/choice/choose.hpp"
#include "engine/sinking/fishing_tables.hpp"

namespace floatwright {

// The same water at another flow; none where it is unknown, over the banks or too far from the notes.
using WaterAtFlow = std::function<std::optional<WaterToFish>(Discharge)>;

// Fills changes_below, changes_above and holds of a choice that has a best rig; `scored` is the table it was made from.
void changes_at(WaterChoice& choice, const std::vector<ScoredRig>& scored, const WaterAtFlow& water_at, Discharge now,
                const Tackle& tackle, const Preferences& preferences, const Judgement& judgement,
                const FishingTables* tables = nullptr);

}  // namespace floatwright
