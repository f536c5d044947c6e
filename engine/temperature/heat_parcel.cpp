#include "engine/temperature/heat_parcel.hpp"

#include <cmath>
#include <numbers>

namespace floatwright {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi / 86400.0;  // w, rad/s

struct Pair {
  double cosine, sine;
};

// What of cos(wt) and sin(wt) water at rest long since would show: in part, and late.
Pair steady_answer(double t, double kappa) {
  const double phase = kTurn * std::fmod(t, 86400.0), all = kappa * kappa + kTurn * kTurn;
  const double c = std::cos(phase), s = std::sin(phase);
  return {(kappa * kappa * c + kappa * kTurn * s) / all, (kappa * kappa * s - kappa * kTurn * c) / all};
}

}  // namespace

Duration heat_time(Length mean_depth) {
  return floatwright::seconds(kHeatOfWater * in_metres(mean_depth) / kSurfaceExchange);
}

ParcelShares after(const ParcelShares& before, Instant enters, Duration travel, Duration heat_time) {
  const double kappa = 1.0 / in_seconds(heat_time);  // 1/s
  const double kept = std::exp(-kappa * in_seconds(travel));
  const auto t = static_cast<double>(enters.time_since_epoch().count());  // s
  const Pair from = steady_answer(t, kappa), to = steady_answer(t + in_seconds(travel), kappa);
  return {kept * before.start, kept * before.mean + (1.0 - kept), kept * (before.cosine - from.cosine) + to.cosine,
          kept * (before.sine - from.sine) + to.sine, kept * before.known};
}

ParcelShares mixed(const ParcelShares& stem, double share, Temperature joining) {
  const double rest = 1.0 - share;
  return {rest * stem.start, rest * stem.mean, rest * stem.cosine, rest * stem.sine,
          rest * stem.known + share * in_celsius(joining)};
}

Temperature temperature_of(const ParcelShares& parcel, Temperature start, const Equilibrium& equilibrium) {
  return celsius(parcel.start * in_celsius(start) + parcel.mean * in_celsius(equilibrium.mean) +
                 parcel.cosine * in_kelvins(equilibrium.cosine) + parcel.sine * in_kelvins(equilibrium.sine) +
                 parcel.known);
}

}  // namespace floatwright
