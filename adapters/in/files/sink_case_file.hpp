#pragma once
// The exact case of one line in one water that `sink --case` reads: parts from the fly up, the fly, the water, and
// either how the line is held (a steady shape) or how it is cast (a drift and swing that is simulated). For engineers
// and tests.
#include <filesystem>
#include <optional>
#include <variant>

#include "adapters/in/files/typed_object.hpp"
#include "engine/sinking/cast_case.hpp"
#include "engine/sinking/steady.hpp"

namespace floatwright {

using SinkCase = std::variant<SteadyCase, CastCase>;

// The case is meant only where no problem was told.
[[nodiscard]] SinkCase read_sink_case(const LocatedJson& root, FileReading& reading);

struct LoadedSinkCase {
  std::optional<SinkCase> sink_case;  // none when there is any problem
  Problems problems;                  // in the file's order
  int exit_code = 0;                  // 0; 66 the file is not there; 78
};
[[nodiscard]] LoadedSinkCase load_sink_case(const std::filesystem::path& file);

}  // namespace floatwright
