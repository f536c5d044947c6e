#include "adapters/out/state/state_directory.hpp"

#include <fmt/format.h>

#include <cstdlib>
#include <optional>
#include <string>
#include <system_error>

namespace floatwright {
namespace {

// The specification wants a relative path passed over.
std::optional<std::filesystem::path> absolute_path(const char* variable) {
  const char* value = std::getenv(variable);
  if (value == nullptr || *value != '/') return std::nullopt;
  return value;
}

std::optional<std::filesystem::path> named() {
  if (const auto given = absolute_path("STATE_DIRECTORY")) {
    const std::string all = given->string();
    return all.substr(0, all.find(':'));
  }
  if (const auto state = absolute_path("XDG_STATE_HOME")) return *state / "floatwright";
  if (const auto home = absolute_path("HOME")) return *home / ".local" / "state" / "floatwright";
  return std::nullopt;
}

// Each folder that is missing on the way is made for its owner alone.
std::error_code make(const std::filesystem::path& directory) {
  std::error_code error;
  if (std::filesystem::is_directory(directory, error)) return {};
  if (directory.has_relative_path() && directory != directory.parent_path()) {
    if (const auto above = make(directory.parent_path())) return above;
  }
  error.clear();
  if (std::filesystem::create_directory(directory, error)) {
    std::filesystem::permissions(directory, std::filesystem::perms::owner_all, error);
  } else if (!error && !std::filesystem::is_directory(directory, error)) {
    error = std::make_error_code(std::errc::not_a_directory);
  }
  return error;
}

}  // namespace

Result<std::filesystem::path> state_directory() {
  const auto directory = named();
  if (!directory) {
    return tl::unexpected(Failure{
        "no directory to remember things in: set STATE_DIRECTORY, XDG_STATE_HOME or HOME to a directory of yours (a full path)",
        kExitCantCreate});
  }
  if (const auto error = make(*directory)) {
    return tl::unexpected(Failure{
        fmt::format("{}: can't be made ({}); set STATE_DIRECTORY to a directory that can be written", directory->string(),
                    error.message()),
        kExitCantCreate});
  }
  return *directory;
}

}  // namespace floatwright
