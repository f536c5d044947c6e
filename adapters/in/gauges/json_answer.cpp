#include "adapters/in/gauges/json_answer.hpp"

#include <fmt/format.h>

#include "adapters/in/gauges/service_error.hpp"

namespace floatwright {

std::optional<Failure> why_no_list(const JsonValue& list, std::string_view pointer, std::string_view bytes,
                                   const std::string& where) {
  if (list.is(JsonValue::Kind::List)) return std::nullopt;
  const auto error = list.is(JsonValue::Kind::Absent) ? service_error(bytes) : std::nullopt;
  if (error) return Failure{fmt::format("{}: the service answered with an error, {}", where, *error), kExitBadData};
  return Failure{fmt::format("{}: no list of readings at {}", where, pointer), kExitBadData};
}

GaugeSeries series_head(std::string station, std::string series_id, Variable variable, const std::string& where) {
  GaugeSeries out;
  out.station = std::move(station);
  out.series_id = std::move(series_id);
  out.variable = variable;
  out.source = where;
  return out;
}

}  // namespace floatwright
