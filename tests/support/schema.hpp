#pragma once
// A document against one of config/schemas, judged by the package python3-jsonschema (Draft 2020-12), which knows nothing of
// the program.
#include <string>

namespace floatwright::testing {

// `schema` is the name before ".schema.json". "valid", or one line an error, ten at most, or why it could not be judged.
[[nodiscard]] std::string judged_by_schema(const std::string& schema, const std::string& document);

}  // namespace floatwright::testing
