// What four lanes read of a table side by side, against the table itself.
#include "engine/sinking/abreast.hpp"

#include <gmock/gmock.h>

#include <vector>

#include "engine/sinking/cylinder_drag.hpp"
#include "engine/sinking/stream.hpp"

namespace floatwright {
namespace {

constexpr double kSingle = 2e-6;  // share, of numbers in single precision

TEST(BetweenNodes, OfTheDragTableAreAsInDoublePrecision) {
  for (double reynolds = DragTable::kLeast; 8.0 * reynolds < DragTable::kMost; reynolds *= 1.0137) {
    const Abreast x([&](auto lane) { return static_cast<float>(reynolds * (1.0 + 2.0 * lane)); });
    const Abreast cd = between_nodes<DragTable::kNodeBits, DragTable::kFirstOctave>(x, [](auto) { return drag_table().nodes(); });
    for (std::size_t lane = 0; lane < kWatersAbreast; ++lane) {
      const double alone = drag_table().at(of_lane(x, lane));
      EXPECT_NEAR(of_lane(cd, lane), alone, kSingle * alone) << of_lane(x, lane);
    }
  }
}

TEST(BetweenNodes, OfStreamsAreEachLanesOwn) {
  std::vector<Stream> streams;
  for (std::size_t lane = 0; lane < kWatersAbreast; ++lane)
    streams.emplace_back(surface_metres_per_second(0.4 + 0.3 * static_cast<double>(lane)), Profile{},
                         metres(0.5 + 0.7 * static_cast<double>(lane)));
  for (double share = 0.0; share < 0.98; share += 0.0071) {
    const Abreast height([&](auto lane) {
      const Stream& stream = streams[lane];
      return static_cast<float>(Stream::kHighest - share * (0.5 + 0.7 * static_cast<double>(lane)) * stream.per_depth());
    });
    const Abreast speed = between_nodes<Stream::kNodeBits, -Stream::kOctaves>(
        height, [&](auto lane) { return streams[lane].nodes(); });
    for (std::size_t lane = 0; lane < kWatersAbreast; ++lane) {
      const double alone = streams[lane].at(metres(share * (0.5 + 0.7 * static_cast<double>(lane)))).si();
      EXPECT_NEAR(of_lane(speed, lane), alone, 20.0 * kSingle * alone) << lane << ' ' << share;
    }
  }
}

}  // namespace
}  // namespace floatwright
