#include "adapters/out/figure/hydrograph.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "adapters/out/figure/plot_frame.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr double kHeavy = 2.0, kThin = 0.8, kFine = 0.5;  // points
constexpr double kShare = 0.3, kLeastHeight = 120.0;      // of the plot, to the width
constexpr int kMostSteps = 5;
constexpr double kNearNothing = 0.3;  // a least flow under this share of the most: the axis begins at 0

double shown(Discharge flow, UnitSystem units) {
  return units == UnitSystem::Us ? in_cubic_feet_per_second(flow) : in_cubic_metres_per_second(flow);
}
Discharge flow_of(double figure, UnitSystem units) {
  return units == UnitSystem::Us ? cubic_feet_per_second(figure) : cubic_metres_per_second(figure);
}

struct Span {
  double least, most;
};

Span span_of(const FlowCourse& history, UnitSystem units) {
  Span span{std::numeric_limits<double>::max(), 0.0};
  for (const auto* pieces : {&history.past, &history.expected})
    for (const auto& piece : *pieces)
      for (const FlowKnown& row : piece) {
        span.least = std::min(span.least, shown(row.flow.low, units));
        span.most = std::max(span.most, shown(row.flow.high, units));
      }
  if (span.least < kNearNothing * span.most) span.least = 0.0;
  if (span.most - span.least < 0.1 * span.most) span.least = 0.9 * span.most;  // a flat river looks flat
  return span.most > 0.0 ? span : Span{0.0, 1.0};
}

void add_values(PlotWanted& wanted, const FlowCourse& history, UnitSystem units) {
  const Span span = span_of(history, units);
  const double step = round_step(span.most - span.least, kMostSteps);
  wanted.least = step * std::floor(span.least / step);
  wanted.most = step * std::ceil(span.most / step);
  for (const double value : multiples(step, wanted.least, wanted.most))
    wanted.ticks.push_back({value, flow_figure(flow_of(value, units), units)});
}

void add_rows(PlotWanted& wanted, const FlowCourse& history, const LocalClock& clock) {
  if (!history.hours.empty()) wanted.rows.push_back({history.there, history.hours});
  for (const DamFront& front : history.fronts)
    wanted.rows.push_back({fmt::format("{} from the dam, here {}", front.after > front.before ? "more" : "less",
                                       clock.ten_minutes_before(front.earliest) + "-" + clock.ten_minutes_after(front.latest)),
                           {{front.earliest, front.latest}}});
}

PlotWanted wanted_plot(const FlowCourse& history, UnitSystem units, const LocalClock& clock, double width) {
  PlotWanted wanted;
  wanted.width = width;
  wanted.height = std::max(kLeastHeight, kShare * width);
  wanted.from = history.from;
  wanted.to = history.to;
  wanted.heading = {"Flow at " + history.place + ", " + flow_unit(units),
                    "Line: from the readings. Dashes: expected. Hatched: one day in ten is lower, one in ten higher."};
  add_values(wanted, history, units);
  add_rows(wanted, history, clock);
  return wanted;
}

std::vector<DrawnPoint> line_of(const Plot& plot, const std::vector<FlowKnown>& piece, Discharge Band<Discharge>::*side,
                                UnitSystem units) {
  std::vector<DrawnPoint> line;
  for (const FlowKnown& row : piece) line.push_back(plot.at(row.at, shown(row.flow.*side, units)));
  return line;
}

void add_expected(Plot& plot, const std::vector<FlowKnown>& piece, UnitSystem units) {
  const auto low = line_of(plot, piece, &Band<Discharge>::low, units);
  const auto high = line_of(plot, piece, &Band<Discharge>::high, units);
  std::vector<DrawnPoint> outline = high;
  outline.insert(outline.end(), low.rbegin(), low.rend());
  auto& marks = plot.drawing.marks;
  marks.push_back(HatchedArea{std::move(outline), 5.0});
  marks.push_back(Stroke{low, kThin});
  marks.push_back(Stroke{high, kThin});
  marks.push_back(Stroke{line_of(plot, piece, &Band<Discharge>::best, units), kHeavy, true});
}

// A line down through the flow at an hour that is told over it.
void add_hour(Plot& plot, Instant t) {
  const double x = std::clamp(plot.at(t, 0.0).x, plot.hours.start, plot.hours.end);
  plot.drawing.marks.push_back(Stroke{{{x, plot.values.end}, {x, plot.values.start}}, kFine, true});
}

}  // namespace

Drawing hydrograph(const FlowCourse& history, UnitSystem units, const LocalClock& clock, double width) {
  Plot plot = framed_plot(wanted_plot(history, units, clock, width), clock);
  for (const auto& [from, to] : history.hours) {
    add_hour(plot, from);
    add_hour(plot, to);
  }
  for (const auto& piece : history.expected) add_expected(plot, piece, units);
  for (const auto& piece : history.past)
    plot.drawing.marks.push_back(Stroke{line_of(plot, piece, &Band<Discharge>::best, units), kHeavy});
  return std::move(plot.drawing);
}

}  // namespace floatwright
