#include "adapters/out/html/html_table.hpp"

#include <algorithm>

#include "adapters/out/html/html_text.hpp"
#include "adapters/out/html/tree.hpp"

namespace floatwright {
namespace {

std::string at(const std::vector<std::string>& cells, std::size_t i) { return i < cells.size() ? cells[i] : ""; }

// A unit in brackets explains the column as a whole and stands in the head only.
bool has_figures(const PageTable& table, std::size_t column) {
  const std::string unit = at(table.units, column);
  return !unit.empty() && unit.front() != '(';
}

std::size_t columns_of(const PageTable& table) {
  std::size_t count = table.head.size();
  for (const auto& row : table.rows) count = std::max(count, row.size());
  return count;
}

// The words before the first figure are the head of a row's block.
std::size_t last_of_head(const PageTable& table) {
  std::size_t column = 0;
  while (column + 1 < table.head.size() && !has_figures(table, column + 1)) ++column;
  return column;
}

std::string lower_ascii(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

bool is_number(const std::string& cell) {
  return !cell.empty() && ((cell.front() >= '0' && cell.front() <= '9') || cell.front() == '~');
}

void add_figure_cell(pugi::xml_node cell, const PageTable& table, std::size_t column, const std::string& text) {
  cell.append_attribute("class").set_value("n");
  add_element(cell, "span", lower_ascii(at(table.head, column)) + " ").append_attribute("class").set_value("k");
  add_words(cell, text);
  if (is_number(text))
    add_element(cell, "span", " " + at(table.units, column)).append_attribute("class").set_value("k");
}

void add_cell(pugi::xml_node row, const PageTable& table, std::size_t column, const std::string& text) {
  pugi::xml_node cell = row.append_child("td");
  if (text.starts_with(kMarkCell)) {
    const std::string words = shape_and_word(text.substr(kMarkCell.size()));
    add_words(cell, words);
    if (!words.starts_with("[")) cell.append_attribute("class").set_value("n");
  } else if (has_figures(table, column)) {
    add_figure_cell(cell, table, column, text);
  } else {
    add_words(cell, text);
    if (column == last_of_head(table)) cell.append_attribute("class").set_value("h");
    if (column < last_of_head(table)) cell.append_attribute("class").set_value("n");
  }
}

void add_run_on_cell(pugi::xml_node row, const std::string& text, std::size_t columns) {
  pugi::xml_node cell = add_element(row, "td", text);
  if (columns > 1) cell.append_attribute("colspan").set_value(static_cast<unsigned>(columns));
}

void add_row(pugi::xml_node body, const PageTable& table, const std::vector<std::string>& row, std::size_t columns) {
  if (row.empty()) return;
  pugi::xml_node tr = body.append_child("tr");
  if (row.front().empty()) tr.append_attribute("class").set_value("on");
  for (std::size_t i = 0; i < row.size(); ++i) {
    if (i > 0) add_words(tr, " ");  // where cells stand in a line of text, a line may end between them
    const bool runs_on = i + 1 == row.size() && row.size() < columns;
    if (runs_on)
      add_run_on_cell(tr, row[i], columns - i);
    else
      add_cell(tr, table, i, row[i]);
  }
}

void add_head(pugi::xml_node parent, const PageTable& table) {
  if (table.head.empty()) return;
  pugi::xml_node row = parent.append_child("thead").append_child("tr");
  for (std::size_t i = 0; i < table.head.size(); ++i) {
    const std::string unit = at(table.units, i);
    pugi::xml_node cell = add_element(row, "th", table.head[i] + (unit.empty() ? "" : " " + unit));
    cell.append_attribute("scope").set_value("col");
    if (i > last_of_head(table)) cell.append_attribute("class").set_value("w");
  }
}

}  // namespace

void add_table(pugi::xml_node parent, const PageTable& table) {
  if (table.head.empty() && table.rows.empty()) return;
  pugi::xml_node element = parent.append_child("table");
  add_head(element, table);
  const std::size_t columns = columns_of(table);
  if (table.rows.empty()) return;
  pugi::xml_node body = element.append_child("tbody");
  for (const auto& row : table.rows) add_row(body, table, row, columns);
}

}  // namespace floatwright
