#include "adapters/out/json/plan_values.hpp"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

namespace floatwright {

Json number(JsonPlan& out, double value, const char* what) {
  if (std::isfinite(value)) return value;
  out.doubts.push_back(std::string("a value of ") + what + " was no number and was left out");
  return nullptr;
}

template <class T>
Json band(JsonPlan& out, const Band<T>& b, const char* what) {
  return {{"low", number(out, si(b.low), what)},
          {"best", number(out, si(b.best), what)},
          {"high", number(out, si(b.high), what)}};
}
template <class T>
Json band(JsonPlan& out, const Measured<Band<T>>& b, const char* what) {
  return b ? band(out, *b, what) : Json(nullptr);
}
template <class T>
Json maybe(JsonPlan& out, const std::optional<T>& value, const char* what) {
  return value ? number(out, si(*value), what) : Json(nullptr);
}
template <class T>
Json maybe(JsonPlan& out, const Measured<T>& value, const char* what) {
  return value ? number(out, si(*value), what) : Json(nullptr);
}

template Json band(JsonPlan&, const Band<Length>&, const char*);
template Json band(JsonPlan&, const Measured<Band<Length>>&, const char*);
template Json band(JsonPlan&, const Measured<Band<Discharge>>&, const char*);
template Json band(JsonPlan&, const Measured<Band<Temperature>>&, const char*);
template Json band(JsonPlan&, const Measured<Band<SurfaceSpeed>>&, const char*);
template Json band(JsonPlan&, const Measured<Band<MeanSpeed>>&, const char*);
template Json maybe(JsonPlan&, const std::optional<Length>&, const char*);
template Json maybe(JsonPlan&, const std::optional<Discharge>&, const char*);
template Json maybe(JsonPlan&, const std::optional<Temperature>&, const char*);
template Json maybe(JsonPlan&, const std::optional<Duration>&, const char*);
template Json maybe(JsonPlan&, const Measured<Discharge>&, const char*);

std::string day_text(std::chrono::year_month_day day) {
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                     static_cast<unsigned>(day.day()));
}

std::string utc(Instant t) {
  const auto midnight = std::chrono::floor<std::chrono::days>(t);
  const auto since = (t - midnight).count();
  return fmt::format("{}T{:02}:{:02}:{:02}Z", day_text(std::chrono::year_month_day{midnight}), since / 3600,
                     since / 60 % 60, since % 60);
}

Json logged_json(JsonPlan& out, const Correction& depth, const Correction& speed) {
  if (depth.entries + speed.entries == 0) return nullptr;
  return {{"depth_factor", number(out, std::exp(depth.ln), "depth_factor")},
          {"depth_entries", depth.entries},
          {"surface_speed_factor", number(out, std::exp(speed.ln), "surface_speed_factor")},
          {"surface_speed_entries", speed.entries}};
}

void put_instant(JsonPlan& out, Json& object, const std::string& key, Instant t) {
  object[key] = utc(t);
  object[key + "_local"] = out.clock.written(t);
}

void put_instant(JsonPlan& out, Json& object, const std::string& key, const std::optional<Instant>& t) {
  object[key] = t ? Json(utc(*t)) : Json(nullptr);
  object[key + "_local"] = t ? Json(out.clock.written(*t)) : Json(nullptr);
}

}  // namespace floatwright
