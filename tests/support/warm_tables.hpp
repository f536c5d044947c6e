#pragma once
// Fishing tables for tests of the engine, worked out once a build and kept in its folder.
#include "engine/choice/tables_needed.hpp"

namespace floatwright::testing {

[[nodiscard]] FishingTables warm_tables(const Tackle& tackle, const Preferences& preferences,
                                        const Judgement& judgement);

}  // namespace floatwright::testing
