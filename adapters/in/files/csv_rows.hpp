#pragma once
// The rows of comma-separated text, one at a time: RFC 4180 (quoted fields, a quote in them doubled, line breaks inside
// them), with any separator, LF as well as CRLF, a byte order mark before the first row, and blank lines passed over.
#include <string>
#include <string_view>
#include <vector>

namespace floatwright {

class CsvRows {
 public:
  explicit CsvRows(std::string_view text, char separator = ',');  // the text outlives this

  // The next row; false at the end. Blanks beside a separator belong to the field.
  [[nodiscard]] bool next(std::vector<std::string>& fields);
  [[nodiscard]] int line() const { return line_; }  // where the row begins, from 1
  // Why the row last given is not to be trusted; empty when it is sound.
  [[nodiscard]] const std::string& fault() const { return fault_; }

 private:
  void take_field(std::string& field);
  void take_quoted(std::string& field);
  [[nodiscard]] bool at_row_end() const;

  std::string_view rest_;
  char separator_;
  int line_ = 0, next_line_ = 1;
  std::string fault_;
};

}  // namespace floatwright
