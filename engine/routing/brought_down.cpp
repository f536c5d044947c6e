#include "engine/routing/brought_down.hpp"

#include <algorithm>
#include <cmath>

#include "engine/forecast/release_plan.hpp"
#include "engine/routing/even_flows.hpp"
#include "engine/routing/muskingum.hpp"
#include "engine/routing/wave_travel.hpp"
#include "engine/statistics/quantile.hpp"

namespace floatwright {
namespace {

constexpr double kConstantLag = 0.02;     // exponents below it
constexpr double kLeastFlow = 0.01;       // m3/s, below it a wave time means nothing
constexpr double kFastest = 0.98;         // quantile of the record's flow
constexpr double kMostOfTheTravel = 0.9;  // that the reservoir may take over

// Edges of steps count in steps from the first: step i lasts from i to i + 1, and travel times are in steps.
class KinematicWave {
 public:
  KinematicWave(const std::vector<Discharge>& above, Period step, const WaveTravel& travel, Discharge fastest)
      : step_(in_seconds(duration(step))), m_(travel.exponent), volume_{0.0} {
    for (const Discharge q : above) {
      flow_.push_back(q.si());
      volume_.push_back(volume_.back() + q.si() * step_);
    }
    t0_ = travel.time.si() / step_;
    q0_ = std::max(kLeastFlow, travel.at_flow.si());
    least_ = time_of(fastest.si());
    for (const double q : flow_) {
      time_.push_back(std::max(least_, time_of(q)));
      overtaken_.push_back(overtaken(time_.back()));
    }
    for (std::size_t k = 0; k <= flow_.size(); ++k) overtaken_in_.push_back(overtaken(static_cast<double>(k)));
  }

  [[nodiscard]] std::vector<Discharge> below() {
    std::vector<Discharge> out;
    double before = passed_below(0);
    for (std::size_t edge = 1; edge <= flow_.size(); ++edge) {
      const double now = passed_below(edge);
      out.push_back(Discharge::from_si(std::max(0.0, (now - before) / step_)));
      before = now;
    }
    return out;
  }

 private:
  [[nodiscard]] double time_of(double q) const {  // steps
    return m_ < kConstantLag ? t0_ : t0_ * std::pow(q0_ / std::max(kLeastFlow, q), m_);
  }
  // Water that one who travels `time` steps leaves behind him, m3.
  [[nodiscard]] double overtaken(double time) const {
    if (m_ < kConstantLag || time <= 0.0) return 0.0;
    return m_ / (1.0 - m_) * q0_ * std::pow(t0_ / time, 1.0 / m_) * time * step_;
  }

  // The volume below up to an edge: the most that any wave has brought which set out in step i, and i never goes back.
  double passed_below(std::size_t edge) {
    const auto at = static_cast<double>(edge);
    if (m_ < kConstantLag) return volume_above(at - time_.front());
    const double steady = std::max(at, time_.front());  // from before the first step
    double most = flow_.front() * step_ * (at - steady) - overtaken(steady);
    for (std::size_t i = first_; i < edge && at - static_cast<double>(i) >= least_; ++i) {
      const double shortest = at - static_cast<double>(i + 1), longest = at - static_cast<double>(i);
      const double time = std::clamp(time_[i], std::max(shortest, least_), longest);
      const double left = time == time_[i]   ? overtaken_[i]
                          : time == longest  ? overtaken_in_[edge - i]
                          : time == shortest ? overtaken_in_[edge - i - 1]
                                             : overtaken(time);
      const double value = volume_[i] + flow_[i] * step_ * (longest - time) - left;
      if (value < most) continue;
      most = value;
      first_ = i;
    }
    return most;
  }
  [[nodiscard]] double volume_above(double at) const {
    if (at <= 0.0) return flow_.front() * step_ * at;
    const auto i = std::min(static_cast<std::size_t>(at), flow_.size() - 1);
    return volume_[i] + flow_[i] * step_ * (at - static_cast<double>(i));
  }

  double step_, m_, t0_ = 0.0, q0_ = 1.0, least_ = 0.0;
  std::vector<double> flow_, volume_, time_, overtaken_, overtaken_in_;  // the last: in whole steps
  std::size_t first_ = 0;
};

// What the reservoir delays the wave is spared.
struct Shared {
  WaveTravel wave;
  Duration reservoir;  // zero: the steps themselves spread more than that
};
Shared shared(const WaveTravel& travel, Period step) {
  const Duration delay = std::min(travel.spread, kMostOfTheTravel * travel.time);
  if (delay < 0.5 * duration(step)) return {travel, {}};
  return {{travel.at_flow, travel.time - delay, travel.exponent, {}}, delay};
}

void add_run(const std::vector<double>& rows, Instant first, Period step, const WaveTravel& travel, Discharge fastest,
             FromAbove& from) {
  std::vector<Discharge> above;
  for (const double q : rows) above.push_back(Discharge::from_si(q));
  const auto ahead = static_cast<std::size_t>(from.lag / step);
  above.insert(above.end(), ahead, above.back());  // never reached: what it brings is not known ahead
  const auto below = brought_down(above, step, travel, fastest);
  const double through = travel_at(above.front(), travel.time, travel.at_flow, travel.exponent) / duration(step);
  for (auto i = static_cast<std::size_t>(std::ceil(through)); i < below.size(); ++i) {
    from.routed.times.push_back(first + step * static_cast<Period::rep>(i));
    from.routed.values.push_back(below[i]);
  }
}

}  // namespace

std::vector<Discharge> brought_down(const std::vector<Discharge>& above, Period step, const WaveTravel& travel,
                                    Discharge fastest) {
  if (above.empty()) return {};
  const Shared by = shared(travel, step);
  auto flow = KinematicWave(above, step, by.wave, fastest).below();
  if (!(by.reservoir > Duration{})) return flow;
  return routed(flow, muskingum_weights(by.reservoir, 0.0, duration(step)), flow.front());
}

std::size_t steps_known_ahead(Period step, const WaveTravel& travel, Discharge fastest) {
  const WaveTravel wave = shared(travel, step).wave;
  return static_cast<std::size_t>(travel_at(fastest, wave.time, wave.at_flow, wave.exponent) / duration(step));
}

WaveTravel travel_between(const River& river, const RiverGraph& graph, RiverPlace from, RiverPlace to, Discharge flow) {
  const WavePath path = wave_between(river, graph, from, to, flow);
  const WavePath faster = wave_between(river, graph, from, to, 2.0 * flow);
  WaveTravel travel{flow, path.travel, 0.0, {}};
  if (!(path.travel > Duration{})) return travel;
  travel.exponent = std::clamp(std::log2(path.travel / faster.travel), 0.0, 0.9);
  travel.spread = path.travel * std::sqrt(path.spread / path.length);
  return travel;
}

FromAbove from_above(const River& river, const RiverGraph& graph, std::size_t upper_gauge, std::size_t lower_gauge,
                     const Series<Discharge>& upper_record) {
  const GaugeSite &upper = river.gauges[upper_gauge], &lower = river.gauges[lower_gauge];
  const Period step = usual_step(upper_record);
  if (!upper.place || !lower.place || step <= Period{} || wave_ends_between(river, *upper.place, *lower.place))
    return {};
  std::vector<double> flow;  // m3/s
  for (const Discharge q : upper_record.values) flow.push_back(q.si());
  std::sort(flow.begin(), flow.end());
  const WaveTravel travel =
      travel_between(river, graph, *upper.place, *lower.place, Discharge::from_si(quantile_of_sorted(flow, 0.5)));
  if (!(travel.time > Duration{})) return {};
  const auto fastest = Discharge::from_si(quantile_of_sorted(flow, kFastest));
  FromAbove from{{}, {}, dam_above(river, lower).dam != nullptr};
  from.lag = step * static_cast<Period::rep>(steps_known_ahead(step, travel, fastest));
  const TimeGrid grid = even_grid(upper_record.times.front(), upper_record.times.back(), step);
  std::vector<double> run;
  const auto rows = on_grid(upper_record, grid);
  for (std::size_t i = 0; i <= grid.count; ++i) {
    if (i < grid.count && !std::isnan(rows[i])) {
      run.push_back(rows[i]);
    } else if (!run.empty()) {
      add_run(run, grid.at(i - run.size()), step, travel, fastest, from);
      run.clear();
    }
  }
  return from;
}

}  // namespace floatwright
