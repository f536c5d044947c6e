#pragma once
// Work in a process of its own, for what would spoil this one: lost rights, limits, mounts, a sudden end.
#include <grp.h>
#include <sched.h>
#include <sys/mount.h>
#include <sys/wait.h>
#include <unistd.h>

#include <exception>
#include <filesystem>
#include <functional>
#include <iostream>

namespace floatwright::testing {

// Starts `work`; what it returns is the exit code. Nothing of this process is flushed or torn down there.
[[nodiscard]] inline pid_t start_process(const std::function<int()>& work) {
  const pid_t child = ::fork();
  if (child != 0) return child;
  int code = 101;
  try {
    code = work();
  } catch (const std::exception& error) {
    std::cerr << error.what() << std::endl;
  }
  ::_exit(code);
}

// 128 + signal when a signal ended it.
[[nodiscard]] inline int exit_code_of(pid_t child) {
  int status = 0;
  if (::waitpid(child, &status, 0) != child) return -1;
  return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
}

[[nodiscard]] inline int in_process(const std::function<int()>& work) { return exit_code_of(start_process(work)); }

// Root may write anywhere: becomes "nobody". Without root the rights that a folder has hold already.
[[nodiscard]] inline bool without_root() {
  return ::geteuid() != 0 || (::setgroups(0, nullptr) == 0 && ::setgid(65534) == 0 && ::setuid(65534) == 0);
}

// This process alone sees the folder as on a disk that can't be written. Needs root.
[[nodiscard]] inline bool mounted_read_only(const std::filesystem::path& folder) {
  const char* at = folder.c_str();
  return ::unshare(CLONE_NEWNS) == 0 && ::mount("none", "/", nullptr, MS_REC | MS_PRIVATE, nullptr) == 0 &&
         ::mount(at, at, nullptr, MS_BIND, nullptr) == 0 &&
         ::mount(nullptr, at, nullptr, MS_BIND | MS_REMOUNT | MS_RDONLY, nullptr) == 0;
}

// A disk of this process alone that holds no more than `size` ("size=256k", tmpfs(5)). Needs root.
[[nodiscard]] inline bool mounted_small(const std::filesystem::path& folder, const char* size) {
  return ::unshare(CLONE_NEWNS) == 0 && ::mount("none", "/", nullptr, MS_REC | MS_PRIVATE, nullptr) == 0 &&
         ::mount("tmpfs", folder.c_str(), "tmpfs", 0, size) == 0;
}
[[nodiscard]] inline bool remounted_small(const std::filesystem::path& folder, const char* size) {
  return ::mount("tmpfs", folder.c_str(), "tmpfs", MS_REMOUNT, size) == 0;
}

}  // namespace floatwright::testing
