#pragma once
// One amount of one kind out of an option's words, within a range: "5 ft". Failure 64 names the option, what was found
// and how to write it.
#include <string_view>

#include "adapters/in/words/phrase.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

struct AskedFor {
  std::string_view option;   // "--depth"
  std::string_view example;  // "5 ft"
};

template <class Q>
struct Allowed {
  Q least, most;
};

[[nodiscard]] Result<Length> length_in(const AskedFor& asked, std::string_view text, Allowed<Length> allowed);
[[nodiscard]] Result<Speed> speed_in(const AskedFor& asked, std::string_view text, Allowed<Speed> allowed);
[[nodiscard]] Result<Mass> mass_in(const AskedFor& asked, std::string_view text, Allowed<Mass> allowed);
[[nodiscard]] Result<Duration> duration_in(const AskedFor& asked, std::string_view text, Allowed<Duration> allowed);
[[nodiscard]] Result<Temperature> temperature_in(const AskedFor& asked, std::string_view text,
                                                 Allowed<Temperature> allowed);

// "a length", "a speed": as it is asked for.
[[nodiscard]] std::string_view words_of(AmountKind kind);

}  // namespace floatwright
