#include "adapters/in/http/retry.hpp"

#include <gtest/gtest.h>

namespace floatwright {
namespace {

using std::chrono::milliseconds, std::chrono::seconds;

// RFC 9110: 10.2.3 has the forms of Retry-After, 5.6.7 the three forms of a date, each for the same instant.
TEST(Retry, ReadsTheWaitAServerAsksFor) {
  EXPECT_EQ(asked_wait("120", ""), seconds{120});
  EXPECT_EQ(asked_wait("0", ""), seconds{0});
  EXPECT_EQ(asked_wait("", ""), std::nullopt);
  for (const char* date :
       {"Sun, 06 Nov 1994 08:49:37 GMT", "Sunday, 06-Nov-94 08:49:37 GMT", "Sun Nov  6 08:49:37 1994"})
    EXPECT_EQ(asked_wait("Sun, 06 Nov 1994 08:50:07 GMT", date), seconds{30}) << date;
}

TEST(Retry, TakesADateGoneByForNoWaitAndOneWithoutTheServersClockForNone) {
  EXPECT_EQ(asked_wait("Sun, 06 Nov 1994 08:49:37 GMT", "Sun, 06 Nov 1994 08:50:07 GMT"), seconds{0});
  EXPECT_EQ(asked_wait("Sun, 06 Nov 1994 08:49:37 GMT", ""), std::nullopt);
}

TEST(Retry, SurvivesWhatIsNoWait) {
  for (const char* text : {"-5", "soon", "1.5", "Sun, 99 Nov 1994 08:49:37 GMT"})
    EXPECT_EQ(asked_wait(text, "Sun, 06 Nov 1994 08:49:37 GMT"), std::nullopt) << text;
  EXPECT_GE(asked_wait("99999999999999999999", ""), seconds{999'999'999});
}

TEST(Retry, DoublesItsOwnWaitWithinJitterAndLimit) {
  const auto wait = [](int tries, double jitter) { return own_wait(tries, jitter, seconds{1}, seconds{30}); };
  EXPECT_EQ(wait(1, 0.0), milliseconds{500});
  EXPECT_EQ(wait(1, 0.5), milliseconds{1000});
  EXPECT_EQ(wait(2, 0.5), milliseconds{2000});
  EXPECT_EQ(wait(3, 1.0), milliseconds{6000});
  EXPECT_EQ(wait(50, 1.0), seconds{30});
}

}  // namespace
}  // namespace floatwright
