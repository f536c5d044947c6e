#pragma once
// All that `tune` found which a plan reads beside the river (its fitted channels and lags are the river's own).
#include <algorithm>
#include <string>
#include <vector>

#include "engine/forecast/tuned_daily_flow.hpp"
#include "engine/forecast/tuned_flow.hpp"
#include "engine/temperature/tuned_temperature.hpp"

namespace floatwright {

struct Tuned {
  std::vector<TunedFlow> flows;
  std::vector<TunedDailyFlow> daily_flows;
  std::vector<TunedTemperature> temperatures;
};

// Of a gauge by its id; none: nothing was fitted to it.
template <class T>
[[nodiscard]] const T* tuned_for(const std::vector<T>& all, const std::string& gauge) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const T& one) { return one.gauge == gauge; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace floatwright
