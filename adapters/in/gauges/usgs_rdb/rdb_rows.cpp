#include "adapters/in/gauges/usgs_rdb/rdb_rows.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "adapters/in/text/utf8.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/text_place.hpp"

namespace floatwright {
namespace {

void split_at_tabs(std::string_view line, std::vector<std::string_view>& fields) {
  fields.clear();
  while (true) {
    const std::size_t tab = line.find('\t');
    fields.push_back(trimmed(line.substr(0, tab)));
    if (tab == std::string_view::npos) return;
    line.remove_prefix(tab + 1);
  }
}

// "5s", "16N", "20d".
bool is_format(std::string_view field) {
  if (field.size() < 2 || std::string_view{"sdnSDN"}.find(field.back()) == std::string_view::npos) return false;
  field.remove_suffix(1);
  return field.find_first_not_of("0123456789") == std::string_view::npos;
}

std::optional<std::string> not_even_rdb(std::string_view bytes) {
  const std::string_view text = trimmed(bytes);
  if (text.empty()) return "empty; ask the service again";
  if (const auto bad = first_bad_utf8(bytes))
    return line_and_column(bytes, *bad) + ": not UTF-8, so its text is not certain";
  if (text.front() != '<') return std::nullopt;
  return fmt::format(
      "a web page or XML, not tab-separated text (it begins \"{}\"); the service may have moved, or the "
      "request was sent elsewhere",
      printable(text.substr(0, 20)));
}

}  // namespace

Result<RdbRows> RdbRows::begin(std::string_view bytes, const std::string& where) {
  const auto failure = [&](const std::string& what) {
    return tl::unexpected(Failure{where + ": " + what, kExitBadData});
  };
  if (const auto wrong = not_even_rdb(bytes)) return failure(*wrong);
  RdbRows out(bytes);
  const auto names = out.next_line();
  if (names && !out.take_head(*names))
    return failure(
        fmt::format("line {}: no line of formats (as \"5s\", \"20d\") under a line of column names, so this is "
                    "no RDB",
                    out.line_));
  return out;
}

std::optional<std::string_view> RdbRows::next_line() {
  while (!rest_.empty()) {
    const std::size_t end = std::min(rest_.find('\n'), rest_.size());
    std::string_view line = rest_.substr(0, end);
    rest_.remove_prefix(std::min(end + 1, rest_.size()));
    ++line_;
    if (line.ends_with('\r')) line.remove_suffix(1);
    if (line.starts_with('#')) {
      comments_.push_back(trimmed(line.substr(1)));
    } else if (!trimmed(line).empty()) {
      return line;
    }
  }
  return std::nullopt;
}

bool RdbRows::take_head(std::string_view line) {
  split_at_tabs(line, columns_);
  ++table_;
  const auto formats = next_line();
  if (!formats) return false;
  split_at_tabs(*formats, fields_);
  return fields_.size() == columns_.size() && std::all_of(fields_.begin(), fields_.end(), is_format);
}

bool RdbRows::next() {
  fault_.clear();
  auto line = next_line();
  if (line && !columns_.empty() && line->starts_with(fmt::format("{}\t", columns_.front()))) {
    if (take_head(*line)) {
      line = next_line();
    } else {
      fault_ = "no line of formats under a line of column names";
      return true;
    }
  }
  if (!line) return false;
  split_at_tabs(*line, fields_);
  const auto beyond =
      std::find_if(fields_.begin() + static_cast<std::ptrdiff_t>(std::min(columns_.size(), fields_.size())),
                   fields_.end(), [](std::string_view field) { return !field.empty(); });
  if (beyond != fields_.end())
    fault_ = fmt::format("{} fields where the head names {}", fields_.size(), columns_.size());
  return true;
}

std::optional<std::size_t> RdbRows::column(std::string_view name) const {
  const auto found = std::find(columns_.begin(), columns_.end(), name);
  if (found == columns_.end()) return std::nullopt;
  return static_cast<std::size_t>(found - columns_.begin());
}

std::string_view RdbRows::field(std::size_t column) const {
  return column < fields_.size() ? fields_[column] : std::string_view{};
}

std::string_view RdbRows::field(std::optional<std::size_t> column) const {
  return column ? field(*column) : std::string_view{};
}

std::string RdbRows::place() const { return fmt::format("line {}", line_); }

bool begins_as_rdb(std::string_view bytes) {
  return bytes.starts_with('#') || bytes.starts_with("agency_cd\t") || bytes.starts_with("INDEP\t");
}

}  // namespace floatwright
