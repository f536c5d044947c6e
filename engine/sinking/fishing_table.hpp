#pragma once
// The casts of one rig by one technique and at one boat's pace, worked out beforehand over 11 surface speeds by 8
// depths, so that a water is ranked without simulating a cast. There is no bed in it, nor scatter: they come at
// scoring. It holds for water of 10 C; how much deeper the fly goes in warmer, thinner water is one number a table.
// Between the nodes a cubic (Catmull-Rom) in the logarithms of speed and depth, of the whole series at once: its times
// are taken as shares of the time to hang-down, so that alike moments meet.
#include <array>
#include <cstddef>
#include <optional>

#include "engine/sinking/cast_path.hpp"

namespace floatwright {

inline constexpr std::size_t kTableSpeeds = 11, kTableDepths = 8, kSeriesSamples = 32;

// The grid is geometric, ends included.
[[nodiscard]] SurfaceSpeed table_speed(std::size_t row);  // 0.111 to 2.25 m/s
[[nodiscard]] Length table_depth(std::size_t column);     // 0.26 to 4.9 m

// A cast as a series: all but the last sample even from landing to hang-down, the last at the end. Single floats, since
// thousands of series are kept.
struct CastSeries {
  float hang_s = 0, end_s = 0;
  float lies_m = 0;  // mean depth of fly or tip, of the deeper one
  std::array<float, kSeriesSamples> fly_m{}, tip_m{}, pace_m_s{};  // pace: the lesser of over ground and through water
};
[[nodiscard]] CastSeries series_of(const CastPath& path);

inline constexpr Temperature kTableTemperature = celsius(10.0);
// Speed over depth in the tables, which know no bed: between that of gauged rivers and that over cobble
// (engine/water/bed_profile.hpp). Of water over another bed they are read at a like speed (like_speed.hpp), and what is
// advised is worked out over its own.
inline constexpr Profile kTableProfile{Profile::Law::Power, 0.22, {}};

struct FishingTable {
  Length leader;                                              // used
  double deeper_per_c = 0.0;                                  // share by which fly and tip are deeper for each degree
  std::array<CastSeries, kTableSpeeds * kTableDepths> nodes;  // by speed, then depth
};

// Where a water stands in the grid, for any table.
struct GridPoint {
  std::size_t speed = 0, depth = 0;  // of the first of four nodes each way
  std::array<float, 4> of_speed{}, of_depth{};
  double warmer_c = 0.0;  // than the table
  Length water;
  SurfaceSpeed surface_speed;
  Profile profile = kTableProfile;
};
// None outside the grid: there every cast is worked out.
[[nodiscard]] std::optional<GridPoint> grid_point(Length depth, SurfaceSpeed speed,
                                                  Temperature temperature = kTableTemperature,
                                                  const Profile& profile = kTableProfile);

// `pace`: that of the table, the boat's speed over the surface speed.
[[nodiscard]] CastSeries series_at(const FishingTable& table, const GridPoint& at, double pace = 0.0);
// The same at the tables' own temperature, and then in water that is warmer by so many degrees.
[[nodiscard]] CastSeries series_as_tabled(const FishingTable& table, const GridPoint& at, double pace);
[[nodiscard]] CastSeries warmed(const CastSeries& tabled, const FishingTable& table, double warmer_c);
// A way between two, 0 to 1.
[[nodiscard]] CastSeries between(const CastSeries& a, const CastSeries& b, double way);
// A swing's fly bears straight downstream from hang-down on.
[[nodiscard]] CastPath path_of(const CastSeries& series, Length leader);

}  // namespace floatwright
