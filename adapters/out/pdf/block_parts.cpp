#include "adapters/out/pdf/block_parts.hpp"

#include <algorithm>

#include "adapters/out/figure/draw_drawing.hpp"
#include "adapters/out/pdf/rod_mark.hpp"
#include "adapters/out/pdf/table_part.hpp"

namespace floatwright {
namespace {

constexpr double kAir = 4.0, kHang = 66.0, kHeavy = 1.6;     // points
constexpr double kLetterWidth = 20.0, kMarkHeight = 17.0;    // beside a rod
constexpr double kBoxHeight = 22.0, kLeastBox = 64.0;        // to write in
constexpr int kMostHeadLines = 3, kMostLines = 5, kMostRodLines = 3;

// What to watch for outlives where it came from.
Worth worth_of(const std::string& label) {
  if (label.empty()) return Worth::Kept;
  return label == "WATCH" || label == "CARE" || label == "HELP" ? Worth::Care : Worth::Sentences;
}

constexpr std::size_t kKeptCare = 3;  // the composer puts the heaviest first

class BlockLayout {
 public:
  BlockLayout(const Drawings& drawings, const PrintedArea& area, const Ink& ink) : drawings_(drawings), area_(area), ink_(ink) {}

  void operator()(const Heading& heading) {
    if (heading.level > 1) return add_title(heading.left);
    const Style style{kBig, true, kMostHeadLines};
    const double right = heading.right.empty() ? 0.0 : std::min(ink_.size(heading.right, style).width + 1.0, area_.width / 2);
    const double left = area_.width - right - (right > 0.0 ? 12.0 : 0.0);
    const double height = std::max(ink_.size(heading.left, left, style).height, ink_.line_height(style)) + 4.0;
    parts_.push_back({Worth::Kept, parts_.empty() ? 0.0 : kAir, {}, "", 0, area_.left});
    parts_.back().pieces.push_back({height, [=, area = area_](Ink& ink, double y) {
                                      ink.text(area.left, y, left, heading.left, style);
                                      if (right > 0.0)
                                        ink.text(area.left + area.width - right, y, right, heading.right, style);
                                      const double below = y + height - 1.0;
                                      ink.rule(area.left, below, area.left + area.width, below, kHeavy);
                                    }});
  }

  // The sentences of a label hang beside it. The first stays on the page, of what to watch for the first three, and all
  // that have no label.
  void operator()(const Lines& block) {
    const bool labelled = !block.label.empty();
    Part part{worth_of(block.label), labelled ? 1.5 : kAir, {}, "sentence", 0, area_.left};
    const std::size_t kept = part.worth == Worth::Care ? kKeptCare : 1;
    const Style style{kBody, false, kMostLines}, label_style{kBody, true, 1};
    if (labelled) part.text_left += std::max(kHang, ink_.size(block.label, label_style).width + 8.0);
    const double width = area_.left + area_.width - part.text_left;
    for (const std::string& line : block.lines) {
      const bool first = part.pieces.empty();
      part.pieces.push_back({ink_.size(line, width, style).height,
                             [=, area = area_, left = part.text_left, label = block.label](Ink& ink, double y) {
                               if (first && labelled) ink.text(area.left, y, left - area.left, label, label_style);
                               ink.text(left, y, width, line, style);
                             },
                             labelled && part.pieces.size() >= kept});
    }
    if (!part.pieces.empty()) parts_.push_back(std::move(part));
  }

  void operator()(const PageTable& table) { parts_.push_back(table_part(table, area_, ink_)); }

  void operator()(const Rods& rods) {
    if (!rods.title.empty()) add_title(rods.title);
    double marks = 0.0;
    for (const RodLine& rod : rods.rods) marks = std::max(marks, mark_width(ink_, rod.mark, kMarkHeight));
    const double left = area_.left + (marks > 0.0 ? marks + 8.0 : 0.0);
    const double text = left + kLetterWidth;
    Part part{Worth::Kept, 2.0, {}, "", 0, text};
    for (const RodLine& rod : rods.rods) add_rod(part, rod, left, text);
    for (std::size_t i = 0; i < rods.bag.size(); ++i) add_bag(part, rods.bag[i], i == 0, text);
    parts_.push_back(std::move(part));
  }

  void operator()(const Figure& figure) {
    const auto found = drawings_.find(figure.name);
    if (found == drawings_.end() || found->second.width > area_.width + 0.5) return;
    Part part{Worth::Picture, kAir, {}, "", 0, area_.left};
    part.pieces.push_back({found->second.height,
                           [this_drawing = found->second, left = area_.left](Ink& ink, double y) {
                             draw_drawing(ink, this_drawing, left, y);
                           },
                           true});
    parts_.push_back(std::move(part));
  }

  void operator()(const PencilBoxes& boxes) {
    Part part{Worth::Pencil, kAir, {}, "", 0, area_.left};
    std::vector<std::string> row;
    double used = 0.0;
    for (const std::string& label : boxes.labels) {
      const double wanted = label_width(label) + kLeastBox + kAir;
      if (!row.empty() && used + wanted > area_.width) {
        part.pieces.push_back(pencil_row(row));
        row.clear();
        used = 0.0;
      }
      row.push_back(label);
      used += wanted;
    }
    if (!row.empty()) part.pieces.push_back(pencil_row(row));
    parts_.push_back(std::move(part));
  }

  std::vector<Part> parts() && { return std::move(parts_); }

 private:
  void add_title(const std::string& title) {
    const Style style{kBody, true, 2};
    parts_.push_back({Worth::Kept, kAir, {}, "", 0, area_.left});
    parts_.back().pieces.push_back(
        {ink_.size(title, area_.width, style).height,
         [=, area = area_](Ink& ink, double y) { ink.text(area.left, y, area.width, title, style); }});
  }

  void add_rod(Part& part, const RodLine& rod, double left, double text) {
    const Style bold{kBig, true, 1}, plain{kBig, false, kMostRodLines};
    const double width = area_.left + area_.width - text;
    bool first = true;
    for (const std::string& line : rod.lines) {
      part.pieces.push_back({ink_.size(line, width, plain).height, [=, x = area_.left](Ink& ink, double y) {
                               if (first) draw_mark(ink, rod.mark, x, y + 1.0, kMarkHeight);
                               if (first) ink.text(left, y, text - left, rod.letter, bold);
                               ink.text(text, y, width, line, plain);
                             }});
      first = false;
    }
  }

  void add_bag(Part& part, const std::string& item, bool first, double text) {
    const Style style{kBody, false, 2};
    const double left = std::max(text, area_.left + 36.0), width = area_.left + area_.width - left;
    part.pieces.push_back({ink_.size(item, width, style).height, [=, x = area_.left](Ink& ink, double y) {
                             if (first) ink.text(x, y, left - x, "bag", style);
                             ink.text(left, y, width, item, style);
                           }});
  }

  [[nodiscard]] double label_width(const std::string& label) const { return ink_.size(label, {}).width + 5.0; }

  // The room that is left is shared out among the boxes.
  [[nodiscard]] Piece pencil_row(const std::vector<std::string>& labels) const {
    double words = 0.0;
    for (const std::string& label : labels) words += label_width(label) + kAir;
    const double box = std::max((area_.width - words + kAir) / static_cast<double>(labels.size()), kLeastBox / 2);
    const double down = (kBoxHeight - ink_.line_height({})) / 2;
    return {kBoxHeight + 4.0,
            [=, area = area_, widths = widths_of(labels)](Ink& ink, double y) {
              double x = area.left;
              for (std::size_t i = 0; i < labels.size(); ++i) {
                ink.text(x, y + down, area.width, labels[i], {kBody, false, 1});
                ink.box(x + widths[i], y, box, kBoxHeight, 0.8);
                x += widths[i] + box + kAir;
              }
            },
            true};
  }

  [[nodiscard]] std::vector<double> widths_of(const std::vector<std::string>& labels) const {
    std::vector<double> widths;
    for (const std::string& label : labels) widths.push_back(label_width(label));
    return widths;
  }

  const Drawings& drawings_;
  PrintedArea area_;
  const Ink& ink_;
  std::vector<Part> parts_;
};

}  // namespace

std::vector<Part> parts_of(const Page& page, const Drawings& drawings, const PrintedArea& area, const Ink& ink) {
  BlockLayout layout(drawings, area, ink);
  for (const Block& block : page.blocks) std::visit(layout, block);
  return std::move(layout).parts();
}

}  // namespace floatwright
