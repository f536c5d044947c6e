#include "engine/river/told_order.hpp"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

#include "tests/engine/river/lantern.hpp"

namespace floatwright {
namespace {

using ::testing::ElementsAre;

std::vector<std::string> gauges_told(River river) {
  put_in_told_order(river);
  std::vector<std::string> ids;
  for (const GaugeSite& gauge : river.gauges) ids.push_back(gauge.id);
  return ids;
}

// Alder Creek joins between the two on the stem; a gauge that nothing places stands last.
TEST(ToldOrder, OfGaugesIsDownTheRiver) {
  River river = lantern_river();
  river.gauges.insert(river.gauges.begin(), gauge("somewhere", "Somewhere", {}, 10));
  for (int turn = 0; turn < 2; ++turn) {
    EXPECT_THAT(gauges_told(river), ElementsAre("heron", "alder", "ferry", "somewhere"));
    std::ranges::reverse(river.gauges);
  }
}

// As much fished: by kind, then the shallower.
TEST(ToldOrder, OfWatersIsByTheirShareOfTheFishing) {
  River river = lantern_river();
  std::vector<Water> waters{water(WaterType::Bank, 0.2, 2.5, 2.0, 1800), water(WaterType::Run, 0.2, 5.0, 3.0, 1800),
                            water(WaterType::Pool, 0.4, 8.0, 1.5, 1800), water(WaterType::Run, 0.2, 4.0, 3.0, 1800)};
  for (int turn = 0; turn < 2; ++turn) {
    river.notes.front().waters = river.reaches.front().waters = waters;
    put_in_told_order(river);
    for (const std::vector<Water>* told : {&river.notes.front().waters, &river.reaches.front().waters}) {
      std::vector<std::pair<WaterType, double>> found;
      for (const Water& one : *told) found.emplace_back(one.type, std::round(in_feet(one.notes.front().depth)));
      EXPECT_THAT(found, ElementsAre(std::pair(WaterType::Pool, 8.0), std::pair(WaterType::Run, 4.0),
                                     std::pair(WaterType::Run, 5.0), std::pair(WaterType::Bank, 3.0)));
    }
    std::ranges::reverse(waters);
  }
}

}  // namespace
}  // namespace floatwright
