#pragma once
// A page of six kinds of block, made by a composer from a DayPlan and printed by text, HTML and PDF alike: words are
// decided once. All text is UTF-8.
#include <string>
#include <string_view>
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
// A row shorter than the head: its last cell runs on over the columns that are left. A cell that begins with kMarkCell
// is a rod's mark: the shape named after it is drawn ("mark:square").
inline constexpr std::string_view kMarkCell = "mark:";
struct PageTable {
  std::vector<std::string> head, units;  // units may be empty
  std::vector<std::vector<std::string>> rows;
};
struct RodLine {
  std::string mark;                // the shape's name; printers draw it
  std::string letter;              // A, B, C
  std::vector<std::string> lines;  // first line beside mark and letter, the rest under it
};
struct Rods {
  std::string title;
  std::vector<RodLine> rods;
  std::vector<std::string> bag;
  std::size_t bag_kept = 0;  // the first so many stay on a sheet that is full
};
struct Figure {
  std::string name, alt;  // drawn by adapters/out/figure
};
struct PencilBoxes {
  std::vector<std::string> labels;
};

using Block = std::variant<Heading, Lines, PageTable, Rods, Figure, PencilBoxes>;

struct Page {
  std::string title;
  std::vector<Block> blocks;
};

}  // namespace floatwright
