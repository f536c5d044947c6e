#pragma once
// What the owner has, as written in tackle.json (in the file's order; index i is "/lines/i" there): rods, the lines on
// their spools, tips for looped heads, fly classes, shot. Lines are stated by taper and function code (WF-6-F, the
// American fly line standard), kind, grains, length and sink rate; no makers.
#include <optional>
#include <string>
#include <vector>

#include "engine/units/unit.hpp"

namespace floatwright {

enum class LineKind {
  Floating,
  NymphTaper,
  DoubleTaper,
  ShootingHead,
  FloatingWithSinkingLeader,
  SinkingTip,
  LoopedHead,
  ClearTip,
  FullSinking,
  ThinNymphLine,
  MonoRig
};

// Without weight or taper to throw a fly with.
constexpr bool is_thin(LineKind kind) { return kind == LineKind::ThinNymphLine || kind == LineKind::MonoRig; }

enum class Method { Swing, Strip, Indicator, TightLine, Dry };
inline constexpr std::size_t kMethods = 5;

struct Rod {
  std::string id;
  std::string mark;  // a shape on the butt, as typed: "square", "triangle", "circle", ...
  int line_number = 0;
  Length length;
};

struct Line {
  std::string id;
  std::string on_rod;  // rod id; empty: not on a rod, out of the choice
  bool spare_spool = false;
  std::string code;  // "WF-6-F", "WF-6-F/S"
  LineKind kind = LineKind::Floating;
  int line_number = 0;                                 // from the code
  std::optional<Length> tip_length;                    // sinking part of an integrated tip, clear tip or sinking leader
  std::optional<Speed> sink_rate;                      // still water, nominal; mean over the part
  std::optional<Speed> sink_rate_butt, sink_rate_end;  // density compensated: at the butt and at the fly's end
  std::optional<Mass> head_weight;                     // looped head: what the head weighs
  std::optional<Mass> least_tip, most_tip;             // looped head: tips it carries
  std::optional<Mass> first_30_ft;                     // else by its number from the standard
  std::optional<LinearDensity> sinking_weight;         // of the sinking part
  std::optional<Length> leader;                        // when the owner always uses the same
};

struct LoopedTip {
  std::string id;
  Length length;
  Speed sink_rate;
  std::optional<Mass> weight;
};

struct FlyClass {
  std::string id;
  std::string name;  // "weighted streamer"
  std::vector<Method> uses;
  std::optional<Mass> mass;  // none: out of the choice
  Speed sink_rate;           // alone, in still water; 0 for a dry fly
  std::string size;
};

struct Tackle {
  std::vector<Rod> rods;
  std::vector<Line> lines;
  std::vector<LoopedTip> tips;
  std::vector<FlyClass> flies;
  std::vector<Mass> shot;  // split shot aboard, each size; used in sums for the indicator
};

// A rig: a line on its rod, the tip if looped, the fly, and shot when the method takes it. Indices into Tackle.
struct Rig {
  std::size_t line = 0;
  std::optional<std::size_t> tip;
  std::size_t fly = 0;
  Mass shot;
  friend bool operator==(const Rig&, const Rig&) = default;
};

// Sinking part of a rig: 0 m and 0 m/s for a floating line; the whole cast for a full sinking line (`whole_line`).
struct SinkingPart {
  Length length;
  Speed sink_rate, butt, end;  // mean; at the butt, at the fly's end (equal unless density compensated)
  bool whole_line = false;
};
// Of the rod that a rig's line is on; 9 ft where the tackle has none for it.
[[nodiscard]] Length rod_length(const Tackle& tackle, const Rig& rig);
[[nodiscard]] SinkingPart sinking_part(const Tackle& tackle, const Rig& rig);

// Default diameter of a sinking part by its rate (judgement; line.md): 1.2 mm to 3 in/s, 1.0 mm at 4 to 6, 0.9 from 7.
[[nodiscard]] Length default_diameter(Speed sink_rate);

// Mass of the first 30 ft by line number: American fly line standard (AFTMA 1961). Absent outside 1 to 15.
[[nodiscard]] std::optional<Mass> standard_mass(int line_number);

// A rig that cannot be: the sentence why (line two numbers over the rod, fly over 15 % of the line, tip the head cannot
// carry, an indicator on a sinking line, a thin line without weight). Empty optional when it can.
struct RigVerdict {
  std::optional<std::string> ruled_out;
  std::optional<std::string> warning;  // "hard to cast"
};
[[nodiscard]] RigVerdict rig_verdict(const Tackle& tackle, const Rig& rig, Method method);

// Every rig that can be for a method, by precedence: lines on rods x tips x flies used so (x shot for the indicator).
[[nodiscard]] std::vector<Rig> rigs_for(const Tackle& tackle, Method method);

}  // namespace floatwright
