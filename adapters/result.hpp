#pragma once
// An answer from outside, or why the world did not give one. The engine's own doubt is Measured<T>; a mistake in a
// user's file is a Problem.
#include <string>
#include <tl/expected.hpp>

namespace floatwright {

// What failed: where, what was found, what to do, in one sentence; and the sysexits code a command ends with for it.
struct Failure {
  std::string what;
  int exit_code = 65;
};

template <class T>
using Result = tl::expected<T, Failure>;

// sysexits(3), as far as this program uses them.
enum ExitCode : int {
  kExitFresh = 0,
  kExitUsage = 64,
  kExitBadData = 65,
  kExitNoInput = 66,
  kExitNothingMade = 69,
  kExitCantCreate = 73,
  kExitWriteFailed = 74,
  kExitOldReadings = 75,
  kExitTryLater = 75,  // another run holds the configuration
  kExitNotPermitted = 77,
  kExitConfiguration = 78
};

}  // namespace floatwright
