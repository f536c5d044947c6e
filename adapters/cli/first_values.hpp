#pragma once
// From what was learned of a station to what goes into the first files: its zone, its units, its newest flow.
#include <string>

#include "adapters/in/fetch/first_look.hpp"
#include "adapters/out/start/first_files.hpp"

namespace floatwright {

// `payload`: the directory of recorded answers, empty where the network was asked.
[[nodiscard]] FirstValues first_values(const FirstLook& look, Instant now, const std::string& payload);

}  // namespace floatwright
