#pragma once
// The fishing tables of a day: those kept in the cache directory, the others worked out on all cores and kept there.
#include <future>
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

// The same, but what is kept is read from now on in a thread of its own, for what is done meanwhile: what a day needs
// does not hang on its readings. Who asks for it reads what is left along with it. The thread only reads.
class TablesAhead {
 public:
  TablesAhead(const DayInputs& day, const std::vector<BoatOrder>& boats);
  TablesAhead(TablesAhead&&) noexcept;
  ~TablesAhead();
  // Once.
  [[nodiscard]] std::shared_ptr<const FishingTables> at_hand(const Tackle& tackle, const Judgement& judgement,
                                                             HowTold told);

 private:
  struct Turns;
  std::unique_ptr<Turns> turns_;
  std::future<void> reading_;  // goes first
};

}  // namespace floatwright
