#pragma once
// Writes the language of its text into a PDF, which cairo 1.16 cannot: an incremental update (ISO 32000-1, 7.5.6) that
// replaces the catalog with one that has /Lang (14.9.2).
#include <string>
#include <string_view>

#include "adapters/result.hpp"

namespace floatwright {

// `language` as in BCP 47: "en". Failure where the file is not laid out as cairo does: a plain cross-reference table and
// a catalog that is no stream.
[[nodiscard]] Result<std::string> with_language(std::string pdf, std::string_view language);

}  // namespace floatwright
