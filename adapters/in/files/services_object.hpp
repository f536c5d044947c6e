#pragma once
// "services" of settings.json: the gauge services that are asked otherwise than by default.
#include <vector>

#include "adapters/in/files/configuration.hpp"
#include "adapters/in/files/typed_object.hpp"

namespace floatwright {

[[nodiscard]] std::vector<ServiceSettings> read_services(TypedObject& in);

}  // namespace floatwright
