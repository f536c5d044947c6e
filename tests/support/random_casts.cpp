#include "tests/support/random_casts.hpp"

#include <algorithm>
#include <cmath>
#include <random>

namespace floatwright {
namespace {

class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  // Not std::uniform_real_distribution: its values are the library's own.
  double between(double low, double high) { return low + (high - low) * static_cast<double>(engine_()) / 4294967295.0; }
  template <class T, std::size_t N>
  T one_of(const T (&of)[N]) {
    return of[engine_() % N];
  }
  double rounded(double low, double high) { return std::trunc(between(low, high) * 1000.0) / 1000.0; }

 private:
  std::mt19937 engine_;
};

CastCase random_cast(Dice& dice) {
  CastCase in;
  in.depth = metres(dice.rounded(0.4, 3.2));
  in.surface_speed = surface_metres_per_second(dice.rounded(0.2, 1.65));
  in.bearing = degrees(dice.rounded(45.0, 90.0));
  in.slack = dice.one_of({true, true, true, false}) ? dice.rounded(0.0, 0.15) : 0.0;
  in.feed = seconds(dice.one_of({true, false}) ? dice.rounded(0.0, 5.0) : 0.0);
  const double paces[] = {0.0, 0.0, 0.0, 0.65, 1.0, 1.5};
  in.boat = metres_per_second(dice.one_of(paces) * in.surface_speed.si());
  const double leader = dice.rounded(0.5, 3.0);
  const double tip = dice.one_of({true, true, true, true, false}) ? dice.rounded(1.0, 6.0) : 0.0;
  const double rate = dice.rounded(0.0381, 0.2032);  // 1.5 to 8 in/s
  const double end = rate * dice.rounded(1.0, 1.3);
  const double cast = dice.rounded(9.0, 12.0);  // rod's tip to fly
  const double thickness = rate <= 0.0762 ? 1.2 : rate < 0.17 ? 1.0 : 0.9;
  in.parts.push_back({PartKind::Leader, metres(leader), millimetres(0.30), kilograms_per_cubic_metre(1140.0), {}, {}});
  if (tip > 0.0) {
    const Speed butt = metres_per_second(rate), lower = metres_per_second(end);
    in.parts.push_back({PartKind::Sinking, metres(tip), millimetres(thickness), {}, butt, lower});
  }
  in.parts.push_back({PartKind::Floating, metres(25.0), millimetres(1.6), kilograms_per_cubic_metre(870.0), {}, {}});
  in.line_out = metres(std::max(1.5, cast - leader - tip));
  const bool weighted = dice.one_of({true, false});
  const double mass = weighted ? dice.rounded(0.0005, 0.002) + 0.0005 : 0.0002;                  // kg
  const double sinks = weighted ? dice.rounded(0.2, 0.5) : 0.08;                                  // m/s
  const double w = 0.6 * mass * kStandardGravity;                                                 // N
  in.fly = {newtons(w), metres_per_second(sinks), square_metres(0.25 * 2.0 * w / (1000.0 * sinks * sinks))};
  in.has_bed = dice.one_of({true, false});
  if (dice.one_of({true, false, false, false, false})) {  // a strip
    in.bearing = degrees(90.0);
    in.slack = 0.05;
    in.feed = Duration{};
    in.count = seconds(dice.one_of({0.0, 3.0, 6.0, 10.0}));
    in.strip = metres_per_second(dice.one_of({0.3, 0.6}));
    in.least_out = metres(2.0);
  }
  return in;
}

}  // namespace

std::vector<CastCase> random_casts(int count, unsigned seed) {
  Dice dice(seed);
  std::vector<CastCase> casts;
  for (int i = 0; i < count; ++i) casts.push_back(random_cast(dice));
  return casts;
}

}  // namespace floatwright
