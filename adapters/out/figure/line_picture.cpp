#include "adapters/out/figure/line_picture.hpp"

#include <algorithm>

#include "adapters/out/figure/words_on_paper.hpp"
#include "engine/wording/line_words.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr double kMostDeep = 130.0, kUnderBed = 8.0, kAir = 4.0;   // points
constexpr double kHeavy = 2.0, kThin = 0.8, kFine = 0.5, kDot = 3.0;
constexpr Length kMostOnTop = metres(1.5), kBeyondFly = metres(0.3);

// Metres over the bed to points, the same both ways.
struct Scale {
  double left, surface, points_per_metre;
  [[nodiscard]] DrawnPoint at(Length away, Length depth) const {
    return {left + points_per_metre * away.si(), surface + points_per_metre * depth.si()};
  }
};

struct Label {
  double depth_y;
  std::string words;
};

class Picture {
 public:
  Picture(const LineOverBed& line, const std::vector<std::string>& heading, UnitSystem units, double width)
      : line_(line), heading_(heading), units_(units), size_(words_size(width)), labels_(labels()) {
    drawing_.width = width;
  }

  Drawing drawing() && {
    add_heading();
    set_scale();
    const double right = water_right_;
    const double top = scale_.surface, bed = scale_.at({}, line_.water).y, zone = scale_.at({}, line_.zone_depth).y;
    if (line_.zone_depth < line_.water) {
      drawing_.marks.push_back(HatchedArea{{{0, zone}, {right, zone}, {right, bed}, {0, bed}}, 7.0});
      stroke({{0, zone}, {right, zone}}, kFine, true);
    }
    stroke({{0, top}, {right, top}}, kThin);
    stroke({{0, bed}, {right, bed}}, kHeavy);
    add_line();
    add_labels();
    drawing_.height = std::max(bed, last_label_) + kUnderBed;
    return std::move(drawing_);
  }

 private:
  void stroke(std::vector<DrawnPoint> points, double width, bool dashed = false) {
    drawing_.marks.push_back(Stroke{std::move(points), width, dashed});
  }
  void words(DrawnPoint at, const std::string& text, bool bold = false) {
    drawing_.marks.push_back(Words{at, text, size_, TextAnchor::Start, bold});
  }

  void add_heading() {
    bool first = true;
    for (const std::string& said : heading_)
      for (const std::string& row : broken(said, drawing_.width, size_)) {
        words({0.0, y_ + size_}, row, first);
        y_ += line_of_words(size_);
        first = false;
      }
    y_ += line_of_words(size_);  // for "to the rod"
  }

  [[nodiscard]] Length on_top() const { return std::min(line_.shape.on_top, kMostOnTop); }
  [[nodiscard]] Length held(Length depth) const { return std::min(depth, line_.water); }  // no deeper than the bed
  [[nodiscard]] Length fly_depth() const { return held(line_.shape.points.back().depth); }

  [[nodiscard]] std::vector<std::string> labels() const {
    return {"fly " + say_length(fly_depth(), units_), "bed " + say_length(line_.water, units_)};
  }

  void set_scale() {
    double beside = 0.0;
    for (const std::string& label : labels_) beside = std::max(beside, about_width(label, size_));
    water_right_ = drawing_.width - beside - 3.0 * kAir;
    const double along = (on_top() + line_.shape.points.back().away + kBeyondFly).si();  // m
    const double scale = std::min(water_right_ / along, kMostDeep / line_.water.si());
    const double spare = std::max(0.0, water_right_ - scale * along);
    scale_ = {0.5 * spare + scale * on_top().si(), y_ + kAir, scale};
  }

  void add_line() {
    const DrawnPoint leaves = scale_.at({}, {});
    stroke({{0.0, leaves.y}, leaves}, kHeavy);
    words({0.0, leaves.y - kAir}, "to the rod");
    std::vector<DrawnPoint> under;
    for (const LineShape::Point& p : line_.shape.points) under.push_back(scale_.at(p.away, held(p.depth)));
    const DrawnPoint fly = under.back();
    stroke(std::move(under), kHeavy);
    stroke({{fly.x - kDot, fly.y}, {fly.x + kDot, fly.y}}, 2.0 * kDot);
  }

  // Beside what they name, the lower one moved down where two would touch.
  void add_labels() {
    const double fly_x = scale_.at(line_.shape.points.back().away, {}).x;
    double least = 0.0;
    const std::vector<Length> depths{fly_depth(), line_.water};
    for (std::size_t i = 0; i < labels_.size(); ++i) {
      const double at = scale_.at({}, depths[i]).y, y = std::max(at, least);
      stroke({{i == 0 ? fly_x : water_right_, at}, {water_right_ + kAir, y}}, kFine);
      words({water_right_ + 2.0 * kAir, y + 0.35 * size_}, labels_[i], i == 0);
      least = y + line_of_words(size_);
      last_label_ = y + 0.35 * size_;
    }
  }

  const LineOverBed& line_;
  const std::vector<std::string>& heading_;
  UnitSystem units_;
  double size_, y_ = 0.0, water_right_ = 0.0, last_label_ = 0.0;
  std::vector<std::string> labels_;
  Scale scale_{};
  Drawing drawing_;
};

bool can_be_drawn(const LineOverBed& line) { return line.shape.points.size() > 1 && line.water > Length{}; }

}  // namespace

std::optional<Drawing> line_picture(const LineOverBed& line, const std::vector<std::string>& heading, UnitSystem units,
                                    double width) {
  if (!can_be_drawn(line)) return std::nullopt;
  return Picture(line, heading, units, width).drawing();
}

std::optional<Drawing> line_picture(const Told& told, double width) {
  if (!line_figure(told)) return std::nullopt;  // what has no words has no picture
  return line_picture(told.floated->line->line, line_picture_heading(told), told.units, width);
}

}  // namespace floatwright
