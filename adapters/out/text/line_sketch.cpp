#include "adapters/out/text/line_sketch.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr int kColumns = 62, kLeastRows = 6, kMostRows = 12;
constexpr double kCellHeight = 2.0;  // widths
constexpr Length kMostOnTop = metres(1.5), kBeyondFly = metres(0.3);

class Sketch {
 public:
  explicit Sketch(const LineOverBed& line) : line_(line) {
    const Length on_top = std::min(line.shape.on_top, kMostOnTop);
    left_ = on_top.si();
    const double along = left_ + (line.shape.points.back().away + kBeyondFly).si();  // m
    columns_per_metre_ = kColumns / along;
    const double true_rows = line.water.si() * columns_per_metre_ / kCellHeight;
    if (true_rows > kMostRows) columns_per_metre_ *= kMostRows / true_rows;
    rows_ = std::clamp(static_cast<int>(std::lround(true_rows)), kLeastRows, kMostRows);
    stretched_ = rows_ / std::min(true_rows, static_cast<double>(kMostRows));
    canvas_.assign(static_cast<std::size_t>(rows_) + 1, std::string(kColumns, ' '));
  }

  std::vector<std::string> lines(UnitSystem units) {
    hatch();
    for (std::size_t c = 0; c < canvas_[0].size(); ++c) canvas_[0][c] = c < column(0.0) ? '_' : '~';
    draw_line();
    std::vector<std::string> out = canvas_;
    out.push_back(std::string(kColumns, '='));
    for (std::string& one : out) one.erase(one.find_last_not_of(' ') + 1);
    label(out, units);
    out.push_back(fmt::format("~ surface  _ line on it  o fly{}  = bed{}", line_.zone_depth < line_.water ? "  : where the fish take" : "",
                              stretched_ > 1.3 ? fmt::format("  (heights x {:.1f})", stretched_) : ""));
    return out;
  }

 private:
  [[nodiscard]] std::size_t column(double away) const {
    return static_cast<std::size_t>(
        std::clamp(std::lround((left_ + away) * columns_per_metre_), 0L, long{kColumns} - 1));
  }
  // 0 the surface's own row; the bed's stands under the last.
  [[nodiscard]] std::size_t row(double depth) const {
    return static_cast<std::size_t>(
        std::clamp(std::lround(depth / line_.water.si() * rows_), 0L, static_cast<long>(rows_)));
  }

  void hatch() {
    if (!(line_.zone_depth < line_.water)) return;
    for (std::size_t r = row(line_.zone_depth.si()); r < canvas_.size(); ++r)
      for (std::size_t c = r % 3; c < canvas_[r].size(); c += 3) canvas_[r][c] = ':';
  }

  // Stepped finer than a cell, each cell by the slope there.
  void draw_line() {
    const auto& points = line_.shape.points;
    for (std::size_t i = 1; i < points.size(); ++i) {
      const double dx = (points[i].away - points[i - 1].away).si(),
                   dy = (points[i].depth - points[i - 1].depth).si();  // m
      const double rows_per_column = dx > 0.0 ? dy / line_.water.si() * rows_ / (dx * columns_per_metre_) : 9.0;
      const char key = rows_per_column > 2.0     ? '|'
                       : rows_per_column > 0.35  ? '\\'
                       : rows_per_column < -0.35 ? '/'
                                                 : '-';
      const int steps = 1 + static_cast<int>(std::hypot(dx * columns_per_metre_, dy / line_.water.si() * rows_) * 4.0);
      for (int k = 0; k <= steps; ++k) {
        const double way = static_cast<double>(k) / steps;
        const std::size_t r = row(points[i - 1].depth.si() + way * dy);
        if (r > 0) canvas_[r][column(points[i - 1].away.si() + way * dx)] = key;
      }
    }
    canvas_[row(points.back().depth.si())][column(points.back().away.si())] = 'o';
  }

  void label(std::vector<std::string>& out, UnitSystem units) const {
    const Length fly = std::min(line_.shape.points.back().depth, line_.water);
    const std::size_t fly_row = std::min(row(fly.si()), out.size() - 2);
    out[fly_row].resize(kColumns, ' ');
    out[fly_row] += fmt::format("  fly {}", say_length(fly, units));
    out.back() += fmt::format("  bed {}", say_length(line_.water, units));
  }

  const LineOverBed& line_;
  double left_ = 0.0, columns_per_metre_ = 1.0, stretched_ = 1.0;
  int rows_ = kLeastRows;
  std::vector<std::string> canvas_;
};

}  // namespace

std::vector<std::string> line_sketch(const LineOverBed& line, UnitSystem units) {
  if (line.shape.points.size() < 2 || !(line.water > Length{})) return {};
  return Sketch(line).lines(units);
}

}  // namespace floatwright
