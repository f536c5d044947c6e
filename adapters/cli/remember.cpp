#include "adapters/cli/remember.hpp"

#include <algorithm>

#include "adapters/cli/common_options.hpp"
#include "adapters/out/state/kept_plans.hpp"
#include "adapters/out/state/state_directory.hpp"

namespace floatwright {
namespace {

// A boat's plan and an angler's at a spot are kept side by side.
std::string whose(const DayInputs& in) {
  return in.spot ? "at " + in.river.spots.at(*in.spot).id : in.settings.boat;
}

}  // namespace

void recall(std::vector<BoatDay>& boats, const std::filesystem::path& configuration) {
  const auto state = state_directory();
  if (!state) return;
  const auto kept = kept_plans({*state, configuration}, boats.front().in.day);
  if (!kept) {
    tell(kept.error());
    return;
  }
  for (BoatDay& boat : boats) {
    const auto before = std::find_if(kept->begin(), kept->end(), [&](const HandedOut& plan) {
      return plan.whose == whose(boat.in) && plan.made_at < boat.in.now;
    });
    if (before != kept->end()) boat.in.before = *before;
  }
}

void remember(const std::vector<BoatDay>& boats, const std::filesystem::path& configuration, bool verbose) {
  std::vector<HandedOut> plans;
  for (const BoatDay& boat : boats) plans.push_back(handed_out(boat.plan, boat.in.tackle, whose(boat.in)));
  const auto state = state_directory();
  const auto kept = state ? keep_plans({*state, configuration}, plans) : tl::unexpected(state.error());
  if (!kept && verbose) tell(kept.error());
}

}  // namespace floatwright
