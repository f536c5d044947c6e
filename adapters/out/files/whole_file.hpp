#pragma once
// Writes a file whole or not at all: temporary name in the same folder, fsync, rename, fsync of the folder. What was
// there stays there when anything fails. A signal to end the program waits until the file is whole.
#include <filesystem>
#include <string_view>

#include "adapters/result.hpp"

namespace floatwright {

struct Written {};

// Failure 73 when the folder cannot be written, 74 when the writing fails (a full disk).
[[nodiscard]] Result<Written> write_whole_file(const std::filesystem::path& path, std::string_view bytes);

// Adds to the end of a file, which is made where it is not there, in one write that reaches the disk; where it fails the
// file is cut back to what it was. The caller keeps other writers away. Failures as above.
[[nodiscard]] Result<Written> add_to_file(const std::filesystem::path& path, std::string_view bytes);

}  // namespace floatwright
