#pragma once
// The rows of USGS RDB, tab-separated text: comments that begin with #, a line of column names, a line of formats
// ("5s 15s 20d 14n"; their widths bind nobody), then data. Fields at the end of a row may be left away; LF and CRLF
// both occur. An answer for several stations may be several such tables, one after the other.
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/result.hpp"

namespace floatwright {

class RdbRows {
 public:
  // At the first table's head. `where`: file or address, for the failure. The bytes outlive this.
  [[nodiscard]] static Result<RdbRows> begin(std::string_view bytes, const std::string& where);

  // The next row; false at the end. A new table's head is taken on the way: table() grows.
  [[nodiscard]] bool next();
  [[nodiscard]] int table() const { return table_; }  // 0: there are comments only
  [[nodiscard]] const std::vector<std::string_view>& columns() const { return columns_; }
  [[nodiscard]] std::optional<std::size_t> column(std::string_view name) const;
  [[nodiscard]] std::string_view field(std::size_t column) const;                 // trimmed; empty where left away
  [[nodiscard]] std::string_view field(std::optional<std::size_t> column) const;  // empty where there is no such column
  [[nodiscard]] std::string place() const;                                        // "line 12"
  // Why the row last given is not to be trusted; empty when it is sound.
  [[nodiscard]] const std::string& fault() const { return fault_; }
  // All met so far, without # and blanks before them.
  [[nodiscard]] const std::vector<std::string_view>& comments() const { return comments_; }

 private:
  explicit RdbRows(std::string_view bytes) : rest_(bytes) {}
  [[nodiscard]] std::optional<std::string_view> next_line();
  [[nodiscard]] bool take_head(std::string_view line);

  std::string_view rest_;
  std::vector<std::string_view> comments_, columns_, fields_;
  std::string fault_;
  int line_ = 0, table_ = 0;
};

[[nodiscard]] bool begins_as_rdb(std::string_view bytes);

}  // namespace floatwright
