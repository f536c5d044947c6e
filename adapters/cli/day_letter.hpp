#pragma once
// The day's mail: each boat's page as text and HTML with its pictures inside, the rig sheets attached.
#include "adapters/cli/kinds.hpp"
#include "adapters/out/mail/letter.hpp"

namespace floatwright {

// `day.mail` is there. The same day made at the same instant is the same letter.
[[nodiscard]] Result<Letter> day_letter(const Printed& day);

}  // namespace floatwright
