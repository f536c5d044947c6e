#include "adapters/in/files/located_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <nlohmann/json.hpp>

#include "adapters/in/text/printable.hpp"
#include "adapters/in/text/utf8.hpp"

namespace floatwright {
namespace {

using Json = nlohmann::json;

struct ReadSoFar {
  int newlines = 0;
  bool ends_in_newline = false;
};

// Counts lines while the parser takes characters, so that each event knows how far the text was read.
class CountingIterator {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  CountingIterator(const char* at, ReadSoFar* so_far) : at_(at), so_far_(so_far) {}
  reference operator*() const { return *at_; }
  CountingIterator& operator++() {
    so_far_->ends_in_newline = *at_ == '\n';
    if (so_far_->ends_in_newline) ++so_far_->newlines;
    ++at_;
    return *this;
  }
  friend bool operator==(const CountingIterator& a, const CountingIterator& b) { return a.at_ == b.at_; }
  friend bool operator!=(const CountingIterator& a, const CountingIterator& b) { return a.at_ != b.at_; }

 private:
  const char* at_;
  ReadSoFar* so_far_;
};

// The line that holds a byte; past the end, the last line that holds anything but blanks.
int line_at(std::string_view text, std::size_t byte) {
  if (byte >= text.size()) byte = std::min(text.find_last_not_of(" \t\r\n"), text.size());
  return 1 + static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(byte), '\n'));
}

// "[json.exception.parse_error.101] parse error at line 3, column 7: syntax error while parsing X - Y" -> Y
std::string plain_reason(std::string_view what) {
  const std::size_t dash = what.find(" - ");
  const std::size_t bracket = what.find("] ");
  if (dash != std::string_view::npos) return std::string(what.substr(dash + 3));
  return std::string(bracket == std::string_view::npos ? what : what.substr(bracket + 2));
}

// A few characters either side, on the same line.
std::string around(std::string_view text, std::size_t byte) {
  constexpr std::size_t kBefore = 20, kAfter = 20;
  byte = std::min(byte, text.size());
  const std::size_t newline = byte == 0 ? std::string_view::npos : text.rfind('\n', byte - 1);
  const std::size_t line_begins = newline == std::string_view::npos ? 0 : newline + 1;
  const std::size_t begin = std::max(line_begins, byte - std::min(byte, kBefore));
  const std::size_t end = std::min({text.find('\n', byte), byte + kAfter, text.size()});
  return fmt::format("`{}`", printable(text.substr(begin, end - begin)));
}

// Builds the tree. Nesting is kept in a vector, not on the call stack, and ends at kDeepestNesting.
class TreeBuilder : public nlohmann::json_sax<Json> {
 public:
  TreeBuilder(std::string file, std::string_view text, const ReadSoFar& so_far)
      : file_(std::move(file)), text_(text), so_far_(so_far) {}

  bool null() override { return put(node(JsonKind::Null)); }
  bool boolean(bool value) override {
    LocatedJson truth = node(JsonKind::Boolean);
    truth.boolean = value;
    return put(std::move(truth));
  }
  bool number_integer(number_integer_t value) override { return number(static_cast<double>(value)); }
  bool number_unsigned(number_unsigned_t value) override { return number(static_cast<double>(value)); }
  bool number_float(number_float_t value, const string_t&) override { return number(value); }
  bool string(string_t& value) override {
    LocatedJson text = node(JsonKind::Text);
    text.text = std::move(value);
    return put(std::move(text));
  }
  bool binary(binary_t&) override { return false; }  // no such thing in JSON text
  bool start_object(std::size_t) override { return open(JsonKind::Object); }
  bool end_object() override { return close(); }
  bool start_array(std::size_t) override { return open(JsonKind::List); }
  bool end_array() override { return close(); }
  bool key(string_t& name) override {
    open_.back().key = std::move(name);
    open_.back().key_line = line();
    return true;
  }
  bool parse_error(std::size_t byte, const std::string&, const nlohmann::detail::exception& error) override {
    constexpr int kNumberOverflow = 406;
    const bool too_large = error.id == kNumberOverflow;
    const std::size_t at = byte == 0 ? 0 : byte - 1;
    tell(line_at(text_, at), "", printable(plain_reason(error.what()), 200) + " near " + around(text_, at),
         too_large ? "numbers up to about 1.8e308" : "JSON, in which // and /* */ comments may stand",
         too_large ? "Write a smaller number." : "Mend the text at this line or just before it.");
    return false;
  }

  ParsedJson finish() && { return {std::move(root_), std::move(problems_)}; }

 private:
  struct Open {
    LocatedJson node;
    std::string key;
    int key_line = 0;
  };

  [[nodiscard]] int line() const { return 1 + so_far_.newlines; }
  [[nodiscard]] LocatedJson node(JsonKind kind) const {
    LocatedJson made;
    made.kind = kind;
    made.line = line();
    return made;
  }
  bool number(double value) {
    LocatedJson made = node(JsonKind::Number);
    // After a number the parser has read one character more, which may have been the end of the line.
    if (so_far_.ends_in_newline) --made.line;
    made.number = value;
    return put(std::move(made));
  }
  bool open(JsonKind kind) {
    if (open_.size() == static_cast<std::size_t>(kDeepestNesting)) {
      tell(line(), "", fmt::format("more than {} brackets inside each other", kDeepestNesting),
           fmt::format("at most {}", kDeepestNesting), "Take the extra brackets away.");
      return false;
    }
    open_.push_back({node(kind), {}, 0});
    return true;
  }
  bool close() {
    LocatedJson done = std::move(open_.back().node);
    open_.pop_back();
    return put(std::move(done));
  }
  bool put(LocatedJson value) {
    if (open_.empty()) {
      root_ = std::move(value);
    } else if (open_.back().node.kind == JsonKind::List) {
      open_.back().node.items.push_back(std::move(value));
    } else if (!told_as_doubled()) {
      open_.back().node.members.emplace_back(open_.back().key, std::move(value));
    }
    return true;
  }
  bool told_as_doubled() {
    const Open& parent = open_.back();
    const auto is_it = [&](const auto& member) { return member.first == parent.key; };
    const auto first = std::find_if(parent.node.members.begin(), parent.node.members.end(), is_it);
    if (first == parent.node.members.end()) return false;
    tell(parent.key_line, pointer_to(pointer_of_open(), parent.key),
         fmt::format("the key \"{}\" again; it stands on line {} already", printable(parent.key), first->second.line),
         "each key once in an object", "Take one of the two away.");
    return true;
  }
  [[nodiscard]] std::string pointer_of_open() const {
    std::string pointer;
    for (std::size_t i = 0; i + 1 < open_.size(); ++i) {
      const LocatedJson& level = open_[i].node;
      pointer =
          level.kind == JsonKind::List ? pointer_to(pointer, level.items.size()) : pointer_to(pointer, open_[i].key);
    }
    return pointer;
  }
  void tell(int line, std::string pointer, std::string found, std::string allowed, std::string mend) {
    problems_.push_back({file_, line, std::move(pointer), std::move(found), std::move(allowed), std::move(mend)});
  }

  std::string file_;
  std::string_view text_;
  const ReadSoFar& so_far_;
  std::vector<Open> open_;
  std::optional<LocatedJson> root_;
  Problems problems_;
};

Problem bad_utf8(const std::string& file, std::string_view text, std::size_t byte) {
  return {file,
          line_at(text, byte),
          "",
          fmt::format("byte {:02X}, which is no UTF-8 there", static_cast<unsigned char>(text[byte])),
          "text in UTF-8",
          "Save the file as UTF-8."};
}

}  // namespace

ParsedJson parse_located_json(const std::string& file, std::string_view text) {
  if (const auto byte = first_bad_utf8(text)) return {std::nullopt, {bad_utf8(file, text, *byte)}};
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    return {std::nullopt,
            {{file, 1, "", "an empty file", "a JSON object", "Write at least { \"schema_version\": 1 }."}}};
  }
  ReadSoFar so_far;
  TreeBuilder builder(file, text, so_far);
  const CountingIterator begin(text.data(), &so_far), end(text.data() + text.size(), &so_far);
  constexpr bool kToTheEnd = true, kWithComments = true;
  const bool whole = Json::sax_parse(begin, end, &builder, Json::input_format_t::json, kToTheEnd, kWithComments);
  ParsedJson parsed = std::move(builder).finish();
  if (!whole) parsed.root.reset();
  return parsed;
}

std::string describe(const LocatedJson& value) {
  switch (value.kind) {
    case JsonKind::Null:
      return "nothing yet (null)";
    case JsonKind::Boolean:
      return value.boolean ? "true" : "false";
    case JsonKind::Number:
      return fmt::format("{}", value.number);
    case JsonKind::Text:
      return fmt::format("\"{}\"", printable(value.text));
    case JsonKind::List:
      return value.items.empty() ? "an empty list" : fmt::format("a list of {}", value.items.size());
    case JsonKind::Object:
      return value.members.empty() ? "an empty object" : "an object";
  }
  return "something else";
}

}  // namespace floatwright
