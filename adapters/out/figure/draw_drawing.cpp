#include "adapters/out/figure/draw_drawing.hpp"

#include "adapters/out/figure/hatching.hpp"

namespace floatwright {
namespace {

class Drawer {
 public:
  Drawer(Ink& ink, double left, double top) : ink_(ink), left_(left), top_(top) {}

  void operator()(const Stroke& stroke) {
    constexpr double kDash[] = {5.0, 3.0};
    cairo_t* pen = ink_.pen();
    cairo_new_path(pen);
    for (const DrawnPoint p : stroke.points) cairo_line_to(pen, left_ + p.x, top_ + p.y);
    cairo_set_dash(pen, kDash, stroke.dashed ? 2 : 0, 0.0);
    cairo_set_line_width(pen, stroke.width);
    cairo_stroke(pen);
    cairo_set_dash(pen, nullptr, 0, 0.0);
  }
  void operator()(const HatchedArea& area) {
    for (const Stroke& line : hatching(area)) (*this)(line);
  }
  void operator()(const Words& words) {
    const Style style{words.size, words.bold, 0};
    const TextSize size = ink_.size(words.text, style);
    const double share = words.anchor == TextAnchor::Start ? 0.0 : words.anchor == TextAnchor::Middle ? 0.5 : 1.0;
    constexpr double kAscent = 0.8;  // of the height of a line, down to the base line
    ink_.text(left_ + words.at.x - share * size.width, top_ + words.at.y - kAscent * size.height, -1.0, words.text, style);
  }

 private:
  Ink& ink_;
  double left_, top_;
};

}  // namespace

void draw_drawing(Ink& ink, const Drawing& drawing, double left, double top) {
  Drawer drawer(ink, left, top);
  for (const Drawn& mark : drawing.marks) std::visit(drawer, mark);
}

}  // namespace floatwright
