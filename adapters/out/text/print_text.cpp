#include "adapters/out/text/print_text.hpp"

#include <algorithm>
#include <utility>

#include "adapters/out/text/text_table.hpp"
#include "adapters/out/text/width.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kPage = 78;  // columns
constexpr std::size_t kHang = 7;   // "PENCIL " and shorter labels
constexpr std::size_t kUnder = 2;  // a sentence of several goes on this much further in
constexpr std::size_t kRodText = 8;

std::string hung(const std::string& label) { return padded(label, std::max(kHang, columns(label) + 1)); }

// Sentences under one another beside a label.
void add_hung(std::vector<std::string>& out, const std::string& label, const std::vector<std::string>& sentences) {
  std::string before = label.empty() ? "" : hung(label);
  const std::size_t hang = columns(before);
  const std::size_t further = label.empty() ? 0 : kUnder;
  for (const std::string& sentence : sentences) {
    bool first = true;
    for (const std::string& line : wrapped(sentence, kPage - hang - further)) {
      out.push_back(before + (first ? "" : std::string(further, ' ')) + line);
      before.assign(hang, ' ');
      first = false;
    }
  }
}

class Printer {
 public:
  explicit Printer(const Sketches& sketches) : sketches_(sketches) {}
  void operator()(const Heading& heading) {
    const std::size_t used = columns(heading.left) + columns(heading.right);
    if (heading.right.empty()) {
      add_hung(lines_, "", {heading.left});
    } else if (used + 2 <= kPage) {
      lines_.push_back(heading.left + std::string(kPage - used, ' ') + heading.right);
    } else {
      add_hung(lines_, "", {heading.right, heading.left});
    }
  }
  void operator()(const Lines& block) { add_hung(lines_, block.label, block.lines); }
  void operator()(const PageTable& table) {
    for (std::string& line : table_lines(table, kPage)) lines_.push_back(std::move(line));
  }
  void operator()(const Rods& rods) {
    if (!rods.title.empty()) lines_.push_back(rods.title);
    for (const RodLine& rod : rods.rods) add_rod(rod);
    const std::string bag = padded(" bag", kRodText);
    for (std::size_t i = 0; i < rods.bag.size(); ++i)
      add_beside(i == 0 ? bag : std::string(kRodText, ' '), rods.bag[i]);
  }
  void operator()(const Figure& figure) {
    const auto sketch = sketches_.find(figure.name);
    if (sketch == sketches_.end()) return add_hung(lines_, "", {figure.alt});
    lines_.insert(lines_.end(), sketch->second.begin(), sketch->second.end());
  }
  void operator()(const PencilBoxes& boxes) {
    std::vector<std::string> rows;
    for (const std::string& label : boxes.labels) {
      const std::string box = label + " ________";
      const bool fits = !rows.empty() && kHang + columns(rows.back()) + 2 + columns(box) <= kPage;
      if (fits) rows.back() += "  " + box;
      if (!fits) rows.push_back(box);
    }
    add_hung(lines_, "PENCIL", rows);
  }
  void blank() {
    if (!lines_.empty() && !lines_.back().empty()) lines_.emplace_back();
  }
  [[nodiscard]] std::string text() const {
    std::string out;
    for (const std::string& line : lines_) out += line + "\n";
    return out;
  }

 private:
  void add_beside(const std::string& before, const std::string& text) {
    std::string head = before;
    for (const std::string& line : wrapped(text, kPage - columns(before))) {
      lines_.push_back(head + line);
      head.assign(columns(before), ' ');
    }
  }
  void add_rod(const RodLine& rod) {
    const std::string mark = rod.mark.empty() ? "" : drawn_mark(rod.mark) + " ";
    std::string before = padded(" " + mark + rod.letter + " ", kRodText);
    for (const std::string& line : rod.lines) {
      add_beside(before, line);
      before.assign(columns(before), ' ');
    }
  }

  const Sketches& sketches_;
  std::vector<std::string> lines_;
};

bool stands_alone(const Block& block) {
  return std::holds_alternative<PageTable>(block) || std::holds_alternative<Rods>(block) ||
         std::holds_alternative<Figure>(block);
}

// Labelled sentences stand close; tables, rods and a part's heading have air before and after.
bool blank_between(const Block& before, const Block& after) {
  if (const auto* heading = std::get_if<Heading>(&before)) return heading->level == 1 && stands_alone(after);
  if (std::holds_alternative<Heading>(after) || stands_alone(after)) return true;
  const auto* lines_before = std::get_if<Lines>(&before);
  const auto* lines_after = std::get_if<Lines>(&after);
  if (lines_after != nullptr && lines_after->label.empty())
    return lines_before != nullptr && !lines_before->label.empty();
  return stands_alone(before) || (lines_before != nullptr && lines_before->label.empty());
}

// A page's words have no control characters; should one get in, it does not reach the terminal.
std::string printable(std::string text) {
  for (char& c : text)
    if ((static_cast<unsigned char>(c) < 0x20 && c != '\n') || c == 0x7F) c = ' ';
  return text;
}

}  // namespace

std::string as_text(const Page& page, const Sketches& sketches) {
  Printer printer(sketches);
  for (std::size_t i = 0; i < page.blocks.size(); ++i) {
    if (i > 0 && blank_between(page.blocks[i - 1], page.blocks[i])) printer.blank();
    std::visit(printer, page.blocks[i]);
  }
  return printable(printer.text());
}

}  // namespace floatwright
