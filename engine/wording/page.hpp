#pragma once
// A page of six kinds of block, made by a composer from a DayPlan and printed by text, HTML and PDF alike: words are
// decided once. All text is UTF-8.
#include <string>
#include <variant>
#include <vector>

namespace floatwright {

struct Heading {
  std::string left, right;
  int level = 1;  // 1 the page's, 2 a part's
};
struct Lines {
  std::vector<std::string> lines;  // wrapped by the printer
  std::string label;               // "CARE", hung at the left; may be empty
};
struct Table {
  std::vector<std::string> head, units;          // units may be empty
  std::vector<std::vector<std::string>> rows;
};
struct RodLine {
  std::string mark;                // the shape's name; printers draw it
  std::string letter;              // A, B, C
  std::vector<std::string> lines;  // first line beside the mark, the rest under it
};
struct Rods {
  std::string title;
  std::vector<RodLine> rods;
  std::vector<std::string> bag;
};
struct Figure {
  std::string name, alt;  // drawn by adapters/out/figure
};
struct PencilBoxes {
  std::vector<std::string> labels;
};

using Block = std::variant<Heading, Lines, Table, Rods, Figure, PencilBoxes>;

struct Page {
  std::string title;
  std::vector<Block> blocks;
};

}  // namespace floatwright
