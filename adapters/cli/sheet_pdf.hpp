#pragma once
// The rig sheets of the day's boats in one PDF, a page a boat.
#include "adapters/cli/kinds.hpp"

namespace floatwright {

[[nodiscard]] Result<std::string> sheet_pdf(const Printed& day);

}  // namespace floatwright
