#include "engine/routing/muskingum.hpp"

#include <algorithm>
#include <cmath>

#include "engine/routing/piece_pass.hpp"

namespace floatwright {
namespace {

constexpr double kMostPieces = 2000.0;
constexpr double kLargestDiffusion = 2.0;  // D over this: join
constexpr double kNoTravel = 1e-6;         // of a step

// Of the whole numbers around travel/dt, the one with C = n dt/travel nearest to 1.
double pieces_for_courant(double travel_over_dt) {
  const double fewer = std::max(1.0, std::floor(travel_over_dt)), more = fewer + 1.0;
  const double off_fewer = std::abs(fewer / travel_over_dt - 1.0), off_more = std::abs(more / travel_over_dt - 1.0);
  return std::min(kMostPieces, off_fewer <= off_more ? fewer : more);
}

}  // namespace

MuskingumWeights muskingum_weights(Duration k, double x, Duration dt) {
  const double storage = in_seconds(k);      // s
  const double half = in_seconds(dt) / 2.0;  // s
  const double d = storage * (1.0 - x) + half;
  return {(half - storage * x) / d, (half + storage * x) / d, (storage * (1.0 - x) - half) / d};
}

MuskingumWeights muskingum_cunge_weights(double courant, double diffusion) {
  const double c = courant;
  const double d = std::clamp(diffusion, std::abs(c - 1.0), 1.0 + c);
  const double sum = 1.0 + c + d;
  // max: round-off at the edge must not turn a zero into a negative flow
  const double c0 = std::max(0.0, (c - 1.0 + d) / sum), c2 = std::max(0.0, (1.0 - c + d) / sum);
  return {c0, std::max(0.0, 1.0 - c0 - c2), c2};
}

std::vector<Discharge> routed(std::vector<Discharge> inflow, MuskingumWeights weights, Discharge first_outflow) {
  if (!inflow.empty()) pass_piece<1>({inflow}, {weights}, {first_outflow});
  return inflow;
}

RoutingCut routing_cut(const WavePath& path, Duration dt) {
  const double travel_over_dt = path.travel / dt;
  if (travel_over_dt < kNoTravel) return {};
  const double diffusion_whole = path.length > Length{} ? path.spread / path.length : 0.0;
  double pieces = pieces_for_courant(travel_over_dt);
  while (pieces > 1.0 && diffusion_whole * pieces > kLargestDiffusion) pieces -= 1.0;
  return {static_cast<std::size_t>(pieces), muskingum_cunge_weights(pieces / travel_over_dt, diffusion_whole * pieces)};
}

RoutingCut reservoir_cut(Duration travel, Duration dt) {
  if (travel < dt * kNoTravel) return {};
  return {1, muskingum_cunge_weights(dt / travel, 1.0)};
}

std::vector<Discharge> routed(std::vector<Discharge> inflow, const WavePath& path, Duration dt) {
  const RoutingCut cut = routing_cut(path, dt);
  for (std::size_t piece = 0; piece < cut.pieces && !inflow.empty(); ++piece)
    pass_piece<1>({inflow}, {cut.weights}, {inflow.front()});
  return inflow;
}

}  // namespace floatwright
