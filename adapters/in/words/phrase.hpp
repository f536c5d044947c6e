#pragma once
// A person's own words with amounts among them, as they stand on a command line: "sinking tip 12 1/2 ft 4 to 6 in/s".
// Every number has its unit; a fraction may stand behind a whole number; "to" or a hyphen makes a range.
#include <string>
#include <string_view>
#include <vector>

#include "adapters/result.hpp"

namespace floatwright {

enum class AmountKind { OfLength, OfSpeed, OfMass, OfMassPerLength, OfTemperature, OfDuration, OfAngle, OfLineNumber };

struct Amount {
  AmountKind kind = AmountKind::OfLength;
  double from = 0.0, to = 0.0;  // SI (temperature in C, angle in rad); the same unless it is a range
  std::string typed;
};

struct Phrase {
  std::vector<std::string> words;  // in lower case, hyphens and underscores as spaces between words
  std::vector<std::string> codes;  // words with a figure inside, such as WF-6-F, as typed
  std::vector<Amount> amounts;
};

// Failure 64 for a number without a unit or with one that is not known; it names `option` and gives `example`.
[[nodiscard]] Result<Phrase> phrase_of(std::string_view option, std::string_view text, std::string_view example);

}  // namespace floatwright
