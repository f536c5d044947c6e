#include "adapters/out/figure/coverage_picture.hpp"

#include <algorithm>
#include <cmath>

#include "adapters/out/figure/axis.hpp"
#include "adapters/out/figure/words_on_paper.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr double kThin = 0.8, kFine = 0.4;  // points
constexpr double kRowHeight = 26.0, kBetweenRows = 8.0;
constexpr double kMostOfWidthForWords = 0.45;

double shown(Discharge flow, UnitSystem units) {
  return units == UnitSystem::Us ? in_cubic_feet_per_second(flow) : in_cubic_metres_per_second(flow);
}
Discharge flow_of(double figure, UnitSystem units) {
  return units == UnitSystem::Us ? cubic_feet_per_second(figure) : cubic_metres_per_second(figure);
}

struct Row {
  std::vector<std::string> words;  // one or two lines
  std::vector<double> heights;     // by flow step, 0 to 1
};

std::vector<std::size_t> in_order(const Coverage& found) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < found.lines.size(); ++i)
    if (found.lines[i].alone > 0.0) order.push_back(i);
  std::ranges::stable_sort(order, [&](std::size_t a, std::size_t b) {
    const LineCoverage &one = found.lines[a], &other = found.lines[b];
    return one.line.owned != other.line.owned ? one.line.owned : one.alone > other.alone;
  });
  return order;
}

// The first row is the fishing itself, its highest step as high as the row.
std::vector<Row> rows_of(const Coverage& found, const CoverageWords& words) {
  std::vector<Row> rows;
  double most = 0.0;
  for (const FlowStep& step : found.flows) most = std::max(most, step.share);
  Row fishing{{"All that could be fished", "highest where most days are"}, {}};
  for (const FlowStep& step : found.flows) fishing.heights.push_back(most > 0.0 ? step.share / most : 0.0);
  rows.push_back(std::move(fishing));
  for (const std::size_t i : in_order(found)) {
    const LineCoverage& line = found.lines[i];
    rows.push_back({{capitalised(say_considered(line.line, words.tackle, words.units)),
                     say_share(line.alone) + " in all" + (line.line.owned ? "" : ", not owned: adds " + say_share(line.only))},
                    line.by_flow});
  }
  return rows;
}

class Picture {
 public:
  Picture(const Coverage& found, const CoverageWords& words, double width)
      : found_(found), units_(words.units), rows_(rows_of(found, words)), size_(words_size(width)) {
    drawing_.width = width;
    double label = 0.0;
    for (const Row& row : rows_)
      for (const std::string& line : row.words) label = std::max(label, about_width(line, size_));
    const double left = std::min(label + 10.0, kMostOfWidthForWords * width);
    flows_ = {std::log(found.flows.front().from.si()), std::log(found.flows.back().to.si()), left, width - 2.0};
  }

  Drawing drawn() && {
    for (const char* said : {"What each line covers, by flow", "Height: share of the fishing at that flow. A full row is all of it."}) {
      for (const std::string& line : broken(said, drawing_.width, size_)) {
        words({0.0, y_ + size_}, line, TextAnchor::Start, y_ == 0.0);
        y_ += line_of_words(size_);
      }
    }
    y_ += kBetweenRows;
    const double top = y_;
    for (const Row& row : rows_) add(row);
    add_ticks(top);
    drawing_.height = y_ + 2.0 * line_of_words(size_) + 4.0;
    return std::move(drawing_);
  }

 private:
  void words(DrawnPoint at, const std::string& text, TextAnchor anchor, bool bold = false) {
    drawing_.marks.push_back(Words{at, text, size_, anchor, bold});
  }
  [[nodiscard]] double x(Discharge flow) const { return flows_.at(std::log(flow.si())); }

  void add(const Row& row) {
    const double room = std::max(kRowHeight, static_cast<double>(row.words.size()) * line_of_words(size_));
    const double bottom = y_ + room;
    for (std::size_t i = 0; i < row.words.size(); ++i)
      words({0.0, y_ + size_ + static_cast<double>(i) * line_of_words(size_)}, row.words[i], TextAnchor::Start);
    std::vector<DrawnPoint> outline{{flows_.start, bottom}};
    for (std::size_t i = 0; i < found_.flows.size(); ++i) {
      const double height = bottom - kRowHeight * row.heights[i];
      outline.push_back({x(found_.flows[i].from), height});
      outline.push_back({x(found_.flows[i].to), height});
    }
    outline.push_back({flows_.end, bottom});
    drawing_.marks.push_back(HatchedArea{outline, 4.0});
    drawing_.marks.push_back(Stroke{outline, kThin});
    drawing_.marks.push_back(Stroke{{{flows_.start, bottom}, {flows_.end, bottom}}, kFine});
    y_ = bottom + kBetweenRows;
  }

  // 1, 2 and 5 of every power of ten that the axis holds.
  void add_ticks(double top) {
    const double least = shown(found_.flows.front().from, units_), most = shown(found_.flows.back().to, units_);
    double last = -1e9;
    for (double ten = std::pow(10.0, std::floor(std::log10(least))); ten <= most; ten *= 10.0) {
      for (const double figure : {1.0, 1.5, 2.0, 3.0, 5.0, 7.0}) {
        const double flow = figure * ten;
        const std::string said = flow_figure(flow_of(flow, units_), units_);
        const double at = x(flow_of(flow, units_)), half = about_width(said, size_) / 2.0;
        if (flow < least || flow > most || at - half < last + 4.0 || at + half > drawing_.width) continue;
        drawing_.marks.push_back(Stroke{{{at, top}, {at, y_}}, kFine, true});
        words({at, y_ + size_ + 2.0}, said, TextAnchor::Middle);
        last = at + half;
      }
    }
    words({flows_.start, y_ + line_of_words(size_) + size_ + 2.0}, "flow of the river there, " + flow_unit(units_), TextAnchor::Start);
  }

  const Coverage& found_;
  UnitSystem units_;
  std::vector<Row> rows_;
  double size_, y_ = 0.0;
  Axis flows_;  // of the logarithm of m3/s
  Drawing drawing_;
};

}  // namespace

Drawing coverage_picture(const Coverage& found, const CoverageWords& words, double width) {
  if (found.flows.empty()) return {width, line_of_words(words_size(width)), {}};
  return Picture(found, words, width).drawn();
}

std::string coverage_picture_alt(const Coverage& found, const CoverageWords& words) {
  std::string alt = "What each line covers, by flow.";
  for (const std::size_t i : in_order(found))
    alt += " " + capitalised(say_considered(found.lines[i].line, words.tackle, words.units)) + ": " +
           say_share(found.lines[i].alone) + " in all.";
  return alt;
}

}  // namespace floatwright
