#include "adapters/out/pdf/block_parts.hpp"

#include <algorithm>

#include "adapters/out/figure/draw_drawing.hpp"
#include "adapters/out/pdf/rod_mark.hpp"
#include "adapters/out/pdf/table_part.hpp"

namespace floatwright {
namespace {

constexpr double kAir = 4.0, kHang = 66.0, kHeavy = 1.6;     // points
constexpr double kBetween = 12.0;                            // the two sides of a heading
constexpr double kLetterWidth = 20.0, kMarkHeight = 17.0;    // beside a rod
constexpr double kBoxHeight = 22.0, kLeastBox = 64.0;        // to write in
constexpr double kForNumbers = 28.0, kForWords = 3.0;        // 1 cm for "10:10" or "3 1/2"; a place takes so many of these
constexpr int kMostHeadLines = 3, kMostLines = 5, kMostRodLines = 3;

// What to watch for outlives where it came from.
Worth worth_of(const std::string& label) {
  if (label.empty() || label == "CHANGE") return Worth::Kept;
  return label == "WATCH" || label == "CARE" || label == "HELP" ? Worth::Care : Worth::Sentences;
}

constexpr std::size_t kKeptCare = 3;  // the composer puts the heaviest first

class BlockLayout {
 public:
  BlockLayout(const Drawings& drawings, const PrintedArea& area, const Ink& ink) : drawings_(drawings), area_(area), ink_(ink) {}

  void operator()(const Heading& heading) {
    if (heading.level > 1) return add_title(heading.left);
    const Style style{size_of(heading), true, kMostHeadLines};
    const double right = right_of(heading, style), left = area_.width - right - (right > 0.0 ? kBetween : 0.0);
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
    parts_.push_back(std::move(part));
    add_bag(rods, std::max(text, area_.left + 36.0));
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
    const double number = (area_.width - room_of(boxes.labels)) / (static_cast<double>(boxes.labels.size()) - 1.0 + kForWords);
    if (number >= kForNumbers) {
      part.pieces.push_back(pencil_row(boxes.labels, number, kForWords * number));
      parts_.push_back(std::move(part));
      return;
    }
    std::vector<std::string> row;
    double used = 0.0;
    for (const std::string& label : boxes.labels) {
      const double wanted = label_width(label) + kLeastBox + kAir;
      if (!row.empty() && used + wanted > area_.width) {
        part.pieces.push_back(even_row(row));
        row.clear();
        used = 0.0;
      }
      row.push_back(label);
      used += wanted;
    }
    if (!row.empty()) part.pieces.push_back(even_row(row));
    parts_.push_back(std::move(part));
  }

  std::vector<Part> parts() && { return std::move(parts_); }

 private:
  [[nodiscard]] double right_of(const Heading& heading, const Style& style) const {
    return heading.right.empty() ? 0.0 : std::min(ink_.size(heading.right, style).width + 1.0, area_.width / 2);
  }

  // A heading that is a little too long for one line is set as large as the rest.
  [[nodiscard]] double size_of(const Heading& heading) const {
    const auto fits = [&](double size) {
      const Style style{size, true, 1};
      return ink_.size(heading.left, style).width + kBetween + right_of(heading, style) <= area_.width;
    };
    return !fits(kBig) && fits(kBody) ? kBody : kBig;
  }

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

  void add_bag(const Rods& rods, double left) {
    if (rods.bag.empty()) return;
    const Style style{kBody, false, 2};
    const double width = area_.left + area_.width - left;
    Part part{Worth::Bag, 0.0, {}, "line", 0, left};
    for (const std::string& item : rods.bag) {
      const bool first = part.pieces.empty();
      part.pieces.push_back({ink_.size(item, width, style).height,
                             [=, x = area_.left](Ink& ink, double y) {
                               if (first) ink.text(x, y, left - x, "bag", style);
                               ink.text(left, y, width, item, style);
                             },
                             part.pieces.size() >= rods.bag_kept});
    }
    parts_.push_back(std::move(part));
  }

  [[nodiscard]] double label_width(const std::string& label) const { return ink_.size(label, {}).width + 5.0; }

  // What labels take of a row, with the air between them.
  [[nodiscard]] double room_of(const std::vector<std::string>& labels) const {
    double room = -kAir;
    for (const std::string& label : labels) room += label_width(label) + kAir;
    return room;
  }

  // The room that is left is shared out among the boxes.
  [[nodiscard]] Piece even_row(const std::vector<std::string>& labels) const {
    const double box = std::max((area_.width - room_of(labels)) / static_cast<double>(labels.size()), kLeastBox / 2);
    return pencil_row(labels, box, box);
  }

  [[nodiscard]] Piece pencil_row(const std::vector<std::string>& labels, double box, double first_box) const {
    const double down = (kBoxHeight - ink_.line_height({})) / 2;
    return {kBoxHeight + 4.0,
            [=, area = area_, widths = widths_of(labels)](Ink& ink, double y) {
              double x = area.left;
              for (std::size_t i = 0; i < labels.size(); ++i) {
                const double wide = i == 0 ? first_box : box;
                ink.text(x, y + down, area.width, labels[i], {kBody, false, 1});
                ink.box(x + widths[i], y, wide, kBoxHeight, 0.8);
                x += widths[i] + wide + kAir;
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
