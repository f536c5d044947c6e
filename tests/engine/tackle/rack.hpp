#pragma once
// An invented rack for tests: five rods, every kind of line but a mono rig, flies for every method.
#include "engine/tackle/tackle.hpp"

namespace floatwright::rack {

inline Line line(std::string id, std::string on_rod, std::string code, LineKind kind, int number) {
  Line made;
  made.id = std::move(id);
  made.on_rod = std::move(on_rod);
  made.code = std::move(code);
  made.kind = kind;
  made.line_number = number;
  return made;
}

inline Line tip_line(std::string id, LineKind kind, double feet_long, double inches_a_second) {
  Line made = line(std::move(id), "six", "WF-6-F/S", kind, 6);
  made.spare_spool = true;
  made.tip_length = feet(feet_long);
  made.sink_rate = inches_per_second(inches_a_second);
  return made;
}

enum : std::size_t { kTip5, kTip7, kTip3, kFull, kFloating, kNymphTaper, kDoubleTaper, kSinkingLeader, kLooped, kThin };
enum : std::size_t { kWeighted, kPlain, kNymph, kHeavyNymph, kDry };

inline Tackle tackle() {
  Tackle t;
  t.rods = {{"six", "square", 6, feet(9)},
            {"five", "triangle", 5, feet(9)},
            {"seven", "diamond", 7, feet(9.5)},
            {"thin", "cross", 4, feet(10)}};
  Line full = line("full", "seven", "WF-7-S", LineKind::FullSinking, 7);
  full.sink_rate = inches_per_second(3);
  full.spare_spool = true;
  Line looped = line("looped", "seven", "WF-7-F", LineKind::LoopedHead, 7);
  looped.head_weight = grains(240), looped.least_tip = grains(60), looped.most_tip = grains(110);
  Line five = line("double", "five", "DT-5-F", LineKind::DoubleTaper, 5);
  five.spare_spool = true;
  Line leader = tip_line("leader", LineKind::FloatingWithSinkingLeader, 10, 4);
  Line floating = line("floating", "six", "WF-6-F", LineKind::Floating, 6);
  t.lines = {tip_line("tip5", LineKind::SinkingTip, 12.5, 5),
             tip_line("tip7", LineKind::SinkingTip, 12.5, 7),
             tip_line("tip3", LineKind::SinkingTip, 12.5, 3),
             full,
             floating,
             line("nymph", "five", "WF-5-F", LineKind::NymphTaper, 5),
             five,
             leader,
             looped,
             line("thin", "thin", "L-4-F", LineKind::ThinNymphLine, 4)};
  t.tips = {{"light", feet(10), inches_per_second(3), grains(70)},
            {"heavy", feet(10), inches_per_second(7), grains(140)}};
  using enum Method;
  t.flies = {{"weighted", "weighted streamer", {Swing, Strip}, grams(0.55), inches_per_second(5), "6"},
             {"plain", "unweighted streamer", {Swing, Strip}, grams(0.20), inches_per_second(1.5), "6"},
             {"nymph", "small bead nymph", {Indicator, TightLine}, grams(0.20), inches_per_second(5), "16"},
             {"heavy", "heavy nymph", {Indicator, TightLine}, grams(0.50), inches_per_second(9), "8"},
             {"dry", "mayfly dry", {Dry}, grams(0.04), Speed{}, "16"}};
  t.shot = {grams(0.2), grams(0.4)};
  return t;
}

}  // namespace floatwright::rack
