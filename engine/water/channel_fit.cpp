#include "engine/water/channel_fit.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "engine/statistics/quantile.hpp"
#include "engine/statistics/theil_sen.hpp"

namespace floatwright {
namespace {

// All judgement.
constexpr double kFarOff = 8.0, kFarOffAlone = 5.0;  // robust standard deviations
constexpr double kAloneFrom = 3.0;                    // ratio of flows
constexpr double kLeastScatter = 0.05;  // sd of ln: no section is measured better
constexpr double kLeastApart = 0.1;     // in ln Q, of a pair that tells a slope
constexpr std::size_t kLeastOfASection = 8;
constexpr double kOtherWidth = 1.2, kApart = 3.3;

std::vector<double> logs(std::span<const ChannelMeasurement> rows, double (*of)(const ChannelMeasurement&)) {
  std::vector<double> out;
  for (const auto& row : rows) out.push_back(std::log(of(closed(row))));
  return out;
}
double flow_of(const ChannelMeasurement& m) { return in_cubic_metres_per_second(m.discharge); }
double width_of(const ChannelMeasurement& m) { return in_metres(m.width); }
double depth_of(const ChannelMeasurement& m) { return in_metres(m.mean_depth); }
double speed_of(const ChannelMeasurement& m) { return in_metres_per_second(m.mean_speed); }

// ln y less its robust line on ln Q; where all flows are one, with the published exponent.
std::vector<double> off_the_line(std::span<const double> ln_q, const std::vector<double>& ln_y, double published) {
  std::vector<double> left;
  const auto line = theil_sen(ln_q, ln_y, kLeastApart);
  const double slope = line ? line->slope : published;
  for (std::size_t i = 0; i < ln_y.size(); ++i) left.push_back(ln_y[i] - slope * ln_q[i]);
  const double middle = median(left);
  for (double& x : left) x -= middle;
  return left;
}

// Up to a tenth of the rows (at least one) at either end of the flows, where a factor of 3 parts them from the rest: a
// law hangs on such a row as on a lever.
std::vector<bool> alone_in_flow(const std::vector<double>& ln_q) {
  std::vector<std::size_t> order(ln_q.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order, {}, [&](std::size_t i) { return ln_q[i]; });
  std::vector<bool> alone(ln_q.size(), false);
  for (int end = 0; end < 2; ++end) {
    for (std::size_t j = 0; j <= ln_q.size() / 10 && j + 1 < ln_q.size(); ++j) {
      if (std::abs(ln_q[order[j]] - ln_q[order[j + 1]]) <= std::log(kAloneFrom)) continue;
      for (std::size_t i = 0; i <= j; ++i) alone[order[i]] = true;
    }
    std::ranges::reverse(order);
  }
  return alone;
}

void mark_far(const std::vector<double>& off, const std::vector<bool>& alone, std::vector<bool>& far) {
  std::vector<double> sizes;
  for (const double x : off) sizes.push_back(std::abs(x));
  const double scatter = std::max(kLeastScatter, 1.4826 * median(sizes));
  for (std::size_t i = 0; i < off.size(); ++i)
    far[i] = far[i] || sizes[i] > (alone[i] ? kFarOffAlone : kFarOff) * scatter;
}

struct Sorted {
  double off = 0.0;  // ln width less its law
  std::size_t row = 0;
};

double mean_of(std::span<const Sorted> group) {
  const auto add = [](double sum, const Sorted& s) { return sum + s.off; };
  return std::accumulate(group.begin(), group.end(), 0.0, add) / static_cast<double>(group.size());
}
double variance_of(std::span<const Sorted> group) {
  const double mean = mean_of(group);
  const auto add = [mean](double sum, const Sorted& s) { return sum + (s.off - mean) * (s.off - mean); };
  return std::accumulate(group.begin(), group.end(), 0.0, add) / static_cast<double>(group.size() - 1);
}

// Where ascending values fall apart most clearly into two groups (least variance inside); none where they do not.
std::optional<std::size_t> cut_of(std::span<const Sorted> sorted) {
  std::optional<std::size_t> best;
  double most = 0.0;
  for (std::size_t i = kLeastOfASection; i + kLeastOfASection <= sorted.size(); ++i) {
    const double apart = mean_of(sorted.subspan(i)) - mean_of(sorted.first(i));
    const double between = static_cast<double>(i * (sorted.size() - i)) * apart * apart;
    if (best && between <= most) continue;
    best = i;
    most = between;
  }
  if (!best) return best;
  const auto low = sorted.first(*best), high = sorted.subspan(*best);
  const double apart = mean_of(high) - mean_of(low);
  const double scatter = std::sqrt(0.5 * (variance_of(low) + variance_of(high)));
  const bool two = apart >= std::log(kOtherWidth) && apart >= kApart * scatter;
  return two ? best : std::nullopt;
}

}  // namespace

RobustChannel robust_channel(std::span<const ChannelMeasurement> measured) {
  const std::vector<double> ln_q = logs(measured, flow_of);
  const std::vector<bool> alone = alone_in_flow(ln_q);
  std::vector<bool> far(measured.size(), false);
  const Channel published;
  mark_far(off_the_line(ln_q, logs(measured, width_of), published.b), alone, far);
  mark_far(off_the_line(ln_q, logs(measured, depth_of), published.f), alone, far);
  mark_far(off_the_line(ln_q, logs(measured, speed_of), published.m), alone, far);

  const bool none_is_the_rule = std::ranges::count(far, true) * 2 > std::ranges::ssize(far);
  if (none_is_the_rule) far.assign(far.size(), false);
  RobustChannel fit;
  std::vector<ChannelMeasurement> kept;
  for (std::size_t i = 0; i < measured.size(); ++i) {
    if (far[i]) {
      fit.outliers.push_back(i);
    } else {
      kept.push_back(measured[i]);
    }
  }
  fit.channel = channel_through(kept);
  return fit;
}

std::vector<std::vector<std::size_t>> sections_by_width(std::span<const ChannelMeasurement> measured) {
  std::vector<std::size_t> all(measured.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  if (measured.size() < 2 * kLeastOfASection) return {all};
  const auto off = off_the_line(logs(measured, flow_of), logs(measured, width_of), Channel{}.b);
  std::vector<Sorted> sorted;
  for (const std::size_t i : all) sorted.push_back({off[i], i});
  std::ranges::stable_sort(sorted, {}, &Sorted::off);
  const auto cut = cut_of(sorted);
  if (!cut) return {all};

  std::vector<std::vector<std::size_t>> sections;
  const std::span<const Sorted> whole(sorted);
  for (const auto group : {whole.first(*cut), whole.subspan(*cut)}) {
    std::vector<std::size_t> rows;
    for (const Sorted& s : group) rows.push_back(s.row);
    std::ranges::sort(rows);
    std::vector<ChannelMeasurement> of_group;
    for (const std::size_t row : rows) of_group.push_back(measured[row]);
    for (auto& inner : sections_by_width(of_group)) {
      for (std::size_t& i : inner) i = rows[i];
      sections.push_back(std::move(inner));
    }
  }
  std::ranges::stable_sort(sections, std::ranges::greater{}, [](const auto& s) { return s.size(); });
  return sections;
}

}  // namespace floatwright
