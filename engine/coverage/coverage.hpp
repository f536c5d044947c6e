#pragma once
// What each line and each set of lines covers of the fishing on record. A reach on a day counts one, its waters by their
// fishing time, a water's hours by whether a hatch is on. A line covers a water when it fishes it by one of the ways that
// are worth most there (those within a tie of the best worth over all lines considered) with at least 80 % of the most
// seconds that any line has there by that way. Where no line considered fishes at all the fishing is left out and told.
#include <array>
#include <vector>

#include "engine/choice/judgement.hpp"
#include "engine/coverage/considered_lines.hpp"
#include "engine/coverage/covering_sets.hpp"
#include "engine/coverage/reach_days.hpp"

namespace floatwright {

// Some fishing and the lines that cover it.
struct CoveredFishing {
  LineMask lines = 0;
  double weight = 0.0;  // reach-days
  Discharge flow{};     // of the whole river there
  int month = 1;
  WaterType water = WaterType::Run;
};

inline constexpr int kMonths = 12;

// Where and when some fishing is: between which flows eight tenths of it are, and each month's and water's share of it.
struct FishingSpan {
  Discharge from{}, to{};
  std::array<double, kMonths> by_month{};
  std::array<double, 7> by_water{};  // by WaterType
};

struct LineCoverage {
  ConsideredLine line;
  double alone = 0.0;  // share of all the fishing that it covers
  double only = 0.0;   // that no other owned line does: what would be lost with it, or won by buying it
  FishingSpan covers{}, adds{};  // of these two; meaningless where the share is 0
  std::vector<double> by_flow{};  // share covered, by Coverage::flows
};

// From `from` up to `to`.
struct FlowStep {
  Discharge from{}, to{};
  double share = 0.0;  // of all the fishing
};

struct CoveringShare {
  std::vector<std::size_t> lines;  // into Coverage::lines
  double share = 0.0;
};

struct Coverage {
  std::vector<LineCoverage> lines;
  double owned = 0.0, all = 0.0;           // shares that all owned lines, and all considered, cover
  std::vector<CoveringShare> best_sets;    // of 1, 2, ... owned lines
  std::vector<std::size_t> earn_nothing;   // owned lines that may all go at once and nothing is lost; least covering first
  std::optional<std::size_t> adds_most;    // into lines, not owned; none: no such line adds anything
  std::vector<FlowStep> flows;             // rising, tenths of a doubling or so
  double fishing = 0.0;                    // reach-days in all of the above
  double unreached = 0.0, unknown = 0.0;   // reach-days left out: nothing fishes there; depth or speed unknown
  std::vector<std::string> unknown_why{};  // each once
  DaysCounted counted{};
};

// `fishing`: where at least one line covers. `most`: lines in the largest set asked for.
[[nodiscard]] Coverage coverage(const std::vector<ConsideredLine>& lines, std::vector<CoveredFishing> fishing, int most);

}  // namespace floatwright
