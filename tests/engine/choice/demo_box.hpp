#pragma once
// A guide's box of a dozen lines and eight classes of fly, and one run of water: what the choice meets in earnest.
#include <cmath>

#include "tests/engine/choice/hand_made.hpp"

namespace floatwright {

inline Tackle guides_box() {
  const auto in_s = [](double rate) { return rate * kMetresPerInch; };
  const auto ft = [](double length) { return length * kMetresPerFoot; };
  Tackle box;
  box.rods = {{"six", "square", 6, feet(9)},
              {"five", "triangle", 6, feet(9)},
              {"dry", "circle", 6, feet(9)},
              {"seven", "diamond", 7, feet(9.5)},
              {"thin", "cross", 6, feet(10)}};
  box.lines = {line_on("six_tip_5", "six", LineKind::SinkingTip, ft(12.5), in_s(5)),
               line_on("six_tip_4", "six", LineKind::SinkingTip, ft(10), in_s(4)),
               line_on("six_clear", "six", LineKind::ClearTip, ft(12), in_s(1.5)),
               line_on("five_nymph", "five", LineKind::NymphTaper),
               line_on("five_leader", "five", LineKind::FloatingWithSinkingLeader, ft(10), in_s(4)),
               line_on("dry_taper", "dry", LineKind::DoubleTaper),
               line_on("dry_floater", "dry", LineKind::Floating),
               line_on("seven_tip_6", "seven", LineKind::SinkingTip, ft(15), in_s(6)),
               line_on("seven_full", "seven", LineKind::FullSinking, 0, in_s(3)),
               line_on("seven_looped", "seven", LineKind::LoopedHead),
               line_on("seven_head", "seven", LineKind::ShootingHead),
               line_on("thin_line", "thin", LineKind::ThinNymphLine)};
  box.lines[9].head_weight = grains(240);
  box.lines[9].least_tip = grains(60);
  box.lines[9].most_tip = grains(110);
  box.tips = {{"tip_10_3", feet(10), inches_per_second(3), grains(70)},
              {"tip_10_7", feet(10), inches_per_second(7), grains(100)}};
  box.flies = {fly_class("streamer_weighted", {Method::Swing, Method::Strip}, 0.55, in_s(5)),
               fly_class("streamer_plain", {Method::Swing, Method::Strip}, 0.20, in_s(1.5)),
               fly_class("streamer_large", {Method::Strip}, 0.80, in_s(4)),
               fly_class("soft_hackle", {Method::Swing}, 0.05, in_s(0.8)),
               fly_class("nymph_light", {Method::Indicator, Method::TightLine}, 0.20, in_s(5)),
               fly_class("nymph_heavy", {Method::Indicator, Method::TightLine}, 0.50, in_s(9)),
               fly_class("dry_small", {Method::Dry}, 0.04, 0.0),
               fly_class("dry_large", {Method::Dry}, 0.12, 0.0)};
  box.shot = {grams(0.2), grams(0.4)};
  return box;
}

// A lane that rises and quickens with the flow, noted at 50 m3/s as 1.4 m deep and 1.1 m/s fast.
inline WaterToFish run_at(double flow_m3_s) {
  const auto depth = [](double q) { return metres(1.4 * std::pow(q / 50, 0.4)); };
  const auto speed = [](double q) { return surface_metres_per_second(1.1 * std::pow(q / 50, 0.34)); };
  WaterToFish water;
  water.type = WaterType::Run;
  water.bed = Bed::Gravel;
  water.lane.depth = {depth(0.9 * flow_m3_s), depth(flow_m3_s), depth(1.12 * flow_m3_s)};
  water.lane.surface_speed = {speed(0.9 * flow_m3_s), speed(flow_m3_s), speed(1.12 * flow_m3_s)};
  water.lane.noted_at = cubic_metres_per_second(50);
  water.boat_lane = water.lane.surface_speed;
  water.temperature = celsius(11);
  water.clarity = fnu(3);
  water.platforms = {Platform::Drifting, Platform::Held, Platform::Anchored};
  return water;
}

inline Preferences guides_preferences() {
  Preferences preferences;
  preferences.methods = {{Method::Swing, 1.0}, {Method::Strip, 1.0}, {Method::Dry, 0.9}, {Method::Indicator, 0.7}};
  preferences.anglers = {{"guest", feet(40), false}};
  return preferences;
}

}  // namespace floatwright
