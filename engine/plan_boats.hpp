#pragma once
// The outfitter's day: several boats on one river day, with one pool of rods, a rod in one boat only.
#include "engine/plan_day.hpp"

namespace floatwright {

// One boat as asked for; what is left open is as the settings have it.
struct BoatOrder {
  std::string name, guide, phone;
  std::optional<std::string> from, to;  // access ids; neither: the stretches are compared
  std::optional<Duration> launch;       // local
  std::vector<Angler> anglers;          // none: the people of the settings
  std::map<Method, double> methods;     // none: the methods of the settings
  std::optional<int> rods_aboard;
};

// The fishing tables that these boats' choices read; no boats: the day's own.
[[nodiscard]] TablesNeeded tables_needed(const DayInputs& day, const std::vector<BoatOrder>& boats);

// By boat. First each boat's stretch is chosen as if all the rods were its own; then the rods are shared out over these
// stretches (engine/choice/rod_pool.hpp); then each boat's day is planned with the rods it got, which is plan_day of its
// inputs. One boat has the whole pool. Boats are done as `do_each` does them.
[[nodiscard]] std::vector<BoatDay> plan_boats(const DayInputs& day, const std::vector<BoatOrder>& boats,
                                              const DoEach& do_each = one_after_the_other);

}  // namespace floatwright
