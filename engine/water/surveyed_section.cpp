#include "engine/water/surveyed_section.hpp"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>

#include "engine/river/problem_groups.hpp"

namespace floatwright {
namespace {

// The ground from the top of one bank to the top of the other.
struct Ground {
  std::vector<SectionPoint>::const_iterator first, lowest, last;  // last: the right bank's top itself
};

Ground ground_of(const SurveyedSection& section) {
  const auto& points = section.points;
  const auto lowest = std::ranges::min_element(points, {}, &SectionPoint::height);
  const auto higher = [](const SectionPoint& a, const SectionPoint& b) { return a.height < b.height; };
  return {std::max_element(points.begin(), lowest + 1, higher), lowest, std::max_element(lowest, points.end(), higher)};
}

struct WetThread {
  double area = 0.0, wetted = 0.0, top = 0.0;  // m2, m, m
};

double carried(const WetThread& thread, const SurveyedSection& section, double slope) {
  const double radius = thread.area / thread.wetted;                                                   // R, m
  const double n = section.roughness ? *section.roughness : jarrett_roughness(slope, metres(radius));  // s/m^(1/3)
  return thread.area * std::cbrt(radius * radius) * std::sqrt(slope) / n;                              // m3/s
}

class Threads {
 public:
  Threads(const SurveyedSection& section, double slope) : section_(section), slope_(slope) {}

  // Ground between two points, `left` and `right` deep under the surface (under 0: dry), `across` apart; all m.
  void add(double left, double right, double across) {
    if (left > 0.0 || right > 0.0) {
      const double wet = left >= 0.0 && right >= 0.0 ? 1.0 : std::max(left, right) / std::abs(left - right);  // share
      const double deep = std::max(left, 0.0), deep_too = std::max(right, 0.0);
      thread_.area += 0.5 * (deep + deep_too) * across * wet;
      thread_.wetted += wet * std::hypot(across, left - right);
      thread_.top += wet * across;
    }
    if (right <= 0.0) close();
  }
  SectionWater whole() && {
    close();
    return whole_;
  }

 private:
  void close() {
    if (thread_.area > 0.0) {
      whole_.flow = whole_.flow + cubic_metres_per_second(carried(thread_, section_, slope_));
      whole_.area = whole_.area + square_metres(thread_.area);
      whole_.wetted = whole_.wetted + metres(thread_.wetted);
      whole_.top_width = whole_.top_width + metres(thread_.top);
    }
    thread_ = {};
  }
  const SurveyedSection& section_;
  double slope_;
  WetThread thread_;
  SectionWater whole_;
};

// Depths in eight even steps of their logarithm, from a sixth of the depth at the bank to all of it.
std::vector<ChannelMeasurement> waters_of(const SurveyedSection& section, double slope) {
  constexpr int kSteps = 8;
  constexpr double kShallowest = 1.0 / 6.0;
  const Length bed = lowest_ground(section), bank = bank_height(section);
  std::vector<ChannelMeasurement> rows;
  for (int i = 0; i < kSteps; ++i) {
    const double share = std::pow(kShallowest, 1.0 - i / (kSteps - 1.0));
    const SectionWater water = water_below(section, slope, bed + share * (bank - bed));
    rows.push_back({water.flow, water.top_width, water.mean_depth(), water.mean_speed()});
  }
  return rows;
}

}  // namespace

double jarrett_roughness(double slope, Length hydraulic_radius) {
  const double s = std::clamp(slope, kJarrettLeastSlope, kJarrettMostSlope);                           // ft/ft
  const double r = in_feet(std::clamp(hydraulic_radius, kJarrettLeastRadius, kJarrettMostRadius));    // ft
  return 0.39 * std::pow(s, 0.38) * std::pow(r, -0.16);
}

Length lowest_ground(const SurveyedSection& section) { return ground_of(section).lowest->height; }

Length bank_height(const SurveyedSection& section) {
  const Ground ground = ground_of(section);
  return std::min(ground.first->height, ground.last->height);
}

SectionWater water_below(const SurveyedSection& section, double slope, Length surface) {
  const Ground ground = ground_of(section);
  Threads threads(section, slope);
  for (auto right = ground.first + 1; right <= ground.last; ++right) {
    const auto& left = *(right - 1);
    threads.add(in_metres(surface - left.height), in_metres(surface - right->height),
                in_metres(right->across - left.across));
  }
  return std::move(threads).whole();
}

Measured<Length> surface_at(const SurveyedSection& section, double slope, Discharge flow) {
  const double bed = in_metres(lowest_ground(section)), bank = in_metres(bank_height(section));  // m
  const auto over = [&](double surface) { return water_below(section, slope, metres(surface)).flow.si() - flow.si(); };
  if (!(flow > Discharge{})) return Absent{"there is no flow"};
  if (over(bank) < 0.0)
    return Absent{"a flow of " + short_number(in_cubic_feet_per_second(flow)) +
                  " cfs is over the banks of the surveyed section"};
  std::uintmax_t steps = 100;
  const auto [low, high] =
      boost::math::tools::toms748_solve(over, bed, bank, boost::math::tools::eps_tolerance<double>(40), steps);
  return metres(0.5 * (low + high));
}

std::optional<double> slope_of(const SurveyedSection& section, std::optional<double> of_reach) {
  const auto slope = section.slope ? section.slope : of_reach;
  return slope && *slope > 0.0 ? slope : std::nullopt;
}

Channel channel_of_sections(const std::vector<SurveyedSection>& sections, std::optional<double> slope) {
  std::vector<ChannelMeasurement> rows;
  Discharge most;  // that all sections hold
  for (const auto& section : sections) {
    const auto more = waters_of(section, slope_of(section, slope).value_or(0.0));
    most = rows.empty() ? more.back().discharge : std::min(most, more.back().discharge);
    rows.insert(rows.end(), more.begin(), more.end());
  }
  constexpr double kExact = 0.0;
  Channel channel = channel_through(rows, kExact);
  channel.most = most;
  return channel;
}

}  // namespace floatwright
