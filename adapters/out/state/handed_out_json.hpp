#pragma once
// A plan handed out as JSON for the state directory, and back. Reading throws nlohmann's exceptions on what is no such
// thing; kept_plans.cpp takes them.
#include <nlohmann/json_fwd.hpp>

#include "engine/trip/handed_out.hpp"

namespace floatwright {

[[nodiscard]] nlohmann::json as_json(const HandedOut& plan);
[[nodiscard]] HandedOut handed_out_from(const nlohmann::json& written);

}  // namespace floatwright
