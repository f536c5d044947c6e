#include "adapters/in/gauges/json_tree.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <vector>

#include "adapters/in/gauges/plain_text.hpp"

namespace floatwright {
namespace {

using Json = nlohmann::json;

// RFC 6901: ~ and / in a key are written ~0 and ~1.
std::string pointer_token(const std::string& key) {
  std::string out;
  for (const char c : key) out += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);
  return out;
}

// Reads the whole text without building anything, and stops at the first thing that is wrong.
class Inspector : public Json::json_sax_t {
 public:
  explicit Inspector(std::string_view bytes) : bytes_(bytes) {}
  [[nodiscard]] const std::string& trouble() const { return trouble_; }

  bool null() override { return value(); }
  bool boolean(bool) override { return value(); }
  bool number_integer(number_integer_t) override { return value(); }
  bool number_unsigned(number_unsigned_t) override { return value(); }
  bool number_float(number_float_t, const string_t&) override { return value(); }
  bool string(string_t&) override { return value(); }
  bool binary(binary_t&) override { return value(); }
  bool start_object(std::size_t) override { return open(true); }
  bool start_array(std::size_t) override { return open(false); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(string_t& name) override {
    Level& level = levels_.back();
    level.key = name;
    if (level.keys.insert(name).second) return true;
    trouble_ = fmt::format("{}: this key stands twice in one object, so its value is not certain", shown(place()));
    return false;
  }

  bool parse_error(std::size_t position, const std::string& last, const Json::exception& error) override {
    const std::string what = error.id == 406 ? "a number too large to be one" : "not JSON";
    const bool at_end = position >= bytes_.size() && error.id != 406;
    trouble_ =
        line_and_column(position) + ": " +
        (at_end ? "the text ends too early, it was cut short" : fmt::format("{} (found \"{}\")", what, shown(last)));
    return false;
  }

 private:
  struct Level {
    bool is_object = false;
    std::string key;
    std::size_t index = 0;
    std::set<std::string> keys;
  };

  bool value() {
    if (!levels_.empty() && !levels_.back().is_object) ++levels_.back().index;
    return true;
  }

  bool open(bool is_object) {
    if (levels_.size() >= static_cast<std::size_t>(kDeepestNesting)) {
      trouble_ = fmt::format("{}: nested deeper than {} levels", shown(place()), kDeepestNesting);
      return false;
    }
    levels_.push_back({.is_object = is_object, .key = {}, .index = 0, .keys = {}});
    return true;
  }

  bool close() {
    levels_.pop_back();
    return value();
  }

  [[nodiscard]] std::string place() const {
    std::string out;
    for (const Level& level : levels_)
      out += "/" + (level.is_object ? pointer_token(level.key) : std::to_string(level.index));
    return out;
  }

  [[nodiscard]] std::string line_and_column(std::size_t position) const {
    const std::string_view before = bytes_.substr(0, position > 0 ? position - 1 : 0);
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    const auto line_start = before.rfind('\n');
    const auto column = before.size() - (line_start == std::string_view::npos ? 0 : line_start + 1) + 1;
    return fmt::format("line {}, column {}", line, column);
  }

  std::string_view bytes_;
  std::vector<Level> levels_;
  std::string trouble_;
};

std::optional<std::string> not_even_json(std::string_view bytes) {
  const auto start = bytes.find_first_not_of(" \t\r\n");
  if (start == std::string_view::npos) return "empty; ask the service again";
  if (bytes[start] != '<') return std::nullopt;
  return fmt::format(
      "a web page or XML, not JSON (it begins \"{}\"); the service may have moved, or the request was sent "
      "elsewhere",
      shown(bytes.substr(start, 20)));
}

}  // namespace

Result<Json> json_tree(std::string_view bytes, const std::string& where) {
  if (const auto wrong = not_even_json(bytes)) return tl::unexpected(Failure{where + ": " + *wrong, kExitBadData});
  Inspector inspector(bytes);
  if (!Json::sax_parse(bytes.begin(), bytes.end(), &inspector))
    return tl::unexpected(Failure{where + ": " + inspector.trouble(), kExitBadData});
  return Json::parse(bytes.begin(), bytes.end());
}

}  // namespace floatwright
