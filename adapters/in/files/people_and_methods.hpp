#pragma once
// Who fishes and how, as settings.json and boats.json both have it.
#include <map>
#include <string_view>
#include <vector>

#include "adapters/in/files/typed_object.hpp"
#include "engine/choice/angler.hpp"

namespace floatwright {

// A list of people under `key`, each with name, cast and whether they wade.
[[nodiscard]] std::vector<Angler> read_people(TypedObject& in, std::string_view key, Need need);

// "methods": each with its preference over 0 to 1; 0 is left out.
[[nodiscard]] std::map<Method, double> read_methods(TypedObject& in, Need need);

}  // namespace floatwright
