#pragma once
// What is dear of planning stretches, done for many of them at once: every water that they will read, scored once.
#include "engine/trip/do_each.hpp"
#include "engine/trip/stretches.hpp"
#include "engine/trip/water_book.hpp"

namespace floatwright {

void score_waters(const RiverDay& day, WaterBook& book, Scored how, const std::vector<const Stretch*>& stretches,
                  const DoEach& do_each);

}  // namespace floatwright
