#include "engine/wording/say_reading.hpp"

#include <fmt/format.h>

#include "engine/readings/names.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

// A stage is read to the hundredth at the gauge and is the gauge's own number, so it is not rounded to half a foot.
std::string say_stage(double metres_over_zero, UnitSystem units) {
  const Stage stage = stage_metres(metres_over_zero);
  return units == UnitSystem::Us ? fmt::format("{:.2f} ft", in_feet(stage)) : fmt::format("{:.2f} m", in_metres(stage));
}

}  // namespace

std::string say(Variable variable) {
  switch (variable) {
    case Variable::Flow:
      return "flow";
    case Variable::GaugeHeight:
      return "gauge height";
    case Variable::WaterTemperature:
      return "water";
    case Variable::Clarity:
      return "turbidity";
    case Variable::AirTemperature:
      return "air";
    case Variable::Rain:
      return "rain";
    case Variable::Wind:
      return "wind";
  }
  return "reading";
}

// As the JSON plan calls them, but where a person wants plainer words.
std::string say(Mark mark) {
  switch (mark) {
    case Mark::Equipment:
      return "equipment trouble";
    case Mark::Stale:
      return "OLD";
    case Mark::SuspectSpike:
      return "doubtful jump";
    case Mark::Unknown:
      return "an unknown mark";
    default:
      return std::string(word_for(mark));
  }
}

std::string say_value(const NewestReading& reading, UnitSystem units) {
  if (!reading.si) return "not read: " + without_stop(typed(reading.si.why_absent()));
  switch (reading.variable) {
    case Variable::Flow:
      return say_flow(cubic_metres_per_second(*reading.si), units);
    case Variable::GaugeHeight:
      return say_stage(*reading.si, units);
    case Variable::WaterTemperature:
      return say_temperature(celsius(*reading.si), units);
    case Variable::Clarity:
      return fmt::format("{:.0f} FNU", *reading.si);
    case Variable::AirTemperature:
      return say_temperature(celsius(*reading.si), units);
    case Variable::Rain:
      return units == UnitSystem::Us ? fmt::format("{:.2f} in/h", *reading.si / (1000.0 * kMetresPerInch))
                                     : fmt::format("{:.1f} mm/h", *reading.si);
    case Variable::Wind:
      return units == UnitSystem::Us ? fmt::format("{:.0f} mph", in_miles_per_hour(metres_per_second(*reading.si)))
                                     : fmt::format("{:.0f} m/s", *reading.si);
  }
  return "?";
}

std::string say_when(const NewestReading& reading, Instant made_at, std::chrono::year_month_day day,
                     const LocalClock& clock) {
  std::string words = fmt::format("read {}, {} old", clock.minute_seen_from(reading.time, day),
                                  say_age(duration(made_at - reading.time)));
  for (const Mark mark : reading.marks) words += ", " + say(mark);
  return words;
}

}  // namespace floatwright
