#include "adapters/in/files/csv_rows.hpp"

#include <algorithm>

namespace floatwright {

CsvRows::CsvRows(std::string_view text, char separator) : rest_(text), separator_(separator) {
  constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
  if (rest_.starts_with(kByteOrderMark)) rest_.remove_prefix(kByteOrderMark.size());
}

bool CsvRows::at_row_end() const { return rest_.empty() || rest_.front() == '\n' || rest_.starts_with("\r\n"); }

bool CsvRows::next(std::vector<std::string>& fields) {
  fault_.clear();
  while (!rest_.empty() && at_row_end()) {
    rest_.remove_prefix(rest_.front() == '\r' ? 2 : 1);
    ++next_line_;
  }
  if (rest_.empty()) return false;
  line_ = next_line_;
  std::size_t count = 0;
  for (bool more = true; more; ++count) {
    if (count == fields.size()) fields.emplace_back();
    take_field(fields[count]);
    more = rest_.starts_with(separator_);
    if (more) rest_.remove_prefix(1);
  }
  fields.resize(count);
  if (!rest_.empty()) rest_.remove_prefix(1);
  ++next_line_;
  return true;
}

void CsvRows::take_field(std::string& field) {
  field.clear();
  const bool quoted = rest_.starts_with('"');
  if (quoted) take_quoted(field);
  const char ends[] = {separator_, '\n'};
  std::string_view plain = rest_.substr(0, rest_.find_first_of(std::string_view{ends, 2}));
  rest_.remove_prefix(plain.size());
  if (plain.ends_with('\r') && (rest_.empty() || rest_.front() == '\n')) plain.remove_suffix(1);
  if (quoted && !plain.empty()) fault_ = "text follows the closing quote of a field";
  field += plain;
}

void CsvRows::take_quoted(std::string& field) {
  rest_.remove_prefix(1);
  while (true) {
    const std::size_t quote = rest_.find('"');
    const std::string_view inside = rest_.substr(0, quote);
    next_line_ += static_cast<int>(std::count(inside.begin(), inside.end(), '\n'));
    field += inside;
    if (quote == std::string_view::npos) {
      fault_ = "a quoted field has no closing quote";
      rest_ = {};
      return;
    }
    rest_.remove_prefix(quote + 1);
    if (rest_.empty() || rest_.front() != '"') return;
    field += '"';
    rest_.remove_prefix(1);
  }
}

}  // namespace floatwright
