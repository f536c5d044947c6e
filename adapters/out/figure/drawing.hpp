#pragma once
// A picture as strokes, areas and words, drawn once and put on paper (cairo) and on a screen (SVG) alike. Black on white
// only: an area is told apart by its hatching. Coordinates are points of 1/72 inch, y down from the upper left corner.
#include <map>
#include <string>
#include <variant>
#include <vector>

namespace floatwright {

struct DrawnPoint {
  double x = 0.0, y = 0.0;
};
struct Stroke {
  std::vector<DrawnPoint> points;
  double width = 1.0;
  bool dashed = false;
};
// Filled with slanted lines and not outlined; a Stroke around it draws the outline.
struct HatchedArea {
  std::vector<DrawnPoint> outline;
  double spacing = 5.0;
};
enum class TextAnchor { Start, Middle, End };
struct Words {
  DrawnPoint at;  // of the base line, at the anchor
  std::string text;
  double size = 13.0;
  TextAnchor anchor = TextAnchor::Start;
  bool bold = false;
};
using Drawn = std::variant<Stroke, HatchedArea, Words>;

struct Drawing {
  double width = 0.0, height = 0.0;
  std::vector<Drawn> marks;  // the later over the earlier
};
using Drawings = std::map<std::string, Drawing>;  // by Figure::name

}  // namespace floatwright
