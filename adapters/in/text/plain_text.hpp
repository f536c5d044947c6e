#pragma once
// Text that came from outside, made fit to be compared, read as a number or sent along.
#include <optional>
#include <string>
#include <string_view>

namespace floatwright {

// All characters used and the result finite, else none: "1,5", "12.5cfs", "+3", " 3", "nan" and 1e999 are no numbers.
[[nodiscard]] std::optional<double> number_in(std::string_view text);

// In the first or last 16 kB of a text of any length: enough to tell whose it is, without looking through 20 MB.
[[nodiscard]] bool stands_near_an_end(std::string_view text, std::string_view word);

// For an address: all but the unreserved signs of RFC 3986 (section 2.3) as %XX.
[[nodiscard]] std::string percent_encoded(std::string_view text);

// Fit to stand in a header of a request.
[[nodiscard]] std::string without_controls(std::string text);

[[nodiscard]] std::string_view trimmed(std::string_view text);

[[nodiscard]] std::string lower_case(std::string_view text);

}  // namespace floatwright
