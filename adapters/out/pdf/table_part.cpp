#include "adapters/out/pdf/table_part.hpp"

#include <algorithm>
#include <functional>
#include <numeric>
#include <utility>
#include <vector>

#include "adapters/out/pdf/rod_mark.hpp"

namespace floatwright {
namespace {

constexpr double kGap = 8.0, kAboveRow = 1.0, kBelowRow = 1.0, kHeavy = 1.2, kFine = 0.5;  // points
constexpr double kMarkHeight = 14.0;
constexpr int kMostLines = 4;  // of one cell
constexpr double kStep = 1.0;  // points by which a column gives way

using Row = std::vector<std::string>;

struct Columns {
  std::vector<double> left, width;
  double right = 0.0;  // end of the table
};

bool is_mark(const std::string& cell) { return cell.starts_with(kMarkCell); }
std::string mark_of(const std::string& cell) { return cell.substr(kMarkCell.size()); }

double cell_width(const Ink& ink, const std::string& cell, bool bold) {
  if (is_mark(cell)) return mark_width(ink, mark_of(cell), kMarkHeight);
  return ink.size(cell, {kBody, bold, 0}).width + 1.0;
}

double longest_word(const Ink& ink, const std::string& cell, bool bold) {
  if (is_mark(cell)) return cell_width(ink, cell, bold);
  double longest = 0.0;
  for (std::size_t at = 0; at < cell.size();) {
    const std::size_t end = std::min(cell.find(' ', at), cell.size());
    longest = std::max(longest, cell_width(ink, cell.substr(at, end - at), bold));
    at = end + 1;
  }
  return longest;
}

struct Wishes {
  std::vector<double> wanted, least;
};

// The last cell of a short row runs on and says nothing about its column.
void wish(Wishes& wishes, const Ink& ink, const Row& row, bool bold) {
  const std::size_t count = wishes.wanted.size();
  const std::size_t own = row.size() < count && !row.empty() ? row.size() - 1 : std::min(row.size(), count);
  for (std::size_t i = 0; i < own; ++i) {
    wishes.wanted[i] = std::max(wishes.wanted[i], cell_width(ink, row[i], bold));
    wishes.least[i] = std::max(wishes.least[i], longest_word(ink, row[i], bold));
  }
}

double sum(const std::vector<double>& widths) {
  double total = 0.0;
  for (const double width : widths) total += width + kGap;
  return total - (widths.empty() ? 0.0 : kGap);
}

// Widest first, whole words while that is enough; past that words are cut.
std::vector<double> fitted(Wishes wishes, double room) {
  for (const bool cut_words : {false, true}) {
    while (sum(wishes.wanted) > room) {
      double* widest = nullptr;
      for (std::size_t i = 0; i < wishes.wanted.size(); ++i) {
        const double floor = cut_words ? 4.0 * kStep : wishes.least[i];
        if (wishes.wanted[i] - kStep >= floor && (widest == nullptr || wishes.wanted[i] > *widest))
          widest = &wishes.wanted[i];
      }
      if (widest == nullptr) break;
      *widest -= kStep;
    }
  }
  return wishes.wanted;
}

Columns placed(std::vector<double> widths, const PrintedArea& area) {
  Columns columns{{}, std::move(widths), area.left + area.width};
  double at = area.left;
  for (const double width : columns.width) {
    columns.left.push_back(at);
    at += width + kGap;
  }
  return columns;
}

bool runs_on(const Row& row, std::size_t i, const Columns& columns) {
  return i + 1 == row.size() && row.size() < columns.width.size();
}

double width_of(const Row& row, std::size_t i, const Columns& columns) {
  return runs_on(row, i, columns) ? columns.right - columns.left[i] : columns.width[i];
}

double row_height(const Row& row, const Columns& columns, const Ink& ink, const Style& style) {
  double tallest = ink.line_height(style);
  for (std::size_t i = 0; i < std::min(row.size(), columns.width.size()); ++i)
    if (!is_mark(row[i])) tallest = std::max(tallest, ink.size(row[i], width_of(row, i, columns), style).height);
  return tallest;
}

double rows_height(const PageTable& table, const Columns& columns, const Ink& ink) {
  double height = 0.0;
  for (const Row& row : table.rows) height += row_height(row, columns, ink, {kBody, false, kMostLines});
  return height;
}

// Room moved from one of the two widest columns to the other, where that takes lines off the table.
Columns balanced(const PageTable& table, std::vector<double> widths, const Wishes& wishes, const PrintedArea& area,
                 const Ink& ink) {
  constexpr double kMostMoved = 40.0;  // points
  Columns best = placed(widths, area);
  if (widths.size() < 2) return best;
  std::vector<std::size_t> by_width(widths.size());
  std::iota(by_width.begin(), by_width.end(), std::size_t{0});
  std::ranges::stable_sort(by_width, std::ranges::greater{}, [&](std::size_t i) { return widths[i]; });
  const std::size_t a = by_width[0], b = by_width[1];
  double least = rows_height(table, best, ink);
  for (double moved = kStep; moved <= kMostMoved; moved += kStep) {
    for (const double sign : {-1.0, 1.0}) {
      std::vector<double> shifted = widths;
      shifted[a] += sign * moved;
      shifted[b] -= sign * moved;
      if (shifted[a] < wishes.least[a] || shifted[b] < wishes.least[b]) continue;
      Columns columns = placed(std::move(shifted), area);
      const double height = rows_height(table, columns, ink);
      if (height >= least - 0.5) continue;
      least = height;
      best = std::move(columns);
    }
  }
  return best;
}

Columns columns_of(const PageTable& table, const PrintedArea& area, const Ink& ink) {
  std::size_t count = table.head.size();
  if (count == 0)
    for (const Row& row : table.rows) count = std::max(count, row.size());
  Wishes wishes{std::vector<double>(count, 0.0), std::vector<double>(count, 0.0)};
  wish(wishes, ink, table.head, true);
  wish(wishes, ink, table.units, false);
  for (const Row& row : table.rows) wish(wishes, ink, row, false);
  const bool all_fits = sum(wishes.wanted) <= area.width;
  std::vector<double> widths = fitted(wishes, area.width);
  return all_fits ? placed(std::move(widths), area) : balanced(table, std::move(widths), wishes, area, ink);
}

void draw_row(Ink& ink, double y, const Row& row, const Columns& columns, const Style& style) {
  for (std::size_t i = 0; i < std::min(row.size(), columns.width.size()); ++i) {
    if (is_mark(row[i])) {
      draw_mark(ink, mark_of(row[i]), columns.left[i], y + 1.0, kMarkHeight);
    } else {
      ink.text(columns.left[i], y, width_of(row, i, columns), row[i], style);
    }
  }
}

Piece head_piece(const PageTable& table, const Columns& columns, const PrintedArea& area, const Ink& ink) {
  const Style bold{kBody, true, 1}, plain{kBody, false, 1};
  const bool has_units = std::any_of(table.units.begin(), table.units.end(), [](const auto& u) { return !u.empty(); });
  const double head = ink.line_height(bold), units = has_units ? ink.line_height(plain) : 0.0;
  return {head + units + kBelowRow, [=, row = table.head, unit_row = table.units](Ink& to, double y) {
            draw_row(to, y, row, columns, bold);
            if (has_units) draw_row(to, y + head, unit_row, columns, plain);
            const double below = y + head + units + kBelowRow;
            to.rule(area.left, below, area.left + area.width, below, kHeavy);
          }};
}

Piece row_piece(const Row& row, const Columns& columns, const PrintedArea& area, const Ink& ink) {
  const Style style{kBody, false, kMostLines};
  const double height = kAboveRow + row_height(row, columns, ink, style) + kBelowRow;
  const bool tells_what_to_do = row.size() < columns.width.size();
  return {height,
          [=](Ink& to, double y) {
            draw_row(to, y + kAboveRow, row, columns, style);
            to.rule(area.left, y + height, area.left + area.width, y + height, kFine);
          },
          !tells_what_to_do};
}

Part laid_out(const PageTable& table, const PrintedArea& area, const Ink& ink) {
  Part part{Worth::Rows, 4.0, {}, "row", 0, area.left};
  const Columns columns = columns_of(table, area, ink);
  if (!table.head.empty()) part.pieces.push_back(head_piece(table, columns, area, ink));
  for (const Row& row : table.rows) part.pieces.push_back(row_piece(row, columns, area, ink));
  return part;
}

// Units beside their heads in place of under them.
PageTable with_one_line_head(PageTable table) {
  for (std::size_t i = 0; i < std::min(table.head.size(), table.units.size()); ++i)
    if (!table.units[i].empty()) table.head[i] += " " + table.units[i];
  table.units.clear();
  return table;
}

}  // namespace

Part table_part(const PageTable& table, const PrintedArea& area, const Ink& ink) {
  Part two = laid_out(table, area, ink), one = laid_out(with_one_line_head(table), area, ink);
  return height_of(one, ink) < height_of(two, ink) ? one : two;
}

}  // namespace floatwright
