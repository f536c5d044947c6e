#include "adapters/in/files/sink_case_file.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "adapters/in/files/quantities.hpp"
#include "adapters/in/files/sink_case_parts.hpp"
#include "adapters/in/files/whole_text.hpp"
#include "adapters/result.hpp"
#include "engine/river/names.hpp"
#include "engine/sinking/drift_limits.hpp"

namespace floatwright {
namespace {

constexpr Range<Speed> kLineVelocity{metres_per_second(-10.0), metres_per_second(10.0)};
constexpr Length kMostCast = metres(300.0);
constexpr double kMostSlack = 0.57;  // half a circle of line
constexpr WordTable<SurfaceEnd, 2> kHoldWords{
    {{SurfaceEnd::ButtAtSurface, "butt_at_surface"}, {SurfaceEnd::BodyPulledUnder, "body_pulled_under"}}};

// Steady or cast, the same line in the same water.
template <class Case>
Case of_line_and_water(const std::vector<LinePart>& parts, const TowedFly& fly, const CaseWater& water,
                       double tangential_drag) {
  Case made;
  made.parts = parts;
  made.fly = fly;
  made.depth = water.depth;
  made.surface_speed = water.surface_speed;
  made.profile = water.profile;
  made.temperature = water.temperature;
  made.tangential_drag = tangential_drag;
  return made;
}

void read_hold(TypedObject& in, SteadyCase& steady) {
  steady.end =
      meaning_of(in, "hold", in.text("hold", Need::Optional), kHoldWords).value_or(SurfaceEnd::BodyPulledUnder);
  const auto velocity = read_speeds(in, "line_velocity", kLineVelocity);
  if (!in.has_any_spelling("line_velocity")) return;
  if (velocity.size() == 2) {
    steady.line_along = velocity[0];
    steady.line_across = velocity[1];
  } else {
    in.tell("line_velocity_m_s", "a velocity that is not two numbers", "along and across the stream",
            "Write [ 0, 0 ].");
  }
}

// The boat's speed over the ground: what its platform lets go of the surface's speed.
Speed boat_speed(Platform platform, SurfaceSpeed surface) {
  return metres_per_second((1.0 - hold(platform, DriftLimits{})) * in_metres_per_second(surface));
}

void read_platform(TypedObject& root, TypedObject& in, CastCase& cast) {
  TypedObject& where = root.has("platform") ? root : in;
  if (root.has("platform") && in.has("platform"))
    in.tell("platform", "a second \"platform\"", "one, in the cast or beside it", "Keep one of the two.");
  const std::string above = root.text("platform", Need::Optional), inside = in.text("platform", Need::Optional);
  const auto platform = meaning_of(where, "platform", above.empty() ? inside : above, kPlatformWords);
  cast.boat = boat_speed(platform.value_or(Platform::Anchored), cast.surface_speed);
}

// The uppermost part comes off a reel that holds enough: it is as long as what lies out and what is fed.
void read_cast(TypedObject& root, TypedObject& in, CastCase& cast) {
  read_platform(root, in, cast);
  cast.bearing = read_angle(in, "bearing", {Angle{}, degrees(180.0)}, Need::Optional).value_or(cast.bearing);
  cast.slack = in.plain_number("slack", 0.0, kMostSlack, Need::Optional).value_or(cast.slack);
  cast.line_out = read_length(in, "line_out", {metres(0.01), metres(200.0)}, Need::Required).value_or(Length{});
  cast.feed = read_seconds(in, "feed", {Duration{}, seconds(60.0)}, Need::Optional).value_or(Duration{});
  cast.count = read_seconds(in, "count", {Duration{}, minutes(5.0)}, Need::Optional).value_or(Duration{});
  cast.strip = read_sink_rate(in, "strip", {Speed{}, metres_per_second(3.0)}, Need::Optional).value_or(Speed{});
  cast.least_out = read_length(in, "least_out", {Length{}, metres(200.0)}, Need::Optional).value_or(cast.least_out);
  in.finish();
  if (cast.parts.empty()) return;
  Length below;
  for (std::size_t i = 0; i + 1 < cast.parts.size(); ++i) below = below + cast.parts[i].length;
  if (below > kMostCast)
    root.tell("parts", fmt::format("{:.0f} m of line below the uppermost part", below.si()), "at most 300 m in a cast",
              "Hold it steady, or make it shorter: a cast is simulated in short pieces.");
  const Length fed = metres(in_metres_per_second(cast.surface_speed) * cast.feed.si());
  cast.parts.back().length = std::max(cast.parts.back().length, cast.line_out + fed);
}

// A cast moves its own line; one said to stand still says nothing else.
void tell_of_both(TypedObject& in, const SteadyCase& held) {
  if (in.has("hold"))
    in.tell("hold", "\"hold\" beside \"cast\"", "one of the two", "Take one away: held it is steady, cast it moves.");
  if (held.line_along != Speed{} || held.line_across != Speed{})
    in.tell("", "a line velocity beside \"cast\"", "\"platform\", which says how the rod moves",
            "Take the velocity away, or write [ 0, 0 ].");
}

}  // namespace

SinkCase read_sink_case(const LocatedJson& root, FileReading& reading) {
  if (root.kind != JsonKind::Object) {
    reading.problems.push_back({reading.file, root.line, "", describe(root), "an object in { }",
                                "Put { at the beginning of the file and } at its end."});
    return SteadyCase{};
  }
  TypedObject in(root, "", "", reading);
  (void)in.whole_number("schema_version", 1, 1, Need::Optional);
  CaseWater water;
  if (auto object = in.object("water", Need::Required)) water = read_case_water(*object);
  const auto parts = read_case_parts(in);
  TowedFly fly;
  if (auto object = in.object("fly", Need::Required)) fly = read_case_fly(*object, water.temperature);
  const double tangential = in.plain_number("tangential_drag_coefficient", 0.0, 1.0, Need::Optional).value_or(0.012);
  SteadyCase steady = of_line_and_water<SteadyCase>(parts, fly, water, tangential);
  CastCase cast = of_line_and_water<CastCase>(parts, fly, water, tangential);
  auto object = in.object("cast", Need::Optional);
  if (object) read_cast(in, *object, cast);
  read_hold(in, steady);
  if (object) tell_of_both(in, steady);
  if (!object && in.has("platform") && !in.has("cast"))
    in.tell("platform", "\"platform\" without \"cast\"", "\"line_velocity_m_s\" in a steady case",
            "Write the boat's velocity there, or add \"cast\".");
  in.finish();
  if (object) return cast;
  return steady;
}

LoadedSinkCase load_sink_case(const std::filesystem::path& file) {
  const auto text = read_whole_text(file);
  if (!text)
    return {
        std::nullopt,
        {{file.string(), 0, "", text.error().what, "a file with the case", "Write it, or name another with --case."}},
        kExitNoInput};
  FileReading reading{file.string(), {}, {}};
  ParsedJson parsed = parse_located_json(reading.file, *text);
  reading.problems = std::move(parsed.problems);
  LoadedSinkCase loaded;
  if (parsed.root) loaded.sink_case = read_sink_case(*parsed.root, reading);
  std::ranges::stable_sort(reading.problems, {}, &Problem::line);
  if (!reading.problems.empty()) loaded = {std::nullopt, {}, kExitConfiguration};
  loaded.problems = std::move(reading.problems);
  return loaded;
}

}  // namespace floatwright
