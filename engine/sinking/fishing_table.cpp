#include "engine/sinking/fishing_table.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "engine/sinking/abreast.hpp"
#include "engine/sinking/like_speed.hpp"

namespace floatwright {
namespace {

// A geometric axis: least value, most value, how many.
struct Axis {
  double least, most;
  std::size_t count;
  [[nodiscard]] double at(std::size_t i) const {
    return least * std::pow(most / least, static_cast<double>(i) / static_cast<double>(count - 1));
  }
  // In steps from the least.
  [[nodiscard]] double place(double value) const {
    return std::log(value / least) / std::log(most / least) * static_cast<double>(count - 1);
  }
  [[nodiscard]] bool holds(double value) const {
    constexpr double kRounding = 1e-9;  // a row at the edge is one of them
    return value >= least * (1.0 - kRounding) && value <= most * (1.0 + kRounding);
  }
};
constexpr Axis kSpeeds{0.111, 2.25, kTableSpeeds};  // m/s
constexpr Axis kDepths{0.26, 4.9, kTableDepths};    // m

// Weights of the four nodes from `first` on. At the edges the missing node is taken to continue a parabola through the
// nearest three. A like speed beyond the edge is read at it.
struct Cubic {
  std::size_t first;
  std::array<float, 4> weights;
};
Cubic cubic(const Axis& axis, double value) {
  const double last = static_cast<double>(axis.count - 1);
  const double place = std::clamp(axis.place(value), 0.0, last);  // steps
  const auto cell = static_cast<std::size_t>(std::clamp(place, 0.0, last - 1.0));
  const double f = place - static_cast<double>(cell);
  const double before = 0.5 * f * (-1.0 + f * (2.0 - f)), here = 1.0 + f * f * (-2.5 + 1.5 * f);
  const double next = 0.5 * f * (1.0 + f * (4.0 - 3.0 * f)), after = 0.5 * f * f * (f - 1.0);
  const auto four = [](double a, double b, double c, double d) {
    return std::array{static_cast<float>(a), static_cast<float>(b), static_cast<float>(c), static_cast<float>(d)};
  };
  if (cell == 0) return Cubic{0, four(here + 3.0 * before, next - 3.0 * before, after + before, 0.0)};
  if (cell + 2 == axis.count)
    return Cubic{axis.count - 4, four(0.0, before + after, here - 3.0 * after, next + 3.0 * after)};
  return Cubic{cell - 1, four(before, here, next, after)};
}

// Series with a weight each.
template <std::size_t N>
struct Weighted {
  std::array<const CastSeries*, N> series;
  std::array<float, N> weights;
};

template <std::size_t N, class Of>
float sum_of(const Weighted<N>& all, const Of& of) {
  float sum = 0.0f;
  for (std::size_t i = 0; i < N; ++i) sum += all.weights[i] * of(*all.series[i]);
  return sum;
}

// Some samples of all series at a time, so that a sum stays where it is added to.
template <std::size_t N>
std::array<float, kSeriesSamples> sum_of(const Weighted<N>& all, std::array<float, kSeriesSamples> CastSeries::*of) {
  static_assert(kSeriesSamples % kWatersAbreast == 0);
  std::array<float, kSeriesSamples> sums;
  for (std::size_t first = 0; first < kSeriesSamples; first += kWatersAbreast) {
    Abreast sum = 0.0f;
    for (std::size_t i = 0; i < N; ++i)
      sum += all.weights[i] * Abreast(&(all.series[i]->*of)[first], std::experimental::element_aligned);
    sum.copy_to(&sums[first], std::experimental::element_aligned);
  }
  return sums;
}

template <std::size_t N>
CastSeries sum_of(const Weighted<N>& all) {
  return {sum_of(all, [](const CastSeries& s) { return s.hang_s; }),
          sum_of(all, [](const CastSeries& s) { return s.end_s; }),
          sum_of(all, [](const CastSeries& s) { return s.lies_m; }),
          sum_of(all, &CastSeries::fly_m),
          sum_of(all, &CastSeries::tip_m),
          sum_of(all, &CastSeries::pace_m_s)};
}

// An overshoot of the cubic is not let through zero.
template <std::size_t N>
void keep_positive(std::array<float, N>& values) {
  for (float& value : values) value = std::max(value, 0.0f);
}

double time_of(const CastSeries& series, std::size_t sample) {
  if (sample + 1 == kSeriesSamples) return series.end_s;
  return series.hang_s * static_cast<double>(sample) / static_cast<double>(kSeriesSamples - 2);
}

}  // namespace

SurfaceSpeed table_speed(std::size_t row) { return surface_metres_per_second(kSpeeds.at(row)); }
Length table_depth(std::size_t column) { return metres(kDepths.at(column)); }

CastSeries series_of(const CastPath& path) {
  CastSeries series;
  if (path.samples.empty()) return series;
  series.hang_s = static_cast<float>(in_seconds(path.time_to_hang_down));
  series.end_s = static_cast<float>(in_seconds(std::max(path.samples.back().t, path.time_to_hang_down)));
  const auto pace = [](const CastSample& s) { return std::min(s.over_ground, s.through_water); };
  std::size_t next = 0;
  for (std::size_t i = 0; i < kSeriesSamples; ++i) {
    const Duration t = seconds(time_of(series, i));
    while (next < path.samples.size() && path.samples[next].t < t) ++next;
    const CastSample& b = path.samples[std::min(next, path.samples.size() - 1)];
    const CastSample& a = next == 0 ? b : path.samples[next - 1];
    const double way = b.t > a.t ? std::clamp((t - a.t) / (b.t - a.t), 0.0, 1.0) : 1.0;
    const auto between = [&](auto x, auto y) { return static_cast<float>((x + way * (y - x)).si()); };
    series.fly_m[i] = between(a.fly_depth, b.fly_depth);
    series.tip_m[i] = between(a.tip_depth, b.tip_depth);
    series.pace_m_s[i] = between(pace(a), pace(b));
  }
  const auto mean = [](const auto& depths) { return std::accumulate(depths.begin(), depths.end(), 0.0f) / kSeriesSamples; };
  series.lies_m = std::max(mean(series.fly_m), mean(series.tip_m));
  return series;
}

std::optional<GridPoint> grid_point(Length depth, SurfaceSpeed speed, Temperature temperature, const Profile& profile) {
  const double h = in_metres(depth), v = in_metres_per_second(speed);  // m, m/s
  if (!kDepths.holds(h) || !kSpeeds.holds(v)) return std::nullopt;
  const Cubic of_speed = cubic(kSpeeds, v), of_depth = cubic(kDepths, h);
  const double warmer_c = in_celsius(temperature) - in_celsius(kTableTemperature);
  return GridPoint{of_speed.first, of_depth.first, of_speed.weights, of_depth.weights, warmer_c,
                   depth,          speed,          profile};
}

namespace {

// The sixteen nodes around a water.
Weighted<16> nodes_around(const FishingTable& table, const GridPoint& at) {
  Weighted<16> nodes;
  for (std::size_t i = 0; i < 4; ++i) {
    for (std::size_t j = 0; j < 4; ++j) {
      nodes.series[4 * i + j] = &table.nodes[(at.speed + i) * kTableDepths + at.depth + j];
      nodes.weights[4 * i + j] = at.of_speed[i] * at.of_depth[j];
    }
  }
  return nodes;
}

// At the speed in the tables' profile that is like the water's own.
GridPoint at_like_speed(const FishingTable& table, GridPoint at, double pace) {
  if (at.profile == kTableProfile) return at;
  const float lies = sum_of(nodes_around(table, at), [](const CastSeries& s) { return s.lies_m; });  // m
  const SurfaceSpeed like = like_speed(at.surface_speed, at.profile, at.water, pace, metres(lies));
  const Cubic of_speed = cubic(kSpeeds, in_metres_per_second(like));
  at.speed = of_speed.first;
  at.of_speed = of_speed.weights;
  return at;
}

}  // namespace

CastSeries series_at(const FishingTable& table, const GridPoint& at, double pace) {
  return warmed(series_as_tabled(table, at, pace), table, at.warmer_c);
}

CastSeries warmed(const CastSeries& tabled, const FishingTable& table, double warmer_c) {
  const auto deeper = std::max(0.0f, static_cast<float>(1.0 + table.deeper_per_c * warmer_c));
  CastSeries series = tabled;
  for (auto* depths : {&series.fly_m, &series.tip_m})
    for (float& depth : *depths) depth *= deeper;
  return series;
}

CastSeries series_as_tabled(const FishingTable& table, const GridPoint& at, double pace) {
  CastSeries sum = sum_of(nodes_around(table, at_like_speed(table, at, pace)));
  sum.hang_s = std::max(sum.hang_s, 0.0f);
  sum.end_s = std::max(sum.end_s, sum.hang_s);
  keep_positive(sum.fly_m);
  keep_positive(sum.tip_m);
  keep_positive(sum.pace_m_s);
  return sum;
}

CastSeries between(const CastSeries& a, const CastSeries& b, double way) {
  return sum_of(Weighted<2>{{&a, &b}, {static_cast<float>(1.0 - way), static_cast<float>(way)}});
}

CastPath path_of(const CastSeries& series, Length leader) {
  CastPath path{{}, seconds(series.hang_s), leader, Length{}};
  const bool hangs = series.end_s > series.hang_s;
  path.samples.reserve(kSeriesSamples);
  for (std::size_t i = 0; i < kSeriesSamples; ++i) {
    const Speed pace = metres_per_second(series.pace_m_s[i]);
    const Angle bearing = degrees(hangs && i + 2 >= kSeriesSamples ? 0.0 : 90.0);
    path.samples.push_back(
        {seconds(time_of(series, i)), metres(series.fly_m[i]), metres(series.tip_m[i]), pace, pace, bearing});
  }
  return path;
}

}  // namespace floatwright
