#pragma once
// The options of `sink` as they were typed, and what they mean: rigs, a way of fishing, a water.
#include <string>
#include <vector>

#include "adapters/cli/common_options.hpp"
#include "engine/choice/rig_in_water.hpp"
#include "engine/wording/still_page.hpp"

namespace floatwright {

struct SinkOptions : CommonOptions {
  std::vector<std::string> lines, flies, kinds{"text"};
  std::string tip, leader, shot, rod, cast, method, technique, count, strip, platform;
  std::string depth, speed, mean, thread, profile, bed, temperature, layer, lake, sink_case, paper = "letter";
  bool compare = false, still = false;
};

// Everything that was asked for, as values. Rigs are those of the words and the tackle file, whether they can be fished
// so or not.
struct SinkScene {
  Tackle tackle;
  Judgement judgement;
  UnitSystem units = UnitSystem::Us;
  std::vector<Rig> rigs;
  Technique technique;
  KnownWater water;
  Length cast;
  std::optional<Length> layer;  // to count down to
  std::optional<LakeAsked> lake;
};

// Failure 64 says what to write; that of a configuration that can't be read has its own code.
[[nodiscard]] Result<SinkScene> sink_scene(const SinkOptions& options);

}  // namespace floatwright
