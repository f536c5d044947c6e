#include "engine/river/picture.hpp"

#include <gmock/gmock.h>

#include "tests/engine/river/lantern.hpp"

namespace floatwright {
namespace {

using ::testing::Contains;
using ::testing::Each;
using ::testing::HasSubstr;
using ::testing::SizeIs;

std::vector<std::string> picture_of(const River& river) { return river_picture(river, river_graph(river)); }

std::string drawn(const River& river) {
  std::string text = "\n";
  for (const auto& line : picture_of(river)) text += line + "\n";
  return text;
}

TEST(RiverPicture, ShowsADamATributaryASideChannelAndADitch) {
  River river;
  river.name = "Small River";
  river.gauges = {gauge("weir", "Small at the weir", 9.0, 120)};
  river.accesses = {access("top", "Top Bridge", 9.5), access("end", "End Bridge", 3.0)};
  river.notes = {note(river.accesses[0], river.accesses[1], 3.0, {water(WaterType::Run, 1.0, 3.0, 2.0, 300)})};
  Dam dam;
  dam.name = "Old Dam";
  dam.place = river_mile(10.0);
  river.dams = {dam};
  river.tributaries = {{"elk", "Elk Creek", river_mile(6.0), square_miles(40), ""}};
  river.side_channels = {
      {"willow", "Willow Channel", river_mile(8.0), river_mile(5.0), {{cubic_feet_per_second(300), 0.2}}}};
  river.diversions = {{"ditch", "Low ditch", river_mile(4.0), cubic_feet_per_second(25), {}}};
  EXPECT_EQ(drawn(river), R"(
Small River, mile 10.0 to 3.0, 7.0 mi. Upstream is up.

  10.0    =====  dam      Old Dam
            |             0.5 mi: nobody described it
   9.5      O    access   Top Bridge
            |             Top Bridge to End Bridge, 6.5 mi: run
   9.0      +    gauge    Small at the weir, 120 mi2
            |
   8.0      +\   leaves   Willow Channel, 20 % of the flow
            | |
   6.0  ----+ |  joins    Elk Creek, 40 mi2
            | |
   5.0      +/   returns  Willow Channel
            |
   4.0  <---+    taken    Low ditch, 25 cfs
            |
   3.0      O    access   End Bridge
)");
}

TEST(RiverPicture, DrawsTwoSideChannelsBesideEachOther) {
  River river = lantern_river();
  river.side_channels.push_back({"outer", "Outer Channel", river_mile(38.2), river_mile(35.5), {}});
  const std::string text = drawn(river);
  EXPECT_THAT(text, HasSubstr("  38.2      +--\\"));
  EXPECT_THAT(text, HasSubstr("  38.0      + | |"));
  EXPECT_THAT(text, HasSubstr("  37.4      +/  |"));
  EXPECT_THAT(text, HasSubstr("  35.5      +--/"));
}

TEST(RiverPicture, StaysWithinSeventyEightColumns) {
  River river = lantern_river();
  river.accesses[1].name = "The old bridge at the mill above the second island, river left, behind the saw mill's yard";
  river.hazards[0].what = std::string(200, 'x');
  EXPECT_THAT(picture_of(river), Each(SizeIs(::testing::Le(78u))));
  EXPECT_THAT(picture_of(river), Contains(HasSubstr("saw mill's yard")));
}

TEST(RiverPicture, CutsNoLetterInTwo) {
  River river = lantern_river();
  for (int i = 0; i < 100; ++i) river.hazards[0].what += "\xC3\xB8";  // ø
  for (const auto& line : picture_of(river)) {
    ASSERT_FALSE(line.empty() ? false : (static_cast<unsigned char>(line.back()) == 0xC3)) << line;
  }
}

TEST(RiverPicture, SaysSoWhenThereIsNoRiver) {
  EXPECT_THAT(picture_of(River{}), ::testing::ElementsAre(HasSubstr("no place on it is known")));
}

}  // namespace
}  // namespace floatwright
