#include "adapters/in/gauges/rating_files.hpp"

#include <gmock/gmock.h>

namespace floatwright {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

const std::string kFixtures = FLOATWRIGHT_SOURCE_DIR "/fixtures/recorded/usgs-rdb/";

LoadedConfiguration gauge_with(const std::string& file, const std::string& station = "usgs:01594440") {
  LoadedConfiguration loaded;
  loaded.configuration.emplace();
  GaugeSite gauge;
  gauge.id = "g";
  gauge.station = station;
  gauge.rating_file = file;
  loaded.configuration->river.gauges = {gauge, GaugeSite{}};
  return with_ratings(std::move(loaded));
}

TEST(RatingFile, GivesItsGaugeARating) {
  const auto loaded = gauge_with(kFixtures + "rating_base_01594440.rdb");
  EXPECT_THAT(loaded.problems, IsEmpty());
  ASSERT_TRUE(loaded.configuration.has_value());
  EXPECT_THAT(loaded.configuration->river.gauges[0].rating->points, SizeIs(11));
  EXPECT_FALSE(loaded.configuration->river.gauges[1].rating);
}

TEST(RatingFile, OfAnotherStationIsRefused) {
  const auto loaded = gauge_with(kFixtures + "rating_base_01594440.rdb", "usgs:00000001");
  EXPECT_FALSE(loaded.configuration.has_value());
  EXPECT_EQ(loaded.exit_code, 78);
  ASSERT_THAT(loaded.problems, SizeIs(1));
  EXPECT_THAT(loaded.problems[0].found, HasSubstr("usgs:01594440"));
}

TEST(RatingFile, ThatHoldsSomethingElseIsToldByName) {
  for (const char* name : {"site_info.rdb", "no_such_file.rdb"}) {
    const auto loaded = gauge_with(kFixtures + name);
    EXPECT_FALSE(loaded.configuration.has_value());
    ASSERT_THAT(loaded.problems, SizeIs(1));
    EXPECT_THAT(loaded.problems[0].file, HasSubstr(name));
  }
}

}  // namespace
}  // namespace floatwright
