#pragma once
// The flow at which another line becomes the one to use, everything else as it is: flows 2^(j/8) times the present one,
// outwards, at fixed temperature, clarity and hour; the first at which another line brings 15 % more seconds (same
// method) or worth (other method), then bisected twice. Looks only at flows that the notes bear, 0.4 to 2.5 times a
// noted one, and stops where the line in use no longer fishes. To be cheap it scores, in the middle case, the best few
// ways of every line and method that the present ranking names; where there are tables, what matters by them is worked
// out. Flows are not rounded here: two figures are enough to print.

#include "engine/choice/line_at_flow.hpp"
#include "engine/sinking/fishing_tables.hpp"

namespace floatwright {

// Of a line in use; `scored` is the table it was chosen from. The two sides may be looked to in any order, each once or
// in two threads; what is handed in by reference outlives it.
class ChangeSearch {
 public:
  ChangeSearch(const ScoredRig& in_use, const std::vector<ScoredRig>& scored, PresentFlow now, const Tackle& tackle,
               const Preferences& preferences, const Judgement& judgement, const FishingTables* tables = nullptr);
  // Each fills its side of the choice: the change and how far the line holds.
  void look_below(WaterChoice& choice) const;
  void look_above(WaterChoice& choice) const;

 private:
  struct Side {
    std::optional<LineChange> change;
    Discharge looked_to;  // the last flow at which the line holds
  };
  [[nodiscard]] std::optional<LineAtFlow> at_flow(FlowsAhead& ahead, double factor) const;
  [[nodiscard]] LineChange narrowed(FlowsAhead& ahead, double holds, double changes, LineAtFlow found) const;
  [[nodiscard]] Side look(double direction) const;

  PresentFlow now_;
  LineAsked asked_;
};

// Fills changes_below, changes_above and holds of a choice that has a best rig.
void changes_at(WaterChoice& choice, const std::vector<ScoredRig>& scored, const WaterAtFlow& water_at, Discharge now,
                const Tackle& tackle, const Preferences& preferences, const Judgement& judgement,
                const FishingTables* tables = nullptr);

}  // namespace floatwright
