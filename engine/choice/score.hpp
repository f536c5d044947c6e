#pragma once
// One rig fished one way in one water: the casts of the three cases, and what they are worth. Swings and strips are
// read from tables where there are some for them, or worked out.
#include <array>
#include <optional>
#include <span>

#include "engine/choice/choose.hpp"
#include "engine/choice/scatter.hpp"
#include "engine/choice/seconds.hpp"
#include "engine/choice/zone.hpp"
#include "engine/sinking/fishing_tables.hpp"

namespace floatwright {

struct WaterAndBoat;  // engine/sinking/chain.hpp

// What all ways in a water share.
struct SharedByWays {
  Speed easy;
  std::array<PerCase<Zone>, kMethods> zones;               // by method
  std::array<std::vector<double>, kFirmnesses> scatter{};  // factors, by firmness
};

// Everything a score depends on beside the rig; refers to what the caller keeps.
struct Scene {
  const WaterToFish& water;
  const Tackle& tackle;
  const Preferences& preferences;
  const Judgement& judgement;
  const FishingTables* tables;  // none: everything is worked out
  DriftLimits limits;
  PerCase<Measured<TabledWater>> cases;
  PerCase<std::optional<GridPoint>> in_tables;  // none: outside the grid, all is worked out
  SharedByWays shared;
};
[[nodiscard]] Scene scene_of(const WaterToFish& water, const Tackle& tackle, const Preferences& preferences,
                             const Judgement& judgement, const FishingTables* tables = nullptr);

enum class Casts { FromTables, WorkedOut };

struct Way {
  Rig rig;
  Technique technique;
};
// A rig on a platform, with the ways it can be fished there.
struct RigWays {
  Rig rig;
  std::vector<Technique> techniques;  // of one method and platform
};

// Every way that the methods, the lines and the platforms of this water allow.
[[nodiscard]] std::vector<RigWays> ways(const Scene& scene, Method method);

// The casts in the middle case, by technique; absent with the reason. `leader_set`: an indicator's leader, where known.
[[nodiscard]] std::vector<Measured<CastPath>> middle_casts(const Scene& scene, const Rig& rig,
                                                           std::span<const Technique> techniques, Casts casts,
                                                           std::optional<SetLeader> leader_set = std::nullopt);

// The same, from tables where there are some, in two waters that differ in temperature alone.
[[nodiscard]] std::array<std::vector<Measured<CastPath>>, 2> middle_casts(const Scene& cold, const Scene& warm,
                                                                          const Rig& rig,
                                                                          std::span<const Technique> techniques);

// Whether two ways that are pulled are one to the water.
[[nodiscard]] bool cast_alike(const Scene& scene, const Way& a, const Way& b);

// Where a rig is cast from a platform: in the middle case, whose water there is; in all three, empty where one has
// none.
[[nodiscard]] WaterAndBoat middle_place(const Scene& scene, Platform platform);
[[nodiscard]] std::vector<WaterAndBoat> places(const Scene& scene, Platform platform);
[[nodiscard]] Length cast_of(const Scene& scene, const Rig& rig);

// The cast of a rig in the middle case, whose water there is; and where the fish take there.
[[nodiscard]] CastSetting middle_setting(const Scene& scene, const Rig& rig, Platform platform,
                                         std::optional<SetLeader> leader_set);
[[nodiscard]] const Zone& middle_zone(const Scene& scene, Method method);

// Whether there is a fish in any case.
[[nodiscard]] bool may_be_taken(const Scene& scene, Method method);

// The worth that a method can have here at most, however well a rig fishes.
[[nodiscard]] double most_worth(const Scene& scene, Method method);

// A way with what was found of it, its worth left out; `water_depth` bounds the printed band.
[[nodiscard]] ScoredRig scored_rig(const Way& way, const CastPath& path, const EffectiveSeconds& found,
                                   const PerCase<Length>& water_depth, const Judgement& judgement);
// From the middle case alone (five scatter members), for ranking: the seconds, 0 where they are surely not more than
// `beaten`; or all of it; and from all three cases.
struct MiddleSeconds {
  double seconds = 0.0, efficiency = 0.0;
};
[[nodiscard]] MiddleSeconds middle_seconds(const Scene& scene, const Way& way, const CastPath& path,
                                           double beaten = 0.0);
[[nodiscard]] ScoredRig score_middle(const Scene& scene, const Way& way, const CastPath& middle);
[[nodiscard]] std::vector<ScoredRig> score(const Scene& scene, const RigWays& ways,
                                           std::span<const CastPath* const> middle);  // by technique
[[nodiscard]] std::vector<ScoredRig> score(const Scene& scene, const RigWays& ways,
                                           const PerCase<std::vector<const CastPath*>>& paths);

}  // namespace floatwright
