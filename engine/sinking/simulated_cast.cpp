#include "engine/sinking/simulated_cast.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "engine/sinking/cast_run.hpp"

namespace floatwright {
namespace {

constexpr double kRowEvery = 0.1;  // s
constexpr int kAttempts = 3;       // with ever shorter steps, where a line flies apart

bool is_above_0(double x) { return std::isfinite(x) && x > 0.0; }
bool is_0_or_more(double x) { return std::isfinite(x) && x >= 0.0; }

std::string fault_of(const LinePart& part) {
  if (!is_above_0(part.length.si())) return "a part of the line has no length";
  if (!is_above_0(part.diameter.si())) return "a part of the line has no diameter";
  if (part.sink_rate_end || part.sink_rate_butt) {
    const double rate = (part.sink_rate_end ? *part.sink_rate_end : *part.sink_rate_butt).si();
    return std::isfinite(rate) ? "" : "a part's sink rate is not a number";
  }
  return is_above_0(part.density.si()) ? "" : "a part of the line has neither a sink rate nor a density";
}

std::string fault_of_handling(const CastCase& in) {
  if (!is_above_0(in.line_out.si())) return "no line is out";
  if (in.line_out > in.parts.back().length) return "more line is out than the body is long";
  if (!is_0_or_more(in.bearing.si()) || in.bearing.si() > std::numbers::pi)
    return "the bearing is not within 0 to 180 degrees";
  if (!is_0_or_more(in.slack) || in.slack > 0.5 * std::numbers::pi - 1.0)
    return "the slack is not within 0 and 0.57, which is half a circle";
  if (!is_0_or_more(in.feed.si()) || !is_0_or_more(in.count.si()) || !is_0_or_more(in.strip.si()) ||
      !is_0_or_more(in.least_out.si()))
    return "a time, a strip or the line that stays out is below 0";
  return {};
}

// Every number is one, and the fly is no further from the rod than there is line.
bool is_sound(const CastRow& row, const Chain<Alone>& chain) {
  constexpr double kOver = 0.05;  // m
  for (const double number :
       {row.fly_depth.si(), row.tip_depth.si(), row.bearing.si(), row.over_ground.si(), row.through_water.si()}) {
    if (!std::isfinite(number)) return false;
  }
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
    if (!is_sound(now, run.chain())) return std::nullopt;
    cast.rows.push_back(now);
    cast.deepest_fly = std::max(cast.deepest_fly, now.fly_depth);
  }
  cast.end_fly = cast.rows.back().fly_depth;
  return cast;
}

}  // namespace

std::string fault_of(const CastCase& in) {
  if (in.parts.empty()) return "the line has no parts";
  for (const LinePart& part : in.parts) {
    if (std::string fault = fault_of(part); !fault.empty()) return fault;
  }
  if (!is_above_0(in.depth.si())) return "the water has no depth";
  if (!is_0_or_more(in.surface_speed.si())) return "the water's speed is below 0";
  if (!std::isfinite(in.boat.si())) return "the boat's speed is not a number";
  if (!std::isfinite(in.fly.weight_in_water.si()) || !is_0_or_more(in.fly.towed_drag_area.si()) ||
      !std::isfinite(in.fly.sink_rate.si()))
    return "the fly's weight, sink rate or drag area is not a number";
  if (!is_0_or_more(in.tangential_drag)) return "the tangential drag coefficient is below 0";
  return fault_of_handling(in);
}

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
