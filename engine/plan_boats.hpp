#pragma once
// The outfitter's day: several boats on one river day, with one pool of rods, a rod in one boat only.
#include <functional>

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

// Calls work(0) to work(count - 1), each once, in any order or side by side: how is the caller's to say.
using DoEach = std::function<void(std::size_t count, const std::function<void(std::size_t)>& work)>;
void one_after_the_other(std::size_t count, const std::function<void(std::size_t)>& work);

// The fishing tables that these boats' choices read; no boats: the day's own.
[[nodiscard]] TablesNeeded tables_needed(const DayInputs& day, const std::vector<BoatOrder>& boats);

// By boat. First each boat's stretch is chosen as if all the rods were its own; then the rods are shared out over these
// stretches (engine/choice/rod_pool.hpp); then each boat's day is planned with the rods it got, which is plan_day of its
// inputs. One boat has the whole pool. The answer does not hang on `do_each`.
[[nodiscard]] std::vector<BoatDay> plan_boats(const DayInputs& day, const std::vector<BoatOrder>& boats,
                                              const DoEach& do_each = one_after_the_other);

}  // namespace floatwright
