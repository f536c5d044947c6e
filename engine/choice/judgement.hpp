#pragma once
// Every number of the choice that is ours and has no source, in one place, so that a guide can put his own in:
// config/judgement.json has the same keys, each with its sentence, and a test holds file and struct together.
// The members mirror that file, so they are plain numbers with the unit in the name; functions take and give
// quantities. Not ours, but kept here because they are used beside the rest: the capture distance's form (Hughes & Dill
// 1990) and the first three clarity shares (Barrett, Grossman & Rosenfeld 1992); both from memory.
#include <array>

#include "engine/choice/table.hpp"
#include "engine/sinking/drift_limits.hpp"

namespace floatwright {

// What a cast's drift is limited by is given to the room that computes casts (engine/choice/limits.hpp); the numbers
// shipped are there.
inline constexpr DriftLimits kShippedLimits{};

// By method and by bed; read through engine/choice/by_kind.hpp, where an unknown bed counts as cobble.
struct MethodNumbers {
  double swing, strip, indicator, tight_line, dry;
};
struct BedNumbers {
  double sand, gravel, cobble, boulder, wood;
};

// Where a holding fish takes a fly.
struct ZoneJudgement {
  double hold_height_m = 0.25;                       // z_hold: the lesser of this
  double hold_share_of_depth = 0.12;                 // and this share of the depth
  BedNumbers shelter{0.9, 0.8, 0.7, 0.5, 0.5};       // speed where the fish lies over speed of the open water there
  double focal_speed_m_s = 0.73;                     // V_f at its best temperature
  double least_reach_m = 0.15;                       // R is never less
  MethodNumbers reach_m{0.9, 0.9, 0.45, 0.45, 1.0};  // R0
  double full_share_of_reach = 0.5;                  // over the hold the fly counts fully within this share of R
  double near_bed_m = 0.03;                          // under this height a fly
  double near_bed_share = 0.2;                       // counts only so much
  double leaves_from = 1.0;                          // fish begin to leave water at this share of V_f
  double gone_at = 1.3;                              // and are gone at this one
  Table<7> reach_by_temperature{{{0, 0.35}, {4, 0.45}, {7, 0.70}, {10, 1}, {16, 1}, {19, 0.80}, {21, 0.60}}};
  Table<5> speed_by_temperature{{{0, 0.5}, {4, 0.6}, {10, 1}, {18, 1}, {22, 0.85}}};
  Table<4> reach_by_clarity{{{5, 1}, {15, 0.80}, {30, 0.45}, {60, 0.20}}};
};

// At what pace a fish takes it.
struct PaceJudgement {
  double swim_m_s = 0.60;       // swing and strip: full up to here
  double swim_fall_m_s = 0.30;  // then by exp(-((v - v_ok)/this)^2)
  Table<4> swim_by_temperature{{{4, 0.58}, {10, 1}, {18, 1}, {21, 0.67}}};
  double drag_half_m_s = 0.25;                                         // drifted nymphs: half at this drag
  double tight_line_drag_m_s = kShippedLimits.led_through_water.si();  // what a led line drags
  double hang_down_share = 0.3;                                        // a fly hanging below the rod
  double hang_down_deg = in_degrees(kShippedLimits.hang_down);         // that is, within this of downstream
  double hang_down_stay_s = kShippedLimits.hang_down_stay.si();        // and the cast ends so much later
};

// What a cast costs.
struct TimesJudgement {
  double cast_s = 6.0;
  double one_mend_s = 1.0, mend_and_feed_s = 3.0;
  double indicator_or_dry_mend_s = 1.0;
  double fast_sinking_s = 2.0, fast_sinking_from_m_s = 0.127;  // 5 in/s
  double tight_line_s = 3.0;                                   // in all
  double full_sinking_free_m = 5.0;                            // line beyond this is gathered before the next cast
  double full_sinking_gather_m_s = 1.0;
  double shooting_head_s = 3.0;
  double wrong_taper_s = 1.0;
  double longest_cast_s = kShippedLimits.longest_cast.si();
};

struct SnagJudgement {
  double within_m = 0.03;  // of the bed
  double cost_s = 30.0;    // a snag ends the cast
  BedNumbers rate_per_s{0.01, 0.03, 0.05, 0.10, 0.25};
};

// How long a line drifts before it drags.
struct MendsJudgement {
  double floating = kShippedLimits.floating_mends, sinking_leader = kShippedLimits.sinking_leader_mends,
         sinking_tip = kShippedLimits.sinking_tip_mends, shooting_head = kShippedLimits.shooting_head_mends,
         full_sinking = kShippedLimits.full_sinking_mends;  // mends a line allows
  double dry = kShippedLimits.dry_mends;
  double slack_m = kShippedLimits.slack.si();           // each mend's
  double drag_anchored = kShippedLimits.drag_anchored;  // speed at which line and fly part over the surface speed
  double drag_drifting = kShippedLimits.drag_drifting;
  double longest_drift_s = kShippedLimits.longest_indicator.si();  // indicator, from a drifting boat
  double longest_dry_s = kShippedLimits.longest_dry.si();
  double casts_of_drift = kShippedLimits.casts_of_drift;  // from a boat that does not drift: casts that drift past it
};

// Standard deviations in ln of a depth of fly.
struct ScatterJudgement {
  double tight = 0.25, mended = 0.30, drifted = 0.10;
  double of_speed = 0.9;  // how much of the scatter of speed is scatter of fly depth
  std::array<double, 5> members{-1.28, -0.52, 0.0, 0.52, 1.28};
};

struct BoatJudgement {
  double hold_drifting = kShippedLimits.hold_drifting, hold_held = kShippedLimits.hold_held,
         hold_anchored = kShippedLimits.hold_anchored;
  double most_pace = 2.0;        // k, boat over surface speed of the water fished
  double most_strip_pace = 1.3;  // over it nothing is stripped
  double most_wind_m_s = 8.94;   // 20 mph; over it the boat does not drift a line
};

struct TechniquesJudgement {
  std::array<double, 4> strip_count_s{0.0, 3.0, 6.0, 10.0};
  std::array<double, 2> strip_m_s{0.3, 0.6};
  double thin_line_cast_m = 9.0;  // a thin nymphing line or mono rig throws no farther
};

struct ChoiceJudgement {
  double tie = 0.10;                // within it the plainer tackle, or what is rigged
  double worth_changing = 0.15;     // so much more before a change is advised
  double least_seconds = 6.0;       // Z under this fishes nothing
  double least_efficiency = 0.10;   // E likewise
  double enough_efficiency = 0.50;  // E over this makes no other game of it
  double exactly_scored = 12;       // best techniques of each method that are computed in all cases
};

struct FlowJudgement {
  double steps_per_doubling = 8;
  double steps = 8;  // each way
  double least_of_noted = 0.4, most_of_noted = 2.5;
};

struct ChangesJudgement {
  double fly_min = 2, leader_min = 5, tip_min = 4, spool_min = 10;
};

// Printed bands of fly depth, as shares below and above.
struct BandsJudgement {
  double tight_below = 0.25, tight_above = 0.30;
  double mended_below = 0.35, mended_above = 0.40;
  double least_m = 0.1;
};

struct MethodSuits {
  double riffle, run, pool, tailout, bank, eddy, pocket;
  Table<5> by_temperature;
  Table<4> by_clarity;
  double low_light;
};
struct SuitsJudgement {
  // clang-format off
  MethodSuits swing     {.5, .9, .6,  1, .5, .3, .2,
                            {{{3, .5}, {7, .8}, {10, 1}, {14, 1}, {18, .9}}},
                            {{{5, 1}, {15, 1}, {30, .8}, {60, .5}}}, 1.1};
  MethodSuits strip     {.4, .7, .9, .6,  1, .8, .6,
                            {{{3, .5}, {7, .8}, {10, 1}, {14, 1}, {18, .8}}},
                            {{{5, 1}, {15, 1}, {30, .8}, {60, .5}}}, 1.2};
  MethodSuits indicator {.9,  1, .8, .7, .5, .8, .6,
                            {{{3, 1}, {7, 1}, {10, 1}, {14, 1}, {18, 1}}},
                            {{{5, 1}, {15, .9}, {30, .6}, {60, .3}}}, 1};
  MethodSuits tight_line{ 1, .7, .3, .4, .3, .4,  1,
                            {{{3, .9}, {7, 1}, {10, 1}, {14, 1}, {18, 1}}},
                            {{{5, 1}, {15, .9}, {30, .6}, {60, .3}}}, 1};
  MethodSuits dry       {.8, .6, .5, .9, .9, .8, .7,
                            {{{3, .05}, {7, .3}, {10, .8}, {14, 1}, {18, 1}}},
                            {{{5, 1}, {15, .6}, {30, .2}, {60, 0}}}, 1.1};
  // clang-format on
  double low_light_under_deg = 10.0;
  double hatch_dry = 2.0, hatch_others = 0.8;
  double windy_from_m_s = 6.71, windy_dry = 0.4;  // over 15 mph
  double cold_from_c = 8.0, cold_full_c = 5.0;
  struct Cold {
    double riffle = .3, run = .7, pool = 1, tailout = .7, bank = .6, eddy = 1, pocket = .3;
  } cold;
};

struct Judgement {
  ZoneJudgement zone;
  PaceJudgement pace;
  TimesJudgement times;
  SnagJudgement snag;
  MendsJudgement mends;
  ScatterJudgement scatter;
  BoatJudgement boat;
  TechniquesJudgement techniques;
  ChoiceJudgement choice;
  FlowJudgement flow;
  ChangesJudgement changes;
  BandsJudgement bands;
  SuitsJudgement suits;
};

}  // namespace floatwright
