#pragma once
// Which fishing tables the choice reads: those of every rig that can be swung or stripped, at the paces at which a boat
// can go over the water fished. Each order once; rigs that the water cannot tell apart share it.
#include "engine/choice/angler.hpp"
#include "engine/choice/judgement.hpp"
#include "engine/sinking/fishing_tables.hpp"

namespace floatwright {

// Adds what these people need. `platforms`: all on which they may fish.
void add_tables_needed(TablesNeeded& needed, const Tackle& tackle, const Preferences& preferences,
                       const std::vector<Platform>& platforms, const Judgement& judgement);

}  // namespace floatwright
