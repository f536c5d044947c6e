#pragma once
// How far a long piece of work has come, on standard error, for one who watches; taken away again at the end. In a log,
// a pipe or a mail of cron's there is none.
#include <cstddef>
#include <string>

namespace floatwright {

class ProgressBar {
 public:
  ProgressBar(std::string what, bool wanted);  // drawn where it is wanted and standard error is a terminal
  ~ProgressBar();
  ProgressBar(const ProgressBar&) = delete;
  ProgressBar& operator=(const ProgressBar&) = delete;
  void show(std::size_t done, std::size_t of);

 private:
  std::string what_;
  bool drawn_;
  bool stands_ = false;
};

}  // namespace floatwright
