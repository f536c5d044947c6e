#pragma once
// A block of a page laid out: pieces under one another, each with its height and how it is drawn. What may give way when
// a sheet is full is marked; print never shrinks.
#include <functional>
#include <string>
#include <vector>

#include "adapters/out/figure/ink.hpp"

namespace floatwright {

struct Piece {
  double height = 0.0;
  std::function<void(Ink&, double y)> draw;
  bool may_go = false;
};

// Which parts give way first.
enum class Worth { Picture, Sentences, Bag, Pencil, Care, Rows, Kept };

struct Part {
  Worth worth = Worth::Kept;
  double air = 0.0;  // before it
  std::vector<Piece> pieces;
  std::string counted;    // what a piece is called when some had to go: "sentence"
  std::size_t gone = 0;
  double text_left = 0.0;  // where "and 3 more sentences" stands
};

struct PrintedArea {  // of a sheet that is printed on
  double left = 0.0, top = 0.0, width = 0.0, height = 0.0;
};

[[nodiscard]] double height_of(const Part& part, const Ink& ink);
void draw(const Part& part, Ink& ink, double y);

// Takes pieces away, least vital first and the last of its part first, until the parts fit in `height` or nothing may
// go; each part then says how many went.
void fit(std::vector<Part>& parts, double height, const Ink& ink);

}  // namespace floatwright
