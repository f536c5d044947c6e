#include "adapters/out/files/whole_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <string>

#include "adapters/out/files/held_signals.hpp"

namespace floatwright {
namespace {

// An open file that is closed in any case.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() { (void)close_now(); }
  [[nodiscard]] int number() const { return number_; }
  [[nodiscard]] bool is_open() const { return number_ >= 0; }
  // Some file systems tell only here that the disk is full.
  [[nodiscard]] bool close_now() {
    const int number = number_;
    number_ = -1;
    return number < 0 || ::close(number) == 0;
  }

 private:
  int number_;
};

// A name that is taken away again unless the file was given its own.
class TemporaryName {
 public:
  explicit TemporaryName(std::string name) : name_(std::move(name)) {}
  TemporaryName(const TemporaryName&) = delete;
  TemporaryName& operator=(const TemporaryName&) = delete;
  ~TemporaryName() {
    if (!kept_) ::unlink(name_.c_str());
  }
  [[nodiscard]] const std::string& name() const { return name_; }
  void keep() { kept_ = true; }

 private:
  std::string name_;
  bool kept_ = false;
};

tl::unexpected<Failure> failed(const std::filesystem::path& path, const char* doing, int error, int exit_code) {
  // A full disk may show already when the file is made.
  if (error == ENOSPC || error == EDQUOT) exit_code = kExitWriteFailed;
  const char* mend = exit_code == kExitCantCreate ? "See that the folder is there and may be written."
                                                  : "See whether the disk is full; what was there before is untouched.";
  return tl::unexpected(
      Failure{fmt::format("{}: cannot {}: {}. {}", path.string(), doing, std::strerror(error), mend), exit_code});
}

bool write_all(int number, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(number, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

// mkostemp makes files of mode 0600; a plan is to be read by whom the old one, or else the umask, allows.
mode_t mode_for(const std::filesystem::path& path) {
  struct stat old {};
  if (::stat(path.c_str(), &old) == 0) return old.st_mode & 07777;
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return 0666 & ~mask;
}

std::filesystem::path folder_of(const std::filesystem::path& path) {
  return path.has_parent_path() ? path.parent_path() : std::filesystem::path(".");
}

// The new name is safe only once the folder is on the disk too.
bool sync_folder(const std::filesystem::path& folder) {
  Descriptor opened(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  // EINVAL: a file system that cannot sync folders has nothing to wait for.
  return opened.is_open() && (::fsync(opened.number()) == 0 || errno == EINVAL);
}

}  // namespace

Result<Written> write_whole_file(const std::filesystem::path& path, std::string_view bytes) {
  if (!path.has_filename()) return failed(path, "write a file without a name", EISDIR, kExitCantCreate);
  if (std::error_code ignored; std::filesystem::is_directory(path, ignored)) {
    return failed(path, "write over a folder", EISDIR, kExitCantCreate);
  }
  const HeldSignals held;
  std::string pattern = (folder_of(path) / ("." + path.filename().string() + ".XXXXXX")).string();
  Descriptor file(::mkostemp(pattern.data(), O_CLOEXEC));
  if (!file.is_open()) return failed(path, "make a file in its folder", errno, kExitCantCreate);
  TemporaryName temporary(pattern);
  if (::fchmod(file.number(), mode_for(path)) != 0) return failed(path, "set its mode", errno, kExitWriteFailed);
  if (!write_all(file.number(), bytes)) return failed(path, "write", errno, kExitWriteFailed);
  if (::fsync(file.number()) != 0) return failed(path, "bring it to the disk", errno, kExitWriteFailed);
  if (!file.close_now()) return failed(path, "close it", errno, kExitWriteFailed);
  if (::rename(temporary.name().c_str(), path.c_str()) != 0)
    return failed(path, "give it its name", errno, kExitCantCreate);
  temporary.keep();
  if (!sync_folder(folder_of(path))) return failed(path, "bring its folder to the disk", errno, kExitWriteFailed);
  return Written{};
}

Result<Written> add_to_file(const std::filesystem::path& path, std::string_view bytes) {
  const HeldSignals held;
  Descriptor file(::open(path.c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0666));
  if (!file.is_open()) return failed(path, "add to it", errno, kExitCantCreate);
  struct stat before {};
  if (::fstat(file.number(), &before) != 0) return failed(path, "see how long it is", errno, kExitWriteFailed);
  if (!write_all(file.number(), bytes) || ::fsync(file.number()) != 0) {
    const int error = errno;
    if (::ftruncate(file.number(), before.st_size) != 0) return failed(path, "take back half a line", errno, kExitWriteFailed);
    return failed(path, "add to it", error, kExitWriteFailed);
  }
  if (!file.close_now()) return failed(path, "close it", errno, kExitWriteFailed);
  if (before.st_size == 0 && !sync_folder(folder_of(path)))
    return failed(path, "bring its folder to the disk", errno, kExitWriteFailed);
  return Written{};
}

}  // namespace floatwright
