#include "adapters/out/pdf/rod_mark.hpp"

#include <algorithm>
#include <array>
#include <numbers>
#include <vector>

#include "adapters/out/figure/drawing.hpp"

namespace floatwright {
namespace {

constexpr double kBoxMargin = 3.0;      // points, left and right of a name in its box
constexpr double kMostNameWidth = 90.0;
const Style kName{kBody, false, 1};

struct Shape {
  const char* mark;
  std::vector<DrawnPoint> outline;  // in a square of side 1, y down
};

const std::array<Shape, 3>& polygons() {
  static const std::array<Shape, 3> kShapes{{
      {"square", {{0.08, 0.08}, {0.92, 0.08}, {0.92, 0.92}, {0.08, 0.92}}},
      {"triangle", {{0.5, 0.03}, {1.0, 0.93}, {0.0, 0.93}}},
      {"diamond", {{0.5, 0.0}, {0.92, 0.5}, {0.5, 1.0}, {0.08, 0.5}}},
  }};
  return kShapes;
}

void fill_polygon(cairo_t* pen, const std::vector<DrawnPoint>& outline, double x, double y, double side) {
  cairo_new_path(pen);
  for (const DrawnPoint p : outline) cairo_line_to(pen, x + p.x * side, y + p.y * side);
  cairo_close_path(pen);
  cairo_fill(pen);
}

// A ring, so that at arm's length it is not taken for a square.
void draw_circle(cairo_t* pen, double x, double y, double side) {
  const double width = 0.16 * side;
  cairo_set_line_width(pen, width);
  cairo_new_sub_path(pen);
  cairo_arc(pen, x + side / 2, y + side / 2, (side - width) / 2, 0.0, 2.0 * std::numbers::pi);
  cairo_stroke(pen);
}

void draw_cross(Ink& ink, double x, double y, double side) {
  const double in = 0.12 * side, width = 0.2 * side;
  ink.rule(x + in, y + in, x + side - in, y + side - in, width);
  ink.rule(x + in, y + side - in, x + side - in, y + in, width);
}

bool has_shape(const std::string& mark) {
  for (const Shape& shape : polygons())
    if (mark == shape.mark) return true;
  return mark == "circle" || mark == "cross";
}

double name_width(const Ink& ink, const std::string& mark) {
  return std::min(ink.size(mark, kName).width + 1.0, kMostNameWidth);
}

void draw_name(Ink& ink, const std::string& mark, double x, double y, double height) {
  const double width = name_width(ink, mark);
  const double text_height = ink.line_height(kName);
  ink.text(x + kBoxMargin, y + (height - text_height) / 2, width, mark, kName);
  const double box = std::max(height, text_height);
  ink.box(x, y + (height - box) / 2, width + 2 * kBoxMargin, box, 1.0);
}

}  // namespace

void draw_mark(Ink& ink, const std::string& mark, double x, double y, double height) {
  if (mark.empty()) return;
  if (!has_shape(mark)) return draw_name(ink, mark, x, y, height);
  if (mark == "circle") return draw_circle(ink.pen(), x, y, height);
  if (mark == "cross") return draw_cross(ink, x, y, height);
  for (const Shape& shape : polygons())
    if (mark == shape.mark) fill_polygon(ink.pen(), shape.outline, x, y, height);
}

double mark_width(const Ink& ink, const std::string& mark, double height) {
  if (mark.empty()) return 0.0;
  return has_shape(mark) ? height : name_width(ink, mark) + 2 * kBoxMargin;
}

}  // namespace floatwright
