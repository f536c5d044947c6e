#pragma once
// Paths and tackle made by hand, so that what they are worth can be worked out on paper.
#include "engine/choice/choose.hpp"
#include "engine/sinking/cast_path.hpp"

namespace floatwright {

// A fly that stays at one depth and pace for so long, the tip at its own depth, far from hanging down.
inline CastPath steady_path(Duration length, Length fly, Length tip, Speed pace) {
  CastPath path;
  for (int i = 0; i <= 32; ++i) {
    CastSample sample;
    sample.t = (i / 32.0) * length;
    sample.fly_depth = fly;
    sample.tip_depth = tip;
    sample.over_ground = pace;
    sample.through_water = pace;
    sample.bearing = degrees(90);
    path.samples.push_back(sample);
  }
  path.time_to_hang_down = length;
  path.leader = metres(1);
  return path;
}

inline Line line_on(const char* id, const char* rod, LineKind kind, double tip_m = 0, double rate_m_s = 0) {
  Line line;
  line.id = id;
  line.on_rod = rod;
  line.code = "WF-6-F";
  line.kind = kind;
  line.line_number = 6;
  if (tip_m > 0) line.tip_length = metres(tip_m);
  if (rate_m_s > 0) line.sink_rate = metres_per_second(rate_m_s);
  return line;
}

inline FlyClass fly_class(const char* id, std::vector<Method> uses, double grams_of_it, double rate_m_s) {
  FlyClass fly;
  fly.id = id;
  fly.name = id;
  fly.uses = std::move(uses);
  fly.mass = grams(grams_of_it);
  fly.sink_rate = metres_per_second(rate_m_s);
  return fly;
}

// Two rods: the six with a short slow tip, a long fast tip and a full sinking line, the five with floating lines.
inline Tackle small_box() {
  Tackle tackle;
  tackle.rods = {{"six", "square", 6, feet(9)}, {"five", "circle", 6, feet(9)}};
  tackle.lines = {line_on("short", "six", LineKind::SinkingTip, 3.0, 0.10),
                  line_on("long", "six", LineKind::SinkingTip, 4.5, 0.15),
                  line_on("full", "six", LineKind::FullSinking, 0, 0.08),
                  line_on("nymph", "five", LineKind::NymphTaper), line_on("floater", "five", LineKind::Floating)};
  tackle.flies = {fly_class("plain", {Method::Swing, Method::Strip}, 0.2, 0.04),
                  fly_class("weighted", {Method::Swing, Method::Strip}, 0.5, 0.12),
                  fly_class("nymph", {Method::Indicator}, 0.3, 0.15), fly_class("dry", {Method::Dry}, 0.05, 0.0)};
  return tackle;
}

inline ScoredRig scored(std::size_t line, std::size_t fly, Method method, double seconds_a_minute, double worth,
                        Platform platform = Platform::Anchored) {
  ScoredRig rig;
  rig.rig.line = line;
  rig.rig.fly = fly;
  rig.technique.method = method;
  rig.technique.platform = platform;
  rig.seconds = seconds_a_minute;
  rig.efficiency = seconds_a_minute / 60.0;
  rig.worth = worth;
  return rig;
}

}  // namespace floatwright
