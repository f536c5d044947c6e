#pragma once
// The water at the flows to which a search for changes looks, with the casts that were worked out in it. A line is cast
// into four of them abreast for little more than into one: a cast that is asked for at one flow is worked out at those
// that are likely to be looked at next too.
#include <map>
#include <memory>
#include <vector>

#include "engine/choice/line_asked.hpp"

namespace floatwright {

struct SceneAtFlow {
  SceneAtFlow(WaterToFish there, const LineAsked& asked);
  SceneAtFlow(const SceneAtFlow&) = delete;  // the scene is of its own water
  SceneAtFlow& operator=(const SceneAtFlow&) = delete;

  WaterToFish water;
  Scene scene;
  std::map<const Way*, Measured<CastPath>> casts;  // in the middle case
};

// What is handed in outlives it. Ways are known by where they stand.
class FlowsAhead {
 public:
  FlowsAhead(const PresentFlow& present, const LineAsked& asked) : present_(present), asked_(asked) {}

  // By the flow over the present one; nullptr where nothing is known of the water or the notes do not bear it.
  [[nodiscard]] SceneAtFlow* at(double factor);
  // What may be looked at after the next flow: at most three, for one more cast.
  void expect(std::vector<double> factors) { expected_ = std::move(factors); }
  // Swung or stripped in water that there is, in the middle case; absent with the reason.
  [[nodiscard]] const Measured<CastPath>& cast(SceneAtFlow& here, const Way& way);

 private:
  [[nodiscard]] std::vector<SceneAtFlow*> without_it(SceneAtFlow& here, const Way& way);
  const PresentFlow& present_;
  const LineAsked& asked_;
  std::map<double, std::unique_ptr<SceneAtFlow>> scenes_;
  std::vector<double> expected_;
};

}  // namespace floatwright
