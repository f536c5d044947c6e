#pragma once
// A gauge is named "service:number". Which services there are is known here, where the name is typed.
#include <optional>
#include <string>
#include <vector>

#include "adapters/in/files/typed_object.hpp"

namespace floatwright {

[[nodiscard]] const std::vector<std::string>& station_prefixes();
// What settings.json may list.
[[nodiscard]] const std::vector<std::string>& service_names();

// What is wrong with a station, as a Problem has it; none: it is a known service and what may be a number of its.
struct WrongStation {
  std::string allowed, mend;
};
[[nodiscard]] std::optional<WrongStation> wrong_station(const std::string& station);

// Tells a station without a service, of a service not known, or without a number.
void tell_bad_station(TypedObject& in, std::string_view key, const std::string& station);

}  // namespace floatwright
