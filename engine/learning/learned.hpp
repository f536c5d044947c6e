#pragma once
// What the entries of a log teach: a correction of depth and one of surface speed for each water, one of pace for each
// boat, all of them logarithms of what was met over what the river file says at that flow, normal with mean 0 and standard
// deviation 0.15 before anything was met (belief.hpp). One entry's scatter is 0.10 where depth was sounded or speed timed,
// 0.20 where depth was counted down; of a float time 0.10, or 0.20 where nobody noted how long the boat was stopped.
// The numbers are judgement. The order of the entries does not matter, and they are judged by the notes of today: an entry
// older than the note that holds at its flow teaches nothing, for whoever wrote the note knew it.
#include <string>
#include <vector>

#include "engine/learning/log_entry.hpp"
#include "engine/learning/water_named.hpp"
#include "engine/water/lane.hpp"

namespace floatwright {

inline constexpr double kPriorSd = 0.15;

struct Correction {
  double ln = 0.0;            // of what is, over what was noted
  double scatter_left = 1.0;  // of the note's local scatter, 0 to 1
  int entries = 0;            // that speak for it; none: nothing was met
};

struct LearnedWater {
  NamedWater where;
  WaterType type = WaterType::Run;
  Discharge noted_at;  // the flow that the differences are told at: of the water's last note
  Length noted_depth;
  SurfaceSpeed noted_speed;
  Correction depth, speed;
};

struct LearnedPace {
  std::string boat;
  Correction pace;
};

struct LogDoubt {
  std::size_t entry = 0;  // index into the entries
  std::string why;        // a phrase that reads after "teaches nothing: "
};
// Two entries that can't both be right: more than three of their scatters apart. Both count.
struct Contradiction {
  std::size_t entry = 0, other = 0;
};

struct Learned {
  std::vector<LearnedWater> waters;
  std::vector<LearnedPace> boats;
  std::vector<LogDoubt> idle;  // in the order of the entries
  std::vector<Contradiction> contradictions;
};

[[nodiscard]] Learned learned(const River& river, const RiverGraph& graph, const std::vector<LogEntry>& entries);

// Null where nothing was met.
[[nodiscard]] const LearnedWater* learned_of(const Learned& learned, WaterHolder holder, std::size_t of, WaterType type);
// Depth and speed as met, at every flow alike, and their scatter narrowed.
[[nodiscard]] Lane corrected(Lane noted, const LearnedWater& met);
// Nothing where no float of the boat was logged.
[[nodiscard]] Correction pace_of(const Learned& learned, const std::string& boat);

}  // namespace floatwright
