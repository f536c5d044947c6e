#pragma once
// Which stretches of time are still to be asked of a service.
#include <vector>

#include "engine/units/instant.hpp"

namespace floatwright {

struct AskedSpan {
  Instant from{}, to{};
  friend bool operator==(const AskedSpan&, const AskedSpan&) = default;
};

// What of `wanted` no span of `held` covers, in order of time; pieces under a second are none.
[[nodiscard]] std::vector<AskedSpan> not_held(const AskedSpan& wanted, std::vector<AskedSpan> held);

// In pieces of at most `longest`, newest first: what a plan needs comes before old years, and a run that is cut goes on
// where it was. Cut at whole multiples of `longest` since 1970, so that stations are asked for the same pieces together.
[[nodiscard]] std::vector<AskedSpan> in_pieces(const std::vector<AskedSpan>& spans, Period longest);

}  // namespace floatwright
