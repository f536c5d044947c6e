#pragma once
// Words, rules and shapes on a sheet or a picture, in points of 1/72 inch from its upper left corner; all black. Text is
// measured before it is drawn, so that a page is fitted first and printed after.
#include <string>

#include "adapters/out/figure/owned.hpp"
#include "adapters/result.hpp"

namespace floatwright {

inline constexpr double kBody = 13.0;  // points: the least a page is printed in
inline constexpr double kBig = 16.0;   // rods and the page's heading

struct Style {
  double size = kBody;
  bool bold = false;
  int most_lines = 0;  // further ones end in three dots; 0: as many as it takes
};
struct TextSize {
  double width = 0.0, height = 0.0;
};

class Ink {
 public:
  explicit Ink(cairo_t* pen);

  [[nodiscard]] TextSize size(const std::string& text, double width, const Style& style) const;  // wrapped at `width`
  [[nodiscard]] TextSize size(const std::string& text, const Style& style) const;                // in one line
  [[nodiscard]] double line_height(const Style& style) const;
  void text(double x, double y, double width, const std::string& text, const Style& style);  // from its upper edge
  void rule(double x0, double y0, double x1, double y1, double thickness);
  void box(double x, double y, double width, double height, double thickness);
  [[nodiscard]] cairo_t* pen() const { return pen_; }

 private:
  void lay(const std::string& text, double width, const Style& style) const;

  cairo_t* pen_;
  TextContext context_;
  Layout layout_;
};

// Family that every page is printed in, of the package fonts-dejavu-core.
inline constexpr const char* kFamily = "DejaVu Sans";
// An unknown family is replaced without a word, and with no font at all a page comes out empty: look first.
[[nodiscard]] bool font_is_there(const char* family);
[[nodiscard]] Failure font_missing(const char* what);  // of the family; `what` could not be made: "PDF"

}  // namespace floatwright
