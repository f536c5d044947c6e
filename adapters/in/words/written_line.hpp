#pragma once
// A line in the trade's words: "sinking tip 12.5 ft 5 in/s", "full sinking line 3 in/s", "looped head tip 10 ft 7
// in/s", "WF-6-F". What may be added: the code or the line's number ("6-wt"), what a foot of the sinking part weighs
// ("11 gr/ft") and, measured, its diameter ("1.0 mm"): weight and diameter without a rate give the rate. Two rates are
// those of the butt and the fly's end of a density-compensated part ("4 to 6 in/s").
#include <optional>

#include "adapters/in/words/phrase.hpp"
#include "engine/tackle/tackle.hpp"

namespace floatwright {

struct WrittenLine {
  Line line;                     // its id is what was typed
  std::optional<LoopedTip> tip;  // of a looped head
};

// Failure 64: what was found, and how such a line is written.
[[nodiscard]] Result<WrittenLine> line_in(std::string_view option, std::string_view text);

}  // namespace floatwright
