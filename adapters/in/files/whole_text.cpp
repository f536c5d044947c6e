#include "adapters/in/files/whole_text.hpp"

#include <cerrno>
#include <cstring>
#include <fstream>
#include <iterator>
#include <system_error>

namespace floatwright {
namespace {

constexpr std::uintmax_t kLargestFile = 64u << 20u;  // bytes; a schedule of a century of hours is 30 MB

Failure missing(const std::filesystem::path& path, const std::string& why) {
  return {path.string() + ": " + why, kExitNoInput};
}

}  // namespace

Result<std::string> read_whole_text(const std::filesystem::path& path) {
  std::error_code error;
  const auto status = std::filesystem::status(path, error);
  if (!std::filesystem::exists(status)) return tl::unexpected(missing(path, "no such file"));
  if (!std::filesystem::is_regular_file(status)) return tl::unexpected(missing(path, "not a file"));
  if (std::filesystem::file_size(path, error) > kLargestFile) return tl::unexpected(missing(path, "larger than 64 MB"));
  errno = 0;
  std::ifstream stream(path, std::ios::binary);
  if (!stream) return tl::unexpected(missing(path, std::strerror(errno)));
  std::string text{std::istreambuf_iterator<char>(stream), {}};
  if (stream.bad()) return tl::unexpected(missing(path, "it cannot be read to its end"));
  return text;
}

bool is_readable_by_others(const std::filesystem::path& path) {
  using std::filesystem::perms;
  std::error_code error;
  const perms mode = std::filesystem::status(path, error).permissions();
  return !error && (mode & (perms::group_all | perms::others_all)) != perms::none;
}

}  // namespace floatwright
