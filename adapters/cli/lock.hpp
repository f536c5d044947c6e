#pragma once
// One run at a time for a configuration. The lock is flock(2) on the configuration directory itself: it needs no right to
// write, leaves no file behind, holds on a read-only disk, and is gone when its run ends in whatever way. Where a file
// system has no such locks the run goes on without one.
#include <chrono>
#include <filesystem>
#include <optional>

#include "adapters/result.hpp"
#include "engine/units/instant.hpp"

namespace floatwright {

class RunLock {
 public:
  RunLock() = default;  // holds nothing
  explicit RunLock(int descriptor) : descriptor_(descriptor) {}
  RunLock(RunLock&& other) noexcept : descriptor_(other.descriptor_) { other.descriptor_ = -1; }
  RunLock& operator=(RunLock&&) = delete;
  ~RunLock();
  [[nodiscard]] bool holds() const { return descriptor_ >= 0; }

 private:
  int descriptor_ = -1;
};

// Failure 75 when another run holds the configuration; it names the process and since when it runs, as far as /proc
// tells.
[[nodiscard]] Result<RunLock> lock_run(const std::filesystem::path& configuration_directory);

}  // namespace floatwright
