#include "engine/water/measured_visits.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

// Of flow, that width x depth x speed may differ from it: five times what rounding each to three figures makes.
constexpr double kMismatch = 0.10;  // judgement

struct Whole {
  double flow = 0.0, width = 0.0, area = 0.0;  // m3/s, m, m2
};

// Nothing where a channel lacks its width, or what gives its area.
std::optional<Whole> whole_of(const FieldMeasurement& visit) {
  Whole whole;
  for (const MeasuredChannel& channel : visit.channels) {
    if (!channel.width) return std::nullopt;
    whole.width += channel.width->si();
    const bool alone = visit.channels.size() == 1;
    const auto flow = channel.discharge || !alone ? channel.discharge : visit.discharge;
    if (channel.area) {
      whole.area += channel.area->si();
    } else if (flow && channel.speed && channel.speed->si() > 0.0) {
      whole.area += flow->si() / channel.speed->si();
    } else {
      return std::nullopt;
    }
    whole.flow += flow ? flow->si() : channel.area && channel.speed ? channel.area->si() * channel.speed->si() : 0.0;
  }
  if (visit.discharge) whole.flow = visit.discharge->si();
  return whole;
}

// Speed as measured where one channel says it, so that a slip in one of the numbers shows.
ChannelMeasurement measurement(const FieldMeasurement& visit, const Whole& whole) {
  const bool says_speed = visit.channels.size() == 1 && visit.channels.front().speed;
  const double speed = says_speed ? visit.channels.front().speed->si() : whole.flow / whole.area;  // m/s
  return {cubic_metres_per_second(whole.flow), metres(whole.width), metres(whole.area / whole.width),
          mean_metres_per_second(speed)};
}

double carried(const ChannelMeasurement& m) { return m.width.si() * m.mean_depth.si() * m.mean_speed.si(); }  // m3/s

std::string why_contradictory(const ChannelMeasurement& m) {
  return fmt::format("width x depth x speed is {:.4g} m3/s, measured at {:.4g}", carried(m), m.discharge.si());
}

class Sorting {
 public:
  void take(const FieldMeasurement& visit) {
    if (visit.ice || visit.marks.contains(Mark::Ice)) return leave_out(visit, "ice");
    if (visit.marks.contains(Mark::Equipment)) return leave_out(visit, "marked as a fault of the equipment");
    if (!visit.time) return leave_out(visit, "no day");
    if (visit.channels.empty()) return leave_out(visit, "nothing of the channel was measured");
    const auto whole = whole_of(visit);
    if (!whole) return leave_out(visit, "no width, or neither area nor speed");
    const MeasuredVisit measured{visit.visit, *visit.time, measurement(visit, *whole)};
    const auto& m = measured.channel;
    const auto over_0 = [](double x) { return std::isfinite(x) && x > 0.0; };
    if (!over_0(m.discharge.si()) || !over_0(m.width.si()) || !over_0(m.mean_depth.si()) || !over_0(m.mean_speed.si()))
      return leave_out(visit, "a number that is not over 0");
    if (std::abs(std::log(carried(m) / m.discharge.si())) <= kMismatch) return out_.sound.push_back(measured);
    out_.contradictory.push_back(measured);
    leave_out(visit, why_contradictory(m));
  }

  MeasuredVisits sorted() && {
    std::ranges::stable_sort(out_.sound, {}, &MeasuredVisit::time);
    std::ranges::stable_sort(out_.contradictory, {}, &MeasuredVisit::time);
    return std::move(out_);
  }

 private:
  void leave_out(const FieldMeasurement& visit, std::string why) {
    out_.left_out.push_back({visit.visit, visit.time, std::move(why)});
  }
  MeasuredVisits out_;
};

}  // namespace

MeasuredVisits measured_visits(const std::vector<FieldMeasurement>& visits) {
  Sorting sorting;
  for (const FieldMeasurement& visit : visits) sorting.take(visit);
  return std::move(sorting).sorted();
}

}  // namespace floatwright
