#pragma once
// judgement.json: the numbers that are ours and have no source, as far as a person puts his own in. What is left out
// keeps the shipped value; a list or a table that is given keeps its length.
#include "adapters/in/files/typed_object.hpp"
#include "engine/choice/judgement.hpp"

namespace floatwright {

[[nodiscard]] Judgement read_judgement(const LocatedJson& root, FileReading& reading);

}  // namespace floatwright
