#pragma once
// While it lives, the signals that ask a program to end (SIGTERM, SIGINT, SIGHUP) wait: a file is brought to its name
// first, so that no half of it and no temporary name is left. SIGKILL cannot be held.
#include <signal.h>

#include <initializer_list>

namespace floatwright {

class HeldSignals {
 public:
  HeldSignals() {
    sigset_t held;
    sigemptyset(&held);
    for (const int signal : {SIGTERM, SIGINT, SIGHUP}) sigaddset(&held, signal);
    pthread_sigmask(SIG_BLOCK, &held, &before_);
  }
  ~HeldSignals() { pthread_sigmask(SIG_SETMASK, &before_, nullptr); }
  HeldSignals(const HeldSignals&) = delete;
  HeldSignals& operator=(const HeldSignals&) = delete;

 private:
  sigset_t before_{};
};

}  // namespace floatwright
