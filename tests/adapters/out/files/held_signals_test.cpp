#include "adapters/out/files/held_signals.hpp"

#include <gtest/gtest.h>

namespace floatwright::testing {
namespace {

volatile sig_atomic_t met = 0;
void count(int) { met = met + 1; }

TEST(HeldSignals, WaitUntilTheWorkIsDoneAndAreNotLost) {
  for (const int signal : {SIGTERM, SIGINT, SIGHUP}) {
    met = 0;
    const auto before = ::signal(signal, count);
    {
      const HeldSignals held;
      raise(signal);
      EXPECT_EQ(met, 0);
    }
    EXPECT_EQ(met, 1);
    ::signal(signal, before);
  }
}

TEST(HeldSignals, LetsOneHoldStandWithinAnother) {
  met = 0;
  const auto before = ::signal(SIGTERM, count);
  {
    const HeldSignals outer;
    { const HeldSignals inner; }
    raise(SIGTERM);
    EXPECT_EQ(met, 0);
  }
  EXPECT_EQ(met, 1);
  ::signal(SIGTERM, before);
}

}  // namespace
}  // namespace floatwright::testing
