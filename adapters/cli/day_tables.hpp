#pragma once
// The fishing tables of a day: those kept in the cache directory, the others worked out on all cores and kept there.
#include <memory>
#include <vector>

#include "engine/plan_boats.hpp"

namespace floatwright {

struct HowTold {
  bool quiet = false, verbose = false;
};

// Those needed, of this tackle. Without a directory that can be written they are worked out all the same; why is told with
// --verbose.
[[nodiscard]] std::shared_ptr<const FishingTables> tables_at_hand(TablesNeeded needed, const Tackle& tackle,
                                                                  const Judgement& judgement, HowTold told);

[[nodiscard]] std::shared_ptr<const FishingTables> day_tables(const DayInputs& day, const std::vector<BoatOrder>& boats,
                                                              HowTold told);

}  // namespace floatwright
