#pragma once
// A disk of one page of memory: what is longer than 4 kB does not fit. Mounting it needs root.
#include <sys/mount.h>

#include <filesystem>

namespace floatwright::testing {

inline constexpr const char* kNoSmallDisk = "mounting a small tmpfs needs root; the write to /dev/full stands for it";

class SmallDisk {
 public:
  explicit SmallDisk(const std::filesystem::path& at) : at_(at) {
    std::filesystem::create_directories(at_);
    mounted_ = mount("tmpfs", at_.c_str(), "tmpfs", 0, "size=4k") == 0;
  }
  ~SmallDisk() {
    if (mounted_) umount(at_.c_str());
  }
  SmallDisk(const SmallDisk&) = delete;
  SmallDisk& operator=(const SmallDisk&) = delete;
  [[nodiscard]] bool mounted() const { return mounted_; }

 private:
  std::filesystem::path at_;
  bool mounted_ = false;
};

}  // namespace floatwright::testing
