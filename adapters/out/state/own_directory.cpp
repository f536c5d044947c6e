#include "adapters/out/state/own_directory.hpp"

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

std::optional<std::filesystem::path> named(const OwnDirectory& wanted) {
  if (const auto given = absolute_path(wanted.managers)) {
    const std::string all = given->string();
    return all.substr(0, all.find(':'));
  }
  if (const auto all = absolute_path(wanted.users)) return *all / "floatwright";
  if (const auto home = absolute_path("HOME")) return *home / wanted.at_home / "floatwright";
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

Result<std::filesystem::path> own_directory(const OwnDirectory& wanted) {
  const auto directory = named(wanted);
  if (!directory) {
    return tl::unexpected(
        Failure{fmt::format("no directory to {}: set {}, {} or HOME to a directory of yours (a full path)",
                            wanted.purpose, wanted.managers, wanted.users),
                kExitCantCreate});
  }
  if (const auto error = make(*directory)) {
    return tl::unexpected(Failure{fmt::format("{}: can't be made ({}); set {} to a directory that can be written",
                                              directory->string(), error.message(), wanted.managers),
                                  kExitCantCreate});
  }
  return *directory;
}

}  // namespace floatwright
