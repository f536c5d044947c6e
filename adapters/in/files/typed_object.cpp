#include "adapters/in/files/typed_object.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "adapters/in/files/nearest.hpp"
#include "adapters/in/text/printable.hpp"

namespace floatwright {
namespace {

std::string quoted(std::string_view key) { return fmt::format("\"{}\"", printable(key)); }

std::string as_list(const std::vector<std::string>& words) {
  std::string list;
  for (const std::string& word : words) list += (list.empty() ? "" : ", ") + word;
  return list;
}

}  // namespace

TypedObject::TypedObject(const LocatedJson& object, std::string pointer, std::string pattern, FileReading& reading)
    : object_(&object), pointer_(std::move(pointer)), pattern_(std::move(pattern)), reading_(&reading) {}

bool TypedObject::has(std::string_view key) const {
  const auto is_it = [&](const auto& member) { return member.first == key; };
  return std::any_of(object_->members.begin(), object_->members.end(), is_it);
}

bool TypedObject::has_any_spelling(std::string_view stem) const {
  const auto keys = spellings_.find(std::string(stem));
  if (keys == spellings_.end()) return false;
  return std::any_of(keys->second.begin(), keys->second.end(), [&](const std::string& key) { return has(key); });
}

const LocatedJson* TypedObject::find(std::string_view key) {
  if (std::find(asked_.begin(), asked_.end(), key) == asked_.end()) asked_.emplace_back(key);
  const auto is_it = [&](const auto& member) { return member.first == key; };
  const auto member = std::find_if(object_->members.begin(), object_->members.end(), is_it);
  return member == object_->members.end() ? nullptr : &member->second;
}

const std::vector<std::pair<std::string, LocatedJson>>& TypedObject::named_members() {
  any_name_ = true;
  return object_->members;
}

void TypedObject::tell(std::string_view key, std::string found, std::string allowed, std::string mend, bool warning) {
  if (object_->kind != JsonKind::Object) return;  // told already: see objects()
  const bool stands_there = !key.empty() && has(key);
  const std::string where = stands_there ? pointer_to(pointer_, key) : pointer_;
  const int line = stands_there ? find(key)->line : object_->line;
  reading_->problems.push_back(
      {reading_->file, line, where, std::move(found), std::move(allowed), std::move(mend), warning});
}

const LocatedJson* TypedObject::expect(std::string_view key, JsonKind kind, std::string_view allowed, Need need) {
  const LocatedJson* value = find(key);
  if (value == nullptr) {
    if (need == Need::Required)
      tell("", "no " + quoted(key), std::string(allowed), fmt::format("Add {}.", quoted(key)));
    return nullptr;
  }
  if (value->kind == kind) return value;
  tell(key, describe(*value), std::string(allowed), fmt::format("Write {} here.", allowed));
  return nullptr;
}

std::string TypedObject::text(std::string_view key, Need need) {
  const LocatedJson* value = expect(key, JsonKind::Text, "text in quotes", need);
  if (value == nullptr) return {};
  if (has_control_characters(value->text)) {
    tell(key, describe(*value), "text on one line", "Take line breaks and control characters out.");
    return {};
  }
  if (value->text.empty() && need == Need::Required) tell(key, "empty text", "some text", "Write something here.");
  return value->text;
}

std::vector<std::string> TypedObject::texts(std::string_view key, Need need) {
  const LocatedJson* list = expect(key, JsonKind::List, "a list of texts", need);
  std::vector<std::string> words;
  if (list == nullptr) return words;
  for (const LocatedJson& item : list->items) {
    if (item.kind == JsonKind::Text && !item.text.empty() && !has_control_characters(item.text)) {
      words.push_back(item.text);
    } else {
      tell(key, describe(item) + " in the list", "texts in quotes", "Write every one as text in quotes.");
    }
  }
  return words;
}

bool TypedObject::truth(std::string_view key, bool otherwise) {
  const LocatedJson* value = expect(key, JsonKind::Boolean, "true or false", Need::Optional);
  return value == nullptr ? otherwise : value->boolean;
}

std::optional<int> TypedObject::whole_number(std::string_view key, int least, int most, Need need) {
  const std::string allowed = fmt::format("a whole number from {} to {}", least, most);
  const LocatedJson* value = expect(key, JsonKind::Number, allowed, need);
  if (value == nullptr) return std::nullopt;
  const double typed = value->number;
  if (typed == std::floor(typed) && typed >= least && typed <= most) return static_cast<int>(typed);
  tell(key, describe(*value), allowed, fmt::format("Write {}.", allowed));
  return std::nullopt;
}

std::optional<double> TypedObject::plain_number(std::string_view key, double least, double most, Need need) {
  const std::string allowed = fmt::format("a number from {} to {}", least, most);
  const LocatedJson* value = expect(key, JsonKind::Number, allowed, need);
  if (value == nullptr) return std::nullopt;
  if (value->number >= least && value->number <= most) return value->number;
  tell(key, describe(*value), allowed, fmt::format("Write {}.", allowed));
  return std::nullopt;
}

std::optional<SpeltList> TypedObject::spelt(std::string_view stem, const std::vector<std::string_view>& endings,
                                            Need need) {
  std::vector<std::string> keys, present;
  std::optional<SpeltList> found;
  for (std::size_t i = 0; i < endings.size(); ++i) {
    const std::string& key = keys.emplace_back(fmt::format("{}{}", stem, endings[i]));
    const LocatedJson* value = find(key);
    if (value == nullptr) continue;
    present.push_back(key);
    found = SpeltList{i, key, value};
  }
  spellings_[std::string(stem)] = keys;
  if (present.size() > 1) {
    tell(present[1], either_of(present) + " at once", "one of them", "Keep one and take the others away.");
    return std::nullopt;
  }
  if (!found && need == Need::Required) {
    tell("", "no " + either_of(keys), keys.size() > 1 ? "one of them" : "it", "Add " + either_of(keys) + ".");
  }
  return found;
}

std::optional<SpeltNumber> TypedObject::spelt_number(std::string_view stem,
                                                     const std::vector<std::string_view>& endings, Need need) {
  const auto found = spelt(stem, endings, need);
  if (!found || expect(found->key, JsonKind::Number, "a number without quotes", need) == nullptr) return std::nullopt;
  return SpeltNumber{found->spelling, found->key, found->value->number};
}

std::optional<SpeltList> TypedObject::spelt_list(std::string_view stem, const std::vector<std::string_view>& endings) {
  const auto found = spelt(stem, endings, Need::Optional);
  if (!found || expect(found->key, JsonKind::List, "a list of numbers", Need::Optional) == nullptr) return std::nullopt;
  return found;
}

std::optional<TypedObject> TypedObject::object(std::string_view key, Need need) {
  const LocatedJson* value = expect(key, JsonKind::Object, "an object in { }", need);
  if (value == nullptr) return std::nullopt;
  return TypedObject(*value, pointer_to(pointer_, key), pointer_to(pattern_, key), *reading_);
}

std::vector<TypedObject> TypedObject::objects(std::string_view key, Need need) {
  const LocatedJson* list = expect(key, JsonKind::List, "a list in [ ]", need);
  std::vector<TypedObject> found;
  if (list == nullptr) return found;
  static const LocatedJson kNothing{};
  for (std::size_t i = 0; i < list->items.size(); ++i) {
    const LocatedJson& item = list->items[i];
    const std::string where = pointer_to(pointer_to(pointer_, key), i);
    const bool is_object = item.kind == JsonKind::Object;
    // What is no object keeps its place, so that index i stays item i of the file, but has no more to tell.
    found.emplace_back(is_object ? item : kNothing, where, pointer_to(pattern_, key) + "/*", *reading_);
    if (is_object) continue;
    reading_->problems.push_back(
        {reading_->file, item.line, where, describe(item), "an object in { }", "Write an object here."});
  }
  return found;
}

void TypedObject::tell_unknown(const std::string& key, int line) {
  const auto stem = spellings_.find(key);
  const std::string mend = stem == spellings_.end()
                               ? fmt::format("The nearest known key is \"{}\".", nearest_word(key, asked_))
                               : fmt::format("Write {}: a number's key ends in its unit.", either_of(stem->second));
  reading_->problems.push_back({reading_->file, line, pointer_to(pointer_, key),
                                fmt::format("the unknown key {}", quoted(key)), as_list(asked_), mend});
}

void TypedObject::finish() {
  std::set<std::string>& known = reading_->known_keys[pattern_];
  known.insert(asked_.begin(), asked_.end());
  if (any_name_) return;
  for (const auto& [key, value] : object_->members) {
    if (std::find(asked_.begin(), asked_.end(), key) == asked_.end()) tell_unknown(key, value.line);
  }
}

std::optional<TypedObject> versioned_root(const LocatedJson& root, FileReading& reading) {
  if (root.kind != JsonKind::Object) {
    reading.problems.push_back({reading.file, root.line, "", describe(root), "an object in { }",
                                "Put { at the beginning of the file and } at its end."});
    return std::nullopt;
  }
  TypedObject object(root, "", "", reading);
  (void)object.whole_number("schema_version", 1, 1, Need::Required);
  return object;
}

std::string either_of(const std::vector<std::string>& words) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) list += i + 1 == words.size() ? " or " : ", ";
    list += quoted(words[i]);
  }
  return list;
}

void tell_unknown_word(TypedObject& in, std::string_view key, const std::string& word,
                       const std::vector<std::string>& known) {
  in.tell(key, quoted(word), "one of " + as_list(known),
          fmt::format("The nearest known word is \"{}\".", nearest_word(word, known)));
}

}  // namespace floatwright
