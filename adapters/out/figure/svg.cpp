#include "adapters/out/figure/svg.hpp"

#include <fmt/format.h>

#include "adapters/out/figure/hatching.hpp"

namespace floatwright {
namespace {

// XML 1.0: markup characters as entities, control characters that XML cannot hold as spaces.
std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '&': out += "&amp;"; break;
      case '<': out += "&lt;"; break;
      case '>': out += "&gt;"; break;
      case '"': out += "&quot;"; break;
      default: out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    }
  }
  return out;
}

const char* word_for(TextAnchor anchor) {
  return anchor == TextAnchor::Start ? "start" : anchor == TextAnchor::Middle ? "middle" : "end";
}

class Writer {
 public:
  void operator()(const Stroke& stroke) {
    std::string points;
    for (const DrawnPoint p : stroke.points) points += fmt::format("{}{:.2f},{:.2f}", points.empty() ? "" : " ", p.x, p.y);
    out_ += fmt::format(R"(<polyline points="{}" fill="none" stroke="black" stroke-width="{:.2f}"{}/>)" "\n", points,
                        stroke.width, stroke.dashed ? R"( stroke-dasharray="5 3")" : "");
  }
  void operator()(const HatchedArea& area) {
    for (const Stroke& line : hatching(area)) (*this)(line);
  }
  void operator()(const Words& words) {
    out_ += fmt::format(R"(<text x="{:.2f}" y="{:.2f}" font-size="{:.1f}" text-anchor="{}"{}>{}</text>)" "\n", words.at.x,
                        words.at.y, words.size, word_for(words.anchor), words.bold ? R"( font-weight="bold")" : "",
                        escaped(words.text));
  }
  [[nodiscard]] const std::string& out() const { return out_; }

 private:
  std::string out_;
};

}  // namespace

std::string as_svg(const Drawing& drawing, const std::string& alt) {
  Writer writer;
  for (const Drawn& mark : drawing.marks) std::visit(writer, mark);
  return fmt::format(
      R"(<svg xmlns="http://www.w3.org/2000/svg" width="{0:.0f}" height="{1:.0f}" viewBox="0 0 {0:.0f} {1:.0f}" )"
      R"(role="img" font-family="DejaVu Sans, sans-serif">)"
      "\n<title>{2}</title>\n"
      R"(<rect width="{0:.0f}" height="{1:.0f}" fill="white"/>)"
      "\n{3}</svg>\n",
      drawing.width, drawing.height, escaped(alt), writer.out());
}

}  // namespace floatwright
