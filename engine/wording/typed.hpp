#pragma once
// Words that came from outside (names, reasons, what a service said) made fit to stand in a page: as typed, but control
// characters, line ends and marks that turn the direction of writing become a space, and what is no character of Unicode
// a "?". Runs of spaces become one. Words with letters that are written from the right are isolated (U+2068, U+2069;
// Unicode, UAX #9), so that the figures behind them stay in their order.
#include <string>
#include <string_view>

namespace floatwright {

[[nodiscard]] std::string typed(std::string_view text);

// The first letter as a capital (ASCII only: other alphabets stay as they are).
[[nodiscard]] std::string capitalised(std::string text);

// Without a full stop at its end, so that it can stand inside a sentence.
[[nodiscard]] std::string without_stop(std::string text);

}  // namespace floatwright
