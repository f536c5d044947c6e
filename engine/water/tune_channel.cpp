#include "engine/water/tune_channel.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

#include "engine/statistics/quantile.hpp"
#include "engine/water/channel_fit.hpp"

namespace floatwright {
namespace {

using Rows = std::vector<ChannelMeasurement>;
using Indices = std::vector<std::size_t>;

constexpr double kHeld = 0.8, kNormal90 = 1.2816;  // the 10-90 spread; the normal law's 90th percentile
constexpr double kLeastScatter = 0.02;             // sd of ln

Rows rows_of(const std::vector<MeasuredVisit>& visits) {
  Rows rows;
  std::ranges::transform(visits, std::back_inserter(rows), &MeasuredVisit::channel);
  return rows;
}

Rows picked(const Rows& rows, const Indices& which) {
  Rows out;
  for (const std::size_t i : which) out.push_back(rows[i]);
  return out;
}

// The law of the section that was visited most.
Channel usual_channel(const Rows& rows) {
  return robust_channel(picked(rows, sections_by_width(rows).front())).channel;
}

struct Misses {
  std::vector<double> depth, speed;  // |ln(foretold/measured)|
};

void add_misses(const Channel& channel, const ChannelMeasurement& row, Misses& misses) {
  misses.depth.push_back(std::abs(std::log(mean_depth(channel, row.discharge) / row.mean_depth)));
  misses.speed.push_back(std::abs(std::log(mean_speed(channel, row.discharge) / row.mean_speed)));
}

Misses misses_of(const Channel& channel, const Rows& rows) {
  Misses misses;
  for (const auto& row : rows) add_misses(channel, row, misses);
  return misses;
}

struct Spread {
  double depth = 0.15, speed = 0.15;  // sd of ln
};

// Each half of the visits, in the order of time, foretold from the other.
Spread spread_of(const Rows& rows) {
  const auto half = rows.begin() + std::ranges::ssize(rows) / 2;
  const Rows early(rows.begin(), half), late(half, rows.end());
  Misses misses = misses_of(usual_channel(early), late);
  const Channel later = usual_channel(late);
  for (const auto& row : early) add_misses(later, row, misses);
  const auto sd = [](std::vector<double> of) {
    return std::max(kLeastScatter, quantile(std::move(of), kHeld) / kNormal90);
  };
  return {sd(std::move(misses.depth)), sd(std::move(misses.speed))};
}

// Least squares of ln depth and ln speed on ln flow, each by itself and as measured: what the fit is judged beside.
struct PlainLine {
  double mean_x = 0.0, mean_y = 0.0, slope = 0.0;
  [[nodiscard]] double at(double x) const { return mean_y + slope * (x - mean_x); }
};
template <class Of>
PlainLine plain_line(const Rows& rows, Of ln_of) {
  PlainLine line;
  const auto n = static_cast<double>(rows.size());
  for (const auto& row : rows) {
    line.mean_x += std::log(row.discharge.si()) / n;
    line.mean_y += ln_of(row) / n;
  }
  double xx = 0.0, xy = 0.0;
  for (const auto& row : rows) {
    const double off = std::log(row.discharge.si()) - line.mean_x;
    xx += off * off;
    xy += off * (ln_of(row) - line.mean_y);
  }
  if (xx > 0.0) line.slope = xy / xx;
  return line;
}
template <class Of>
double plain_error(const Rows& early, const Rows& late, Of ln_of) {
  const PlainLine line = plain_line(early, ln_of);
  std::vector<double> misses;
  for (const auto& row : late) misses.push_back(std::abs(line.at(std::log(row.discharge.si())) - ln_of(row)));
  return median(std::move(misses));
}

double share_within(const std::vector<double>& misses, double sd) {
  const auto held = std::ranges::count_if(misses, [&](double miss) { return miss <= kNormal90 * sd; });
  return static_cast<double>(held) / static_cast<double>(misses.size());
}

// All visits of both halves are judged, also those that contradict themselves; only the fit leaves these aside.
Measured<ChannelSkill> skill_of(const MeasuredVisits& visits) {
  std::vector<MeasuredVisit> all = visits.sound;
  all.insert(all.end(), visits.contradictory.begin(), visits.contradictory.end());
  std::ranges::stable_sort(all, {}, &MeasuredVisit::time);
  const auto half = all.begin() + std::ranges::ssize(all) / 2;
  const Rows early = rows_of({all.begin(), half}), late = rows_of({half, all.end()});
  std::vector<MeasuredVisit> sound;
  std::ranges::copy_if(visits.sound, std::back_inserter(sound), [&](const auto& v) { return v.time < half->time; });
  if (std::ranges::ssize(sound) < kLeastVisits || std::ranges::ssize(late) < kLeastVisits)
    return Absent{fmt::format("{} visits, too few to fit a half and judge the other", all.size())};

  const Rows fitted = rows_of(sound);
  const Misses misses = misses_of(usual_channel(fitted), late);
  const Spread stated = spread_of(fitted);
  ChannelSkill skill;
  skill.fitted = static_cast<int>(fitted.size());
  skill.judged = static_cast<int>(late.size());
  skill.from = half->time;
  skill.depth_error = median(misses.depth);
  skill.speed_error = median(misses.speed);
  skill.plain_depth_error = plain_error(early, late, [](const auto& m) { return std::log(m.mean_depth.si()); });
  skill.plain_speed_error = plain_error(early, late, [](const auto& m) { return std::log(m.mean_speed.si()); });
  skill.depth_held = share_within(misses.depth, stated.depth);
  skill.speed_held = share_within(misses.speed, stated.speed);
  return skill;
}

std::string why_far(const ChannelMeasurement& m) {
  return fmt::format("{:.3g} m wide, {:.3g} m deep and {:.3g} m/s at {:.3g} m3/s, far off the law", m.width.si(),
                     m.mean_depth.si(), m.mean_speed.si(), m.discharge.si());
}

FittedChannel fitted(const std::string& gauge, const Channel& c, const Spread& spread, std::size_t visits) {
  return {gauge, c.a, c.b, c.c, c.f, c.k, c.m, c.least, c.most, spread.depth, spread.speed, static_cast<int>(visits)};
}

void fit_sections(const std::vector<MeasuredVisit>& visits, ChannelTuning& tuning) {
  const Rows rows = rows_of(visits);
  for (const Indices& section : sections_by_width(rows)) {
    const Rows own = picked(rows, section);
    const RobustChannel fit = robust_channel(own);
    const std::size_t kept = own.size() - fit.outliers.size();
    if (tuning.channel.has_value()) {
      tuning.report.other_sections.push_back(fitted(tuning.report.gauge, fit.channel, spread_of(own), kept));
    } else {
      tuning.channel = fitted(tuning.report.gauge, fit.channel, spread_of(rows), kept);
    }
    for (const std::size_t i : fit.outliers) {
      const MeasuredVisit& visit = visits[section[i]];
      tuning.report.outliers.push_back({visit.visit, visit.time, why_far(visit.channel)});
    }
  }
  std::ranges::stable_sort(tuning.report.outliers, {}, &VisitLeftOut::time);
}

}  // namespace

ChannelTuning tune_channel(const ChannelTuningInputs& inputs) {
  const MeasuredVisits visits = measured_visits(inputs.visits);
  ChannelTuning tuning;
  ChannelReport& report = tuning.report;
  report.gauge = inputs.gauge;
  report.visits = static_cast<int>(visits.sound.size());
  report.left_out = visits.left_out;
  if (report.visits < kLeastVisits) {
    report.notes.push_back(fmt::format("{} sound visits, and a law wants {}", report.visits, kLeastVisits));
    tuning.channel = Absent{report.notes.back()};
    return tuning;
  }
  const auto skill = skill_of(visits);
  if (skill.has_value()) report.skill = *skill;
  if (!skill.has_value()) report.notes.push_back("not judged: " + skill.why_absent());
  fit_sections(visits.sound, tuning);
  return tuning;
}

}  // namespace floatwright
