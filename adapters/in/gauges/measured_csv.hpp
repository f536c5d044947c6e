#pragma once
// CSV that a person wrote of what they measured: the first row names the columns, each quantity's with its unit behind it
// as in depth_ft. A column without a unit, or with one of another quantity, is not that column.
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/in/files/csv_rows.hpp"

namespace floatwright {

enum class ColumnOf { Flows, Lengths, Speeds };  // m3/s, m, m/s

class MeasuredCsv {
 public:
  explicit MeasuredCsv(std::string_view bytes);  // the bytes outlive this

  struct Column {
    std::size_t at = 0;
    double factor = 1.0;  // to SI
  };
  // The column of one of these names with a unit of that quantity.
  [[nodiscard]] std::optional<Column> find(std::initializer_list<std::string_view> names, ColumnOf quantity) const;
  // The column of one of these names as it stands.
  [[nodiscard]] std::optional<std::size_t> find(std::initializer_list<std::string_view> names) const;
  [[nodiscard]] std::string header() const;  // printable, "date, depth_ft"

  [[nodiscard]] bool next() { return rows_.next(fields_); }
  [[nodiscard]] std::string_view cell(std::optional<std::size_t> column) const;  // trimmed; empty without the column
  [[nodiscard]] std::optional<double> si(Column column) const;
  [[nodiscard]] int line() const { return rows_.line(); }
  [[nodiscard]] bool sound() const { return rows_.fault().empty(); }

 private:
  CsvRows rows_;
  std::vector<std::string> header_, fields_;
};

}  // namespace floatwright
