#pragma once
// What a surveyed cross-section carries: uniform flow by Manning's formula, Q = sum of A R^(2/3) sqrt(S)/n over its
// threads of water. A thread is what lies between dry ground; each has its own hydraulic radius R and conveyance, and
// no water is reckoned above the lower bank, nor behind a bank. Where n is not given it is Jarrett's,
// n = 0.39 S^0.38 R^-0.16 (S ft per ft, R ft; R. D. Jarrett, J. Hydraul. Eng. 110(11), 1984, from memory), found for
// slopes of 0.002 to 0.04 and R of 0.5 to 7 ft; beyond these it is held at their ends.
#include "engine/river/river.hpp"
#include "engine/units/measured.hpp"
#include "engine/water/channel.hpp"

namespace floatwright {

inline constexpr double kJarrettLeastSlope = 0.002, kJarrettMostSlope = 0.04;
inline constexpr Length kJarrettLeastRadius = feet(0.5), kJarrettMostRadius = feet(7.0);

// Manning's n, s/m^(1/3).
[[nodiscard]] double jarrett_roughness(double slope, Length hydraulic_radius);

struct SectionWater {
  Discharge flow;
  Area area;
  Length wetted, top_width;  // wetted perimeter

  [[nodiscard]] Length mean_depth() const { return metres(area.si() / top_width.si()); }
  [[nodiscard]] MeanSpeed mean_speed() const { return mean_metres_per_second(flow.si() / area.si()); }
};

// Heights of the lowest ground and of the lower of the two banks beside it, as the section counts them.
[[nodiscard]] Length lowest_ground(const SurveyedSection& section);
[[nodiscard]] Length bank_height(const SurveyedSection& section);

// Of a section that holds water (section_problems in engine/river says which does not); a slope over 0; a surface
// between the lowest ground and the bank.
[[nodiscard]] SectionWater water_below(const SurveyedSection& section, double slope, Length surface);

// The surface at which a flow runs (normal depth is its height over the lowest ground); absent over the banks.
[[nodiscard]] Measured<Length> surface_at(const SurveyedSection& section, double slope, Discharge flow);

// The power laws through the waters of all sections, from a sixth of their depth up to the bank. At least one section,
// each with a slope of its own or the reach's.
[[nodiscard]] Channel channel_of_sections(const std::vector<SurveyedSection>& sections, std::optional<double> slope);

// The section's own slope, else the reach's; none where neither is over 0.
[[nodiscard]] std::optional<double> slope_of(const SurveyedSection& section, std::optional<double> of_reach);

}  // namespace floatwright
