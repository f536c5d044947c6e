#pragma once
// What was swung or stripped in one water, worked out in its three cases together. Rigs that are one to the water share
// it.
#include <vector>

#include "engine/choice/score.hpp"

namespace floatwright {

class KnownCasts {
 public:
  explicit KnownCasts(const Scene& scene) : scene_(scene) {}

  // By technique; empty where one has no answer.
  [[nodiscard]] std::vector<ScoredRig> scored(const RigWays& ways);

 private:
  struct Known {
    Way way;
    std::vector<Measured<CastPath>> cases;  // low, middle, high
  };
  [[nodiscard]] const Known* known(const Way& way) const;
  void learn(const RigWays& ways);
  const Scene& scene_;
  std::vector<Known> known_;
};

}  // namespace floatwright
