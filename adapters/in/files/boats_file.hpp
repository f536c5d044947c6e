#pragma once
// boats.json, the outfitter's day: its date and its boats. Read against the configuration: places must be accesses of the
// river with a stretch between them, launches within the hours of the settings.
#include <chrono>
#include <filesystem>
#include <optional>
#include <vector>

#include "adapters/in/files/configuration.hpp"
#include "adapters/in/files/typed_object.hpp"
#include "engine/plan_boats.hpp"

namespace floatwright {

struct Boats {
  std::chrono::year_month_day day{};
  std::vector<BoatOrder> boats;
};

[[nodiscard]] Boats read_boats(const LocatedJson& root, FileReading& reading, const River& river,
                               const Settings& settings);

struct LoadedBoats {
  std::optional<Boats> boats;  // none when any problem is not a warning
  Problems problems;           // in the file's order
  int exit_code = 0;           // 0; 66 the file is not there; 78
};

// The days that a plan may be made for: the one the command line names, else from today on the river on.
struct DaysAllowed {
  std::chrono::year_month_day first{}, last{};
};
[[nodiscard]] LoadedBoats load_boats(const std::filesystem::path& file, const Configuration& configuration,
                                     const DaysAllowed& allowed);

}  // namespace floatwright
