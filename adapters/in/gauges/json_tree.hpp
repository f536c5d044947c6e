#pragma once
// A JSON tree out of bytes that nobody vouches for: not empty, not a web page, one whole valid text, no key twice in
// one object, no nesting past what a gauge service sends.
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

#include "adapters/result.hpp"

namespace floatwright {

inline constexpr int kDeepestNesting = 64;

// `where`: file or address, named in the failure with line and column, or with a JSON pointer.
[[nodiscard]] Result<nlohmann::json> json_tree(std::string_view bytes, const std::string& where);

}  // namespace floatwright
