#include "adapters/out/figure/plot_frame.hpp"

#include <algorithm>

#include "adapters/out/figure/words_on_paper.hpp"

namespace floatwright {
namespace {

constexpr double kFine = 0.4, kThin = 0.8, kBar = 4.0;  // points
class Framing {
 public:
  Framing(const PlotWanted& wanted, const LocalClock& clock) : wanted_(wanted), clock_(clock), size_(words_size(wanted.width)) {}

  Plot plot() && {
    add_heading();
    rows_top_ = y_;
    y_ += line() * static_cast<double>(wanted_.rows.size()) + 2.0;
    set_axes();
    add_values();
    add_hours();
    add_rows();
    plot_.drawing.width = wanted_.width;
    plot_.drawing.height = plot_.values.start + 2.0 * line() + 4.0;
    return std::move(plot_);
  }

 private:
  [[nodiscard]] double line() const { return line_of_words(size_); }
  void stroke(std::vector<DrawnPoint> points, double width, bool dashed = false) {
    plot_.drawing.marks.push_back(Stroke{std::move(points), width, dashed});
  }
  void words(DrawnPoint at, const std::string& text, TextAnchor anchor, bool bold = false) {
    plot_.drawing.marks.push_back(Words{at, text, size_, anchor, bold});
  }

  void add_heading() {
    for (const std::string& said : wanted_.heading)
      for (const std::string& row : broken(said, wanted_.width, size_)) {
        words({0.0, y_ + size_}, row, TextAnchor::Start, &said == &wanted_.heading.front());
        y_ += line();
      }
  }

  void set_axes() {
    double left = 0.0;
    for (const ValueTick& tick : wanted_.ticks) left = std::max(left, about_width(tick.figure, size_));
    const auto seconds = [](Instant t) { return static_cast<double>(t.time_since_epoch().count()); };
    plot_.hours = {seconds(wanted_.from), seconds(wanted_.to), left + 10.0, wanted_.width - 1.0};
    plot_.values = {wanted_.least, wanted_.most, y_ + wanted_.height, y_};
  }

  void add_values() {
    const Axis &x = plot_.hours, &y = plot_.values;
    for (const ValueTick& tick : wanted_.ticks) {
      const double at = y.at(tick.value);
      stroke({{x.start, at}, {x.end, at}}, kFine);
      words({x.start - 6.0, at + 0.35 * size_}, tick.figure, TextAnchor::End);
    }
    stroke({{x.start, y.end}, {x.start, y.start}, {x.end, y.start}, {x.end, y.end}}, kThin);
  }

  // The finest of these whose hours have room to be written.
  [[nodiscard]] int hours_between() const {
    const double hour = (plot_.hours.end - plot_.hours.start) * 3600.0 / (plot_.hours.most - plot_.hours.least);
    for (const int step : {1, 2, 3, 6, 12})
      if (step * hour >= about_width("00:00 ", size_)) return step;
    return 24;
  }

  void add_hours() {
    const int step = hours_between();
    const double under = plot_.values.start;
    constexpr Period kQuarter = std::chrono::minutes{15};  // the least by which zones differ
    const auto first = std::chrono::ceil<std::chrono::hours>(wanted_.from);
    for (Instant t = first; t <= wanted_.to; t += kQuarter) {
      const std::string face = clock_.minute(t).substr(0, 5);  // without the zone's name
      if (face.substr(2) != ":00" || std::stoi(face) % step != 0) continue;
      const double x = plot_.at(t, wanted_.least).x;
      const bool midnight = face == "00:00";
      stroke({{x, midnight ? plot_.values.end : under}, {x, under + 4.0}}, midnight ? kThin : kFine);
      const double half = about_width(face, size_) / 2.0;
      if (x - half >= 0.0 && x + half <= wanted_.width) words({x, under + 3.0 + size_}, face, TextAnchor::Middle);
      if (midnight && t < wanted_.to) day_after(t);
    }
    if (first < wanted_.to) day_of(wanted_.from, plot_.hours.start);
  }

  void day_after(Instant midnight) { day_of(midnight, plot_.at(midnight, wanted_.least).x); }

  // Under the hours, where the day is wide enough to hold its name.
  void day_of(Instant t, double left) {
    const Instant next = end_of_day(t);
    const double right = plot_.at(std::min(next, wanted_.to), wanted_.least).x;
    const std::string name = day_of_week(clock_.day(t));
    if (about_width(name, size_) > right - left) return;
    words({(left + right) / 2.0, plot_.values.start + 3.0 + line() + size_}, name, TextAnchor::Middle);
  }

  [[nodiscard]] Instant end_of_day(Instant t) const {
    Instant next = std::chrono::ceil<std::chrono::hours>(t + Period{1});
    while (clock_.day(next) == clock_.day(t)) next += std::chrono::minutes{15};
    return next;
  }

  void add_rows() {
    double y = rows_top_;
    for (const HoursRow& row : wanted_.rows) {
      const double middle = y + 0.55 * line();
      double first = wanted_.width, last = 0.0;
      for (const auto& [from, to] : row.bars) {
        const double left = std::max(plot_.at(from, 0.0).x, plot_.hours.start);
        const double right = std::min(plot_.at(to, 0.0).x, plot_.hours.end);
        stroke({{left, middle}, {right, middle}}, kBar);
        first = std::min(first, left);
        last = std::max(last, right);
      }
      const double room = about_width(row.words, size_) + 6.0;
      const bool before = first >= room || first >= wanted_.width - last;
      words({before ? std::max(first - 6.0, room - 6.0) : last + 6.0, y + size_}, row.words,
            before ? TextAnchor::End : TextAnchor::Start);
      y += line();
    }
  }

  const PlotWanted& wanted_;
  const LocalClock& clock_;
  double size_, y_ = 0.0, rows_top_ = 0.0;
  Plot plot_;
};

}  // namespace

Plot framed_plot(const PlotWanted& wanted, const LocalClock& clock) { return Framing(wanted, clock).plot(); }

}  // namespace floatwright
