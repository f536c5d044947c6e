#include "engine/sinking/simulated_cast.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "engine/sinking/case_faults.hpp"
#include "engine/sinking/cast_run.hpp"

namespace floatwright {
namespace {

constexpr double kRowEvery = 0.1;  // s
constexpr Length kSoftBed = metres(0.1);
constexpr int kAttempts = 3;  // with ever shorter steps, where a line flies apart

// Every number is one, the fly is no further from the rod than there is line, and nothing is far under a bed.
bool is_sound(const CastRow& row, const CastCase& in, const Chain<Alone>& chain) {
  constexpr double kOver = 0.05;  // m
  for (const double number :
       {row.fly_depth.si(), row.tip_depth.si(), row.bearing.si(), row.over_ground.si(), row.through_water.si()}) {
    if (!std::isfinite(number)) return false;
  }
  if (in.has_bed && std::max(row.fly_depth, row.tip_depth) > 1.1 * in.depth + kSoftBed) return false;
  const double most = of_lane(chain.out(), 0) + kOver;
  return of_lane(dot(chain.joint(0).at, chain.joint(0).at), 0) < most * most && row.tip_depth.si() < most;
}

std::optional<SimulatedCast> run_through(const CastCase& in, const TabledWater& water, Duration until,
                                         const Resolution& resolution) {
  const WaterAndBoat here{&water, in.boat};
  CastRun<Alone> run(in, {&here, 1}, resolution);
  SimulatedCast cast;
  cast.rows.push_back(run.row(0));
  while (run.time() < until.si() - 0.5 * resolution.step.si() && run.advance()) {
    if (run.time() < kRowEvery * static_cast<double>(cast.rows.size()) - 0.5 * resolution.step.si()) continue;
    const CastRow now = run.row(0);
    if (!is_sound(now, in, run.chain())) return std::nullopt;
    cast.rows.push_back(now);
    cast.deepest_fly = std::max(cast.deepest_fly, now.fly_depth);
  }
  cast.end_fly = cast.rows.back().fly_depth;
  return cast;
}

}  // namespace

Measured<SimulatedCast> simulated_cast(const CastCase& in, Duration until, const Resolution& resolution) {
  if (std::string fault = fault_of(in); !fault.empty()) return Absent{fault};
  const auto water = tabled_water(in.depth, in.surface_speed, in.profile, in.temperature);
  if (!water) return Absent{water.why_absent()};
  Resolution finer = resolution;
  for (int attempt = 0; attempt < kAttempts; ++attempt) {
    if (auto cast = run_through(in, *water, until, finer)) return *std::move(cast);
    finer.step = 0.25 * finer.step;
  }
  return Absent{"the simulated line flew apart: its parts, weights or drag area are beyond any line's"};
}

}  // namespace floatwright
