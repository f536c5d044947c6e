#include "adapters/in/fetch/spans.hpp"

#include <gmock/gmock.h>

#include "adapters/in/calendar/written_period.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

Instant at(int hour) { return Instant{std::chrono::hours{hour}}; }

TEST(NotHeld, IsWhatTheHeldSpansLeaveOver) {
  EXPECT_THAT(not_held({at(0), at(10)}, {}), ElementsAre(AskedSpan{at(0), at(10)}));
  EXPECT_THAT(not_held({at(0), at(10)}, {{at(6), at(8)}, {at(-5), at(2)}, {at(7), at(9)}}),
              ElementsAre(AskedSpan{at(2), at(6)}, AskedSpan{at(9), at(10)}));
  EXPECT_THAT(not_held({at(0), at(10)}, {{at(0), at(10)}}), IsEmpty());
  EXPECT_THAT(not_held({at(0), at(10)}, {{at(20), at(30)}}), ElementsAre(AskedSpan{at(0), at(10)}));
  EXPECT_THAT(not_held({at(10), at(0)}, {}), IsEmpty());
}

TEST(InPieces, CutsAtWholeMultiplesNewestFirst) {
  EXPECT_THAT(in_pieces({{at(5), at(25)}}, std::chrono::hours{10}),
              ElementsAre(AskedSpan{at(20), at(25)}, AskedSpan{at(10), at(20)}, AskedSpan{at(5), at(10)}));
  EXPECT_THAT(in_pieces({{at(0), at(10)}}, std::chrono::hours{10}), ElementsAre(AskedSpan{at(0), at(10)}));
}

TEST(PeriodIn, ReadsWhatIso8601Writes) {
  using std::chrono::hours, std::chrono::minutes, std::chrono::days;
  EXPECT_EQ(period_in("P2D"), Period{days{2}});
  EXPECT_EQ(period_in("P5Y"), Period{std::chrono::years{5}});
  EXPECT_EQ(period_in("P1Y6M2W3D"), Period{std::chrono::years{1} + std::chrono::months{6} + days{17}});
  EXPECT_EQ(period_in("PT90M"), Period{minutes{90}});
  EXPECT_EQ(period_in("P1DT12H"), Period{hours{36}});
  for (const char* wrong : {"", "P", "PT", "P1DT", "5Y", "P5", "P-1D", "P1D2Y", "P1H", "P1.5D", "P5Yx", "P999Y", "p2d",
                            "P99999999999999999999D", "P1D P1D"})
    EXPECT_EQ(period_in(wrong), std::nullopt) << wrong;
}

}  // namespace
}  // namespace floatwright
