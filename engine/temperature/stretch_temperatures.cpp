#include "engine/temperature/stretch_temperatures.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/statistics/shrunk_regression.hpp"

namespace floatwright {
namespace {

constexpr Period kHour = std::chrono::hours{1};
constexpr Period kFitted = std::chrono::hours{5 * 24};
constexpr std::size_t kFewestRows = 24;
constexpr Shrinking kShrinking{1.0, 0.05, 12};
constexpr std::array kPaces{0.5, 0.63, 0.79, 1.0, 1.26, 1.59, 2.0};
constexpr double kClearlyBetter = 0.7;

struct Followed {
  double pace = 1.0;
  ParcelsDown parcels;
  std::vector<std::optional<Temperature>> starts;  // by departure
  Equilibrium equilibrium{};
  TemperatureChange residual{};  // mean size at the lower gauge over the fitted days
  std::size_t rows = 0;

  [[nodiscard]] std::optional<Temperature> at(std::size_t place, Instant t) const {
    return parcels.at(place, t, equilibrium, starts);
  }
};

Duration travel_of(const WaterPath& path) {
  Duration sum;
  for (const PathPiece& piece : path.pieces) sum = sum + piece.travel;
  return sum;
}

// From those that arrive as the fitted days begin to `last`.
TimeGrid departures_for(const StretchInputs& in, double pace, Instant last) {
  const Instant newest = in.bottom.observed.times.back();
  const Instant first = std::min(newest - kFitted, in.bottom.grid.start) - period(pace * travel_of(in.path)) - kHour;
  TimeGrid departures{std::chrono::floor<std::chrono::hours>(first), kHour, 0};
  departures.count = static_cast<std::size_t>((last - departures.start) / kHour) + 2;
  return departures;
}

// Least absolute error of mean, cosine and sine at the lower gauge, shrunk to its own mean where the way is too short
// for the surface to tell.
void fit(Followed& way, const StretchInputs& in) {
  RegressionRows rows;
  rows.width = 3;
  double mean = 0.0;  // C
  const Instant newest = in.bottom.observed.times.back();
  for (std::size_t d = 0; d < way.starts.size(); ++d) {
    const Instant arrives = way.parcels.departures().at(d) + period(way.parcels.travel(way.parcels.end()));
    if (arrives < newest - kFitted || arrives > newest || !way.starts[d]) continue;
    const auto seen = value_at(in.bottom.observed, arrives);
    if (!seen) continue;
    const ParcelShares& x = way.parcels.shares(way.parcels.end(), d);
    rows.regressors.insert(rows.regressors.end(), {x.mean, x.cosine, x.sine});
    rows.outcomes.push_back(in_celsius(*seen) - x.start * in_celsius(*way.starts[d]) - x.known);
    mean += in_celsius(*seen);
  }
  way.rows = rows.size();
  if (way.rows == 0) return;
  const std::array prior{mean / static_cast<double>(way.rows), 0.0, 0.0};
  const auto b = shrunk_least_absolute(rows, prior, kShrinking);
  way.equilibrium = {celsius(b[0]), kelvins(b[1]), kelvins(b[2])};
  double missed = 0.0;  // C
  for (std::size_t i = 0; i < way.rows; ++i)
    missed += std::abs(rows.outcomes[i] - dot(b, std::span{rows.regressors}.subspan(3 * i, 3)));
  way.residual = kelvins(missed / static_cast<double>(way.rows));
}

Followed followed(const StretchInputs& in, double pace, Instant last) {
  const TimeGrid departures = departures_for(in, pace, last);
  Followed way{pace, ParcelsDown(in.path, pace, departures, in.joining), {}};
  for (std::size_t d = 0; d < departures.count; ++d) way.starts.push_back(in.top.at(departures.at(d)));
  fit(way, in);
  return way;
}

struct Paces {
  double quick = 0.5, middle = 1.0, slow = 2.0;
};

Paces around(double pace) { return {0.8 * pace, pace, 1.25 * pace}; }

Paces paces_of(const StretchInputs& in) {
  if (in.path.timed_by_floats) return around(1.0);
  const Instant newest = in.bottom.observed.times.back();
  double best = 1.0;
  TemperatureChange least = kClearlyBetter * followed(in, best, newest).residual;
  for (const double pace : kPaces) {
    const Followed way = followed(in, pace, newest);
    if (way.rows < kFewestRows || way.residual >= least) continue;
    least = way.residual;
    best = pace;
  }
  return best == 1.0 ? Paces{} : around(best);
}

// The parcels' temperature and what the lower gauge's curve misses of them, in proportion to the travel; straight
// between both ends' curves where no parcel is known.
Temperature closed(const Followed& way, const StretchInputs& in, std::size_t place, Instant t) {
  const std::size_t end = way.parcels.end();
  const double down = way.parcels.travel(place) / way.parcels.travel(end);
  const Temperature bottom = cases_at(in.bottom.cases, in.bottom.grid, t).middle;
  const auto here = way.at(place, t), at_end = way.at(end, t);
  if (here && at_end) return *here + down * (bottom - *at_end);
  const Temperature top = cases_at(in.top.cases, in.top.grid, t).middle;
  return top + down * (bottom - top);
}

struct ThreeWays {
  Followed quick, middle, slow;
};

PerCase<Temperature> cases_of(const ThreeWays& ways, const StretchInputs& in, std::size_t place, std::size_t i) {
  const Instant t = in.bottom.grid.at(i);
  const Temperature quick = closed(ways.quick, in, place, t), middle = closed(ways.middle, in, place, t),
                    slow = closed(ways.slow, in, place, t);
  const double down = ways.middle.parcels.travel(place) / ways.middle.parcels.travel(ways.middle.parcels.end());
  const TemperatureChange own = 4.0 * down * (1.0 - down) * ways.middle.residual;
  const auto ends = [&](TemperatureChange top, TemperatureChange bottom) { return (1.0 - down) * top + down * bottom; };
  const PerCase<Temperature>&top = in.top.cases[i], &bottom = in.bottom.cases[i];
  return {std::min({quick, middle, slow}) + ends(top.low - top.middle, bottom.low - bottom.middle) + -1.0 * own, middle,
          std::max({quick, middle, slow}) + ends(top.high - top.middle, bottom.high - bottom.middle) + own};
}

}  // namespace

Measured<std::vector<TemperatureCurve>> stretch_temperatures(const StretchInputs& in) {
  if (in.bottom.observed.empty()) return Absent{"the lower gauge has no readings"};
  const Paces paces = paces_of(in);
  const Instant last = in.bottom.grid.last();
  const ThreeWays ways{followed(in, paces.quick, last), followed(in, paces.middle, last),
                       followed(in, paces.slow, last)};
  if (ways.middle.rows < kFewestRows) return Absent{"too few hours known at both ends"};
  std::vector<TemperatureCurve> curves;
  for (std::size_t place = 0; place < in.path.pieces.size(); ++place) {
    TemperatureCurve curve;
    for (std::size_t i = 0; i < in.bottom.grid.count; ++i) curve.push_back(cases_of(ways, in, place, i));
    curves.push_back(std::move(curve));
  }
  return curves;
}

}  // namespace floatwright
