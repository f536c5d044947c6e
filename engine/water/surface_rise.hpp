#pragma once
// How far the water's surface rises from one flow to another, by the best that is known: the reach's own surveyed
// section; the rating of a gauge that speaks for it (gauge_near.hpp); else the channel's mean depth. A surface that
// neither a rating nor a survey reaches is not extrapolated: the caller falls back on the channel and says so.
#include "engine/water/channel.hpp"
#include "engine/water/surveyed_section.hpp"

namespace floatwright {

// Views into a River, which outlives this; all empty: nothing but the channel is known.
struct SurfaceLaw {
  const std::vector<SurveyedSection>* sections = nullptr;
  std::optional<double> slope = std::nullopt;  // of the reach, for sections without their own
  const Rating* rating = nullptr;

  [[nodiscard]] bool empty() const { return sections == nullptr && rating == nullptr; }
};

[[nodiscard]] SurfaceLaw surface_law_of(const River& river, const Reach& reach);

// Height of the surface over a level of the law's own; of several sections the mean over their lowest ground. Absent
// outside the rating, over the banks, or where the law is empty.
[[nodiscard]] Measured<Length> surface_height(const SurfaceLaw& law, Discharge flow);

// By the law where it knows both flows, else by the channel.
[[nodiscard]] Length surface_rise(const SurfaceLaw& law, const Channel& channel, Discharge from, Discharge to);

}  // namespace floatwright
