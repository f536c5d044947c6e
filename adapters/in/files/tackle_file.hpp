#pragma once
// tackle.json as the engine's tackle; item i of each list is item i of the file. A line that is only thought of counts as on
// a spare spool: it takes no one's place on a rod.
#include "adapters/in/files/typed_object.hpp"
#include "engine/tackle/listed_tackle.hpp"

namespace floatwright {

[[nodiscard]] ListedTackle read_tackle(const LocatedJson& root, FileReading& reading);

}  // namespace floatwright
