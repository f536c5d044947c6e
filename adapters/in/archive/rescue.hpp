#pragma once
// Inside the archive: what can still be read out of a damaged file.
#include <cstddef>
#include <filesystem>

namespace SQLite {
class Database;
}

namespace floatwright {

// Copies series, readings and revisions into a new archive that holds no series yet, from both ends up to the damage;
// gives the number of readings. What was asked is not copied, so that the services are asked again for all of it and
// put right what the damage changed. Throws what goes wrong with the new archive.
[[nodiscard]] std::size_t rescue_readings(const std::filesystem::path& damaged, SQLite::Database& anew);

}  // namespace floatwright
