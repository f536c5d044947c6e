#include "adapters/in/gauges/json_rows.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <tuple>
#include <utility>
#include <vector>

#include "adapters/in/text/printable.hpp"

namespace floatwright {
namespace {

using Json = nlohmann::json;
using Kind = JsonValue::Kind;

// So that no text takes many times its own length of memory.
constexpr std::size_t kMostRareKeys = 10'000;
constexpr std::size_t kLongestText = 64 * 1024;  // of a value that is wanted

std::string pointer(std::span<const JsonStep> steps) {
  std::string out;
  for (const JsonStep& step : steps) {
    out += '/';
    if (step.key == nullptr) {
      out += std::to_string(step.index);
      continue;
    }
    for (const char c : *step.key) out += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);  // RFC 6901
  }
  return out;
}

std::string line_and_column(std::string_view bytes, std::size_t position) {
  const std::string_view before = bytes.substr(0, position > 0 ? position - 1 : 0);
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const auto line_start = before.rfind('\n');
  const auto column = before.size() - (line_start == std::string_view::npos ? 0 : line_start + 1) + 1;
  return fmt::format("line {}, column {}", line, column);
}

// The keys of all objects at one place of the shape. Objects of one kind have the same keys in about the same order, so
// the next key is mostly the one that followed last time, and an object that has it already carries its stamp.
class Keys {
 public:
  struct Known {
    std::string text;
    int node = -1;
    std::size_t stamp = 0;
  };

  void begin_object() {
    ++object_;
    next_ = 0;
  }
  // How many of its keys there was no room for.
  std::size_t end_object() {
    const std::size_t rest = rest_.size();
    if (rest > 0) rest_.clear();
    return rest;
  }
  // Null: not met so far.
  Known* find(const std::string& key) {
    for (std::size_t tried = 0; tried < known_.size(); ++tried, ++next_) {
      if (next_ == known_.size()) next_ = 0;
      if (known_[next_].text == key) return &known_[next_++];
    }
    return nullptr;
  }
  // Null: there is no room for more, so that a long object of ever new keys is not searched from end to end.
  Known* learn(const std::string& key, int node) {
    constexpr std::size_t kMost = 64;
    if (known_.size() == kMost) return nullptr;
    known_.reserve(kMost);  // steps point to the texts
    known_.push_back({.text = key, .node = node, .stamp = 0});
    return &known_.back();
  }
  // False: the object has it already.
  bool stamp(Known& known) const { return std::exchange(known.stamp, object_) != object_; }
  std::pair<const std::string*, bool> insert_rest(const std::string& key) {
    const auto [at, is_new] = rest_.insert(key);
    return {&*at, is_new};
  }

 private:
  std::vector<Known> known_;
  std::set<std::string> rest_;
  std::size_t object_ = 0, next_ = 0;
};

class Reader final {
 public:
  Reader(std::string_view bytes, const JsonShape& shape, const std::function<void(const JsonRow&)>& ended)
      : bytes_(bytes), shape_(shape), ended_(ended), values_(shape.slots()), keys_(shape.nodes() + kDeepestNesting) {}
  [[nodiscard]] const std::string& trouble() const { return trouble_; }

  // The events of a text, under the names that the parser calls.
  bool null() { return leaf(Kind::Null, 0.0); }
  bool boolean(bool) { return leaf(Kind::Boolean, 0.0); }
  bool number_integer(Json::number_integer_t number) { return leaf(Kind::Number, static_cast<double>(number)); }
  bool number_unsigned(Json::number_unsigned_t number) { return leaf(Kind::Number, static_cast<double>(number)); }
  bool number_float(Json::number_float_t number, const std::string&) { return leaf(Kind::Number, number); }
  bool string(std::string& text) { return leaf(Kind::Text, 0.0, &text); }
  bool binary(Json::binary_t&) { return false; }  // not in a text
  bool start_object(std::size_t) { return open(true); }
  bool start_array(std::size_t) { return open(false); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }

  bool key(const std::string& name) {
    Level& level = levels_[depth_ - 1];
    JsonStep& step = steps_[depth_ - 1];
    Keys::Known* known = level.keys->find(name);
    if (known == nullptr) known = level.keys->learn(name, child_of(level.node, name));
    bool is_new = true;
    if (known != nullptr) {
      step.key = &known->text;
      level.next = known->node;
      is_new = level.keys->stamp(*known);
    } else {
      std::tie(step.key, is_new) = level.keys->insert_rest(name);
      level.next = child_of(level.node, name);
      if (++rare_keys_ > kMostRareKeys) return refuse("more keys than any service sends");
    }
    return is_new || refuse("this key stands twice in one object, so its value is not certain");
  }

  bool parse_error(std::size_t position, const std::string& last, const Json::exception& error) {
    constexpr int kOutOfRange = 406;
    const bool cut = position >= bytes_.size() && error.id != kOutOfRange;
    const std::string what = error.id == kOutOfRange ? "a number too large to be one" : "not JSON";
    trouble_ =
        line_and_column(bytes_, position) + ": " +
        (cut ? "the text ends too early, it was cut short" : fmt::format("{} (found \"{}\")", what, printable(last)));
    return false;
  }

 private:
  struct Level {
    Keys* keys = nullptr;  // null: a list
    int node = -1;         // of the shape; -1: nothing is wanted of it
    int next = -1;         // of the value to come, unless places in this list are declared
    bool has_places = false;
  };

  bool refuse(const std::string& why) {
    trouble_ = printable(pointer({steps_.data(), depth_})) + ": " + why;
    return false;
  }

  [[nodiscard]] int child_of(int node, const std::string& key) const { return node < 0 ? -1 : shape_.child(node, key); }
  [[nodiscard]] bool in_list() const { return depth_ > 0 && levels_[depth_ - 1].keys == nullptr; }

  // Of the value that begins.
  [[nodiscard]] int node_here() const {
    if (depth_ == 0) return 0;
    const Level& level = levels_[depth_ - 1];
    return level.has_places ? shape_.child(level.node, std::to_string(steps_[depth_ - 1].index)) : level.next;
  }

  void begin(int at) {
    if (shape_.node(at).row < 0) return;
    for (const int slot : shape_.node(at).slots_to_empty) {
      JsonValue& value = values_[static_cast<std::size_t>(slot)];
      value.kind = Kind::Absent;
      value.text.clear();
    }
  }

  bool fill(int at, Kind kind, double number, const std::string* text) {
    if (shape_.node(at).slot < 0) return true;
    JsonValue& value = values_[static_cast<std::size_t>(shape_.node(at).slot)];
    if (in_list() && value.kind != Kind::Absent) {
      if (text == nullptr) return true;
      if (!value.text.empty()) value.text += ' ';
      value.text += *text;
    } else {
      value.number = number;
      if (text != nullptr) value.text = *text;
    }
    value.kind = kind;
    return value.text.size() <= kLongestText || refuse("a text longer than any service sends");
  }

  void end(int at) {
    const int row = shape_.node(at).row;
    if (row >= 0) ended_({.row = row, .values = values_, .steps = {steps_.data(), depth_}});
  }

  bool leaf(Kind kind, double number, const std::string* text = nullptr) {
    const int at = node_here();
    if (at >= 0) {
      begin(at);
      if (!fill(at, kind, number, text)) return false;
      end(at);
    }
    return count();
  }

  bool open(bool is_object) {
    if (depth_ == kDeepestNesting) return refuse(fmt::format("nested deeper than {} levels", kDeepestNesting));
    const int at = node_here();
    if (at >= 0) {
      begin(at);
      if (!fill(at, is_object ? Kind::Object : Kind::List, 0.0, nullptr)) return false;
    }
    Keys* const keys = is_object ? &keys_[at >= 0 ? static_cast<std::size_t>(at) : shape_.nodes() + depth_] : nullptr;
    if (keys != nullptr) keys->begin_object();
    steps_[depth_] = {};
    levels_[depth_++] = {.keys = keys,
                         .node = at,
                         .next = at < 0 ? -1 : shape_.node(at).any_child,
                         .has_places = at >= 0 && !is_object && !shape_.node(at).children.empty()};
    return true;
  }

  bool close() {
    const Level& level = levels_[--depth_];
    if (level.keys != nullptr) rare_keys_ -= level.keys->end_object();
    if (level.node >= 0) end(level.node);
    return count();
  }

  bool count() {
    if (in_list()) ++steps_[depth_ - 1].index;
    return true;
  }

  std::string_view bytes_;
  const JsonShape& shape_;
  const std::function<void(const JsonRow&)>& ended_;
  std::vector<JsonValue> values_;
  std::vector<Keys> keys_;  // by node, then by depth of what is not wanted
  std::array<Level, kDeepestNesting> levels_;
  std::array<JsonStep, kDeepestNesting> steps_;
  std::size_t depth_ = 0, rare_keys_ = 0;
  std::string trouble_;
};

std::optional<std::string> not_even_json(std::string_view bytes) {
  const auto start = bytes.find_first_not_of(" \t\r\n");
  if (start == std::string_view::npos) return "empty; ask the service again";
  if (bytes[start] != '<') return std::nullopt;
  return fmt::format(
      "a web page or XML, not JSON (it begins \"{}\"); the service may have moved, or the request was sent "
      "elsewhere",
      printable(bytes.substr(start, 20)));
}

}  // namespace

std::string JsonRow::place() const { return pointer(steps); }

Result<void> read_json_rows(std::string_view bytes, const std::string& where, const JsonShape& shape,
                            const std::function<void(const JsonRow&)>& ended) {
  if (const auto wrong = not_even_json(bytes)) return tl::unexpected(Failure{where + ": " + *wrong, kExitBadData});
  Reader reader(bytes, shape, ended);
  if (Json::sax_parse(bytes.data(), bytes.data() + bytes.size(), &reader)) return {};
  return tl::unexpected(Failure{where + ": " + reader.trouble(), kExitBadData});
}

}  // namespace floatwright
