#include "adapters/out/text/text_table.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "adapters/out/text/width.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kIndent = 1, kGap = 2;
constexpr std::size_t kNarrowest = 8;  // no column of sentences is made narrower

using Row = std::vector<std::string>;

std::string drawn(const std::string& cell) {
  return cell.starts_with(kMarkCell) ? drawn_mark(cell.substr(kMarkCell.size())) : cell;
}

Row drawn_row(const Row& row) {
  Row out;
  for (const std::string& cell : row) out.push_back(drawn(cell));
  return out;
}

std::size_t longest_piece(const std::string& cell) {
  std::size_t longest = 0;
  for (std::string_view rest = cell; !rest.empty();) {
    const std::string_view piece = first_piece(rest);
    longest = std::max(longest, columns(piece));
    rest.remove_prefix(std::min(piece.size() + 1, rest.size()));
  }
  return longest;
}

// Only whole rows say how wide a column is: the last cell of a short row runs on over the rest.
std::size_t own_cells(const Row& row, std::size_t count) {
  return row.size() < count && !row.empty() ? row.size() - 1 : row.size();
}

struct Widths {
  std::vector<std::size_t> wanted, least;
};

Widths widths_of(const std::vector<Row>& rows, std::size_t count) {
  Widths widths{std::vector<std::size_t>(count, 0), std::vector<std::size_t>(count, 0)};
  for (const Row& row : rows) {
    for (std::size_t i = 0; i < std::min(own_cells(row, count), count); ++i) {
      widths.wanted[i] = std::max(widths.wanted[i], columns(row[i]));
      widths.least[i] = std::max(widths.least[i], longest_piece(row[i]));
    }
  }
  return widths;
}

std::size_t total(const std::vector<std::size_t>& widths) {
  std::size_t sum = kIndent;
  for (const std::size_t width : widths) sum += width + kGap;
  return sum - (widths.empty() ? 0 : kGap);
}

// Figures ("4 1/2") are short and stay whole; the widest column gives way first, down to its longest piece, and past
// that only when the page still does not hold the table.
std::vector<std::size_t> fitted(Widths widths, std::size_t page) {
  for (const bool cut_words : {false, true}) {
    while (total(widths.wanted) > page) {
      std::size_t widest = widths.wanted.size();
      for (std::size_t i = 0; i < widths.wanted.size(); ++i) {
        const std::size_t floor = cut_words ? std::size_t{1} : std::max(widths.least[i], kNarrowest);
        if (widths.wanted[i] > floor && (widest == widths.wanted.size() || widths.wanted[i] > widths.wanted[widest]))
          widest = i;
      }
      if (widest == widths.wanted.size()) break;
      --widths.wanted[widest];
    }
  }
  return widths.wanted;
}

std::string without_trailing_spaces(std::string line) {
  while (!line.empty() && line.back() == ' ') line.pop_back();
  return line;
}

void add_row(std::vector<std::string>& out, const Row& row, const std::vector<std::size_t>& widths, std::size_t page) {
  std::vector<std::vector<std::string>> cells;
  std::vector<std::size_t> starts;
  std::size_t at = kIndent, tallest = 1;
  for (std::size_t i = 0; i < std::min(row.size(), widths.size()); ++i) {
    const bool runs_on = i + 1 == row.size() && row.size() < widths.size();
    const std::size_t width = runs_on ? page - std::min(at, page - 1) : widths[i];
    cells.push_back(wrapped(row[i], std::max<std::size_t>(width, 1)));
    starts.push_back(at);
    tallest = std::max(tallest, cells.back().size());
    at += widths[i] + kGap;
  }
  for (std::size_t line = 0; line < tallest; ++line) {
    std::string text;
    for (std::size_t i = 0; i < cells.size(); ++i)
      if (line < cells[i].size()) text = padded(std::move(text), starts[i]) + cells[i][line];
    out.push_back(without_trailing_spaces(std::move(text)));
  }
}

}  // namespace

std::string drawn_mark(const std::string& name) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 5> kShapes{
      {{"square", "[#]"}, {"triangle", "/^\\"}, {"circle", "(O)"}, {"diamond", "<#>"}, {"cross", "[X]"}}};
  for (const auto& [shape, keys] : kShapes)
    if (name == shape) return std::string(keys);
  return name.empty() ? "" : "[" + name + "]";
}

std::vector<std::string> table_lines(const PageTable& table, std::size_t width) {
  std::vector<Row> rows;
  if (!table.head.empty()) rows.push_back(table.head);
  if (!table.units.empty()) rows.push_back(table.units);
  for (const Row& row : table.rows) rows.push_back(drawn_row(row));
  std::size_t count = table.head.size();
  if (count == 0)
    for (const Row& row : rows) count = std::max(count, row.size());
  const std::vector<std::size_t> widths = fitted(widths_of(rows, count), width);
  std::vector<std::string> lines;
  for (const Row& row : rows) add_row(lines, row, widths, width);
  return lines;
}

}  // namespace floatwright
