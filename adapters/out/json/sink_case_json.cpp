#include "adapters/out/json/sink_case_json.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "adapters/out/json/plan_values.hpp"

namespace floatwright {
namespace {

Json finite(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json head(const char* kind) { return {{"schema_version", 1}, {"kind", kind}}; }

// The row of an instant; rows stand even in time.
const CastRow* row_at(const SimulatedCast& cast, double t) {
  const auto row = std::ranges::find_if(cast.rows, [&](const CastRow& r) { return std::abs(r.t.si() - t) < 1e-6; });
  return row == cast.rows.end() ? nullptr : &*row;
}

Json depths_at(const SimulatedCast& cast, Length CastRow::*depth) {
  Json object = Json::object();
  for (const int t : {2, 4, 6}) {
    const CastRow* row = row_at(cast, t);
    object[std::to_string(t)] = row == nullptr ? Json(nullptr) : finite((row->*depth).si());
  }
  return object;
}

}  // namespace

std::string steady_json(const SteadyShape& shape) {
  Json document = head("steady_line");
  document["fly_depth_m"] = finite(shape.fly_depth.si());
  document["tip_depth_m"] = finite(shape.tip_depth.si());
  document["butt_depth_m"] = finite(shape.butt_depth.si());
  document["angle_at_surface_deg"] = finite(in_degrees(shape.at_surface));
  document["tension_n"] = finite(shape.tension.si());
  document["on_the_bed"] = shape.on_the_bed;
  document["shape"] = Json::array();
  for (const auto& point : shape.points)
    document["shape"].push_back({finite(point.along.si()), finite(point.depth.si())});
  return document_text(document);
}

std::string cast_json(const SimulatedCast& cast) {
  Json document = head("simulated_cast");
  document["deepest_fly_m"] = finite(cast.deepest_fly.si());
  document["end_fly_m"] = finite(cast.end_fly.si());
  document["tip_depth_at_s"] = depths_at(cast, &CastRow::tip_depth);
  document["fly_depth_at_s"] = depths_at(cast, &CastRow::fly_depth);
  document["path"] = Json::array();
  for (const CastRow& row : cast.rows)
    document["path"].push_back({{"t_s", finite(std::round(row.t.si() * 10.0) / 10.0)},
                                {"tip_depth_m", finite(row.tip_depth.si())},
                                {"fly_depth_m", finite(row.fly_depth.si())},
                                {"bearing_deg", finite(in_degrees(row.bearing))}});
  return document_text(document);
}

}  // namespace floatwright
