#include "adapters/cli/lock.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <fstream>
#include <sstream>
#include <string>

#include "engine/wording/clock.hpp"

namespace floatwright {
namespace {

// The process that holds a flock on the file of this number. A line of proc(5)'s /proc/locks:
// "2: FLOCK  ADVISORY  WRITE 4711 08:01:131077 0 EOF"; the device is left out, since layered file systems show another.
std::optional<long> holder_of(ino_t file) {
  std::ifstream locks{"/proc/locks"};
  for (std::string line; std::getline(locks, line);) {
    std::istringstream words{line};
    std::string number, kind, manner, mode, place;
    long process = 0;
    if (!(words >> number >> kind >> manner >> mode >> process >> place)) continue;
    if (kind == "FLOCK" && process > 0 && place.ends_with(fmt::format(":{}", file))) return process;
  }
  return std::nullopt;
}

// Seconds since 1970 at which the machine was started: the line "btime" of /proc/stat.
std::optional<long> boot_time() {
  std::ifstream all{"/proc/stat"};
  for (std::string line; std::getline(all, line);) {
    if (line.starts_with("btime ")) return std::stol(line.substr(6));
  }
  return std::nullopt;
}

// Field 22 of /proc/PID/stat counts clock ticks since then. The name in field 2 may hold blanks and brackets.
std::optional<Instant> started(long process) {
  std::ifstream in{fmt::format("/proc/{}/stat", process)};
  std::string line;
  std::getline(in, line);
  const auto name_end = line.rfind(')');
  const auto boot = boot_time();
  if (name_end == std::string::npos || !boot) return std::nullopt;
  std::istringstream fields{line.substr(name_end + 1)};
  std::string skipped;
  for (int field = 3; field < 22; ++field) fields >> skipped;
  long ticks = 0;
  if (!(fields >> ticks)) return std::nullopt;
  return Instant{Period{*boot + ticks / sysconf(_SC_CLK_TCK)}};
}

Failure held_by_another(const std::filesystem::path& directory, int descriptor) {
  std::string who = "another run";
  struct stat about {};
  const auto process = ::fstat(descriptor, &about) == 0 ? holder_of(about.st_ino) : std::nullopt;
  if (process) who += fmt::format(" (process {}", *process);
  if (const auto since = process ? started(*process) : std::nullopt)
    who += ", since " + LocalClock("UTC").written(*since);
  if (process) who += ")";
  return {fmt::format("{}: {} is at work on this configuration; nothing was made. Try again when it has ended.",
                      directory.string(), who),
          kExitTryLater};
}

}  // namespace

RunLock::~RunLock() {
  if (descriptor_ >= 0) ::close(descriptor_);
}

Result<RunLock> lock_run(const std::filesystem::path& configuration_directory) {
  const int descriptor = ::open(configuration_directory.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor < 0) return RunLock{};
  RunLock lock{descriptor};
  if (::flock(descriptor, LOCK_EX | LOCK_NB) == 0) return lock;
  if (errno == EWOULDBLOCK) return tl::unexpected(held_by_another(configuration_directory, descriptor));
  return RunLock{};
}

}  // namespace floatwright
