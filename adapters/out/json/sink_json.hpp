#pragma once
// What `sink` answers for programs: rigs in one water, or counts in still water. SI with the unit in the key; a band
// where the page prints one. Schemas: config/schemas/sink.schema.json.
#include <string>
#include <vector>

#include "engine/wording/sink_page.hpp"
#include "engine/wording/still_page.hpp"

namespace floatwright {

[[nodiscard]] std::string rigs_json(const SinkAsked& asked, const std::vector<RigInWater>& fished,
                                    const std::vector<std::string>& left_out);

[[nodiscard]] std::string still_json(const StillAsked& asked, const std::vector<CountedRig>& rigs);

}  // namespace floatwright
