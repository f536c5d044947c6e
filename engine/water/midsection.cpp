#include "engine/water/midsection.hpp"

#include <cmath>

namespace floatwright {
namespace {

std::string why_no_section(std::span<const Vertical> verticals) {
  if (verticals.size() < 3) return "fewer than three verticals";
  for (const Vertical& v : verticals) {
    if (!std::isfinite(v.across.si()) || !std::isfinite(v.depth.si()) || !std::isfinite(v.speed.si())) return "a value that is no number";
    if (v.depth < Length{}) return "a depth under 0";
  }
  const bool up = verticals.back().across > verticals.front().across;
  for (std::size_t i = 1; i < verticals.size(); ++i) {
    const Length step = verticals[i].across - verticals[i - 1].across;
    if (up ? step <= Length{} : step >= Length{}) return "distances that turn back or stand still";
  }
  return {};
}

}  // namespace

Measured<SectionMeasured> midsection(std::span<const Vertical> verticals) {
  if (std::string why = why_no_section(verticals); !why.empty()) return Absent{std::move(why)};
  const std::size_t last = verticals.size() - 1;
  double flow = 0.0, area = 0.0;  // m3/s, m2
  for (std::size_t i = 0; i <= last; ++i) {
    const Length before = verticals[i == 0 ? 0 : i - 1].across, after = verticals[i == last ? last : i + 1].across;
    const double part = 0.5 * std::abs((after - before).si()) * verticals[i].depth.si();  // m2
    area += part;
    flow += part * verticals[i].speed.si();
  }
  if (!(flow > 0.0)) return Absent{"nothing that flows"};
  return SectionMeasured{cubic_metres_per_second(flow), metres(std::abs((verticals[last].across - verticals[0].across).si())),
                         square_metres(area)};
}

}  // namespace floatwright
