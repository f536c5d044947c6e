#include "engine/sinking/case_faults.hpp"

#include <initializer_list>
#include <limits>
#include <numbers>

namespace floatwright {
namespace {

constexpr double kLongest = 1e4, kThickest = 1.0;      // m
constexpr double kDensest = 3e4;                       // kg/m3
constexpr double kFastest = 20.0, kFastestSink = 5.0;  // m/s
constexpr double kHeaviest = 1e6;                      // N
constexpr double kWidest = 1e6;                        // m2
constexpr std::size_t kMostParts = 1000;

// A value that should be within its limits, and what to say where it is not, or is no number.
struct Check {
  double value, low, high;
  const char* under;
  const char* over;
};

std::string first_fault(std::initializer_list<Check> checks) {
  for (const Check& check : checks) {
    if (!(check.value >= check.low)) return check.under;
    if (!(check.value <= check.high)) return check.over;
  }
  return {};
}

constexpr double kSomething = 1e-18;  // the least that is not nothing, in any unit

std::string fault_of(const LinePart& part, double densest) {
  const bool rated = part.sink_rate_butt || part.sink_rate_end;
  const double butt = part.sink_rate_butt ? part.sink_rate_butt->si() : 0.0;  // m/s
  const double end = part.sink_rate_end ? part.sink_rate_end->si() : 0.0;     // m/s
  const double density = rated ? kSomething : part.density.si();              // kg/m3
  const char* rate = "a part's sink rate is not a number of metres a second up to 5";
  return first_fault({
      {part.length.si(), kSomething, kLongest, "a part of the line has no length",
       "a part of the line is over 10 km long"},
      {part.diameter.si(), kSomething, kThickest, "a part of the line has no diameter",
       "a part of the line is over 1 m thick"},
      {butt, -kFastestSink, kFastestSink, rate, rate},
      {end, -kFastestSink, kFastestSink, rate, rate},
      {density, kSomething, densest, "a part of the line has neither a sink rate nor a density",
       "a part of the line is denser than any metal"},
  });
}

// What is the same in every case: the line, the fly and the water.
template <class Case>
std::string fault_of_line_in_water(const Case& in, double densest) {
  if (in.parts.empty()) return "the line has no parts";
  if (in.parts.size() > kMostParts) return "the line has more than 1,000 parts";
  for (const LinePart& part : in.parts) {
    if (std::string fault = fault_of(part, densest); !fault.empty()) return fault;
  }
  const char* weight = "the fly's weight is not a number of newtons";
  const char* exponent = "the profile's exponent is not a number from 0 to 3";
  const char* roughness = "the bed's roughness is below 0, or no number";
  const char* temperature = "the water's temperature is not a number from -5 to 60 C";
  return first_fault({
      {in.depth.si(), kSomething, kLongest, "the water has no depth", "the water is over 10 km deep"},
      {in_metres_per_second(in.surface_speed), 0.0, kFastest, "the water's speed is below 0",
       "the water's speed is over 20 m/s"},
      {in.profile.exponent, 0.0, 3.0, exponent, exponent},
      {in.profile.roughness.si(), 0.0, kLongest, roughness, roughness},
      {in_celsius(in.temperature), -5.0, 60.0, temperature, temperature},
      {in.fly.weight_in_water.si(), -kHeaviest, kHeaviest, weight, weight},
      {in.fly.towed_drag_area.si(), 0.0, kWidest, "the fly's drag area is below 0",
       "the fly's drag area is over 1 km2"},
      {in.tangential_drag, 0.0, 10.0, "the drag along the line is below 0",
       "the drag coefficient along the line is over 10"},
  });
}

std::string fault_of_handling(const CastCase& in) {
  constexpr double kAny = std::numeric_limits<double>::max();
  const char* bearing = "the bearing is not within 0 to 180 degrees";
  const char* slack = "the slack is not within 0 and 0.57, which is half a circle";
  const char* boat = "the boat's speed is not a number of metres a second up to 20";
  const char* sinks = "the fly's sink rate is not a number of metres a second up to 5";
  const char* time = "a time, a strip or the line that stays out is below 0";
  return first_fault({
      {in.line_out.si(), kSomething, kLongest, "no line is out", "over 10 km of line is out"},
      {(in.parts.back().length - in.line_out).si(), 0.0, kLongest, "more line is out than the body is long",
       "a part of the line is over 10 km long"},
      {in.fly.sink_rate.si(), -kFastestSink, kFastestSink, sinks, sinks},
      {in.boat.si(), -kFastest, kFastest, boat, boat},
      {in.bearing.si(), 0.0, std::numbers::pi, bearing, bearing},
      {in.slack, 0.0, 0.5 * std::numbers::pi - 1.0, slack, slack},
      {in.feed.si(), 0.0, kAny, time, time},
      {in.count.si(), 0.0, kAny, time, time},
      {in.strip.si(), 0.0, kAny, time, time},
      {in.least_out.si(), 0.0, kAny, time, time},
  });
}

}  // namespace

std::string fault_of(const SteadyCase& in) {
  if (std::string fault = fault_of_line_in_water(in, kDensest); !fault.empty()) return fault;
  const char* velocity = "the line's velocity is not a number of metres a second up to 20";
  return first_fault({{in.line_along.si(), -kFastest, kFastest, velocity, velocity},
                      {in.line_across.si(), -kFastest, kFastest, velocity, velocity}});
}

std::string fault_of(const CastCase& in) {
  if (std::string fault = fault_of_line_in_water(in, std::numeric_limits<double>::max()); !fault.empty()) return fault;
  return fault_of_handling(in);
}

}  // namespace floatwright
