#pragma once
// One JSON object of a person's file, asked for its keys by name. It remembers what it was asked, so that at the end
// every key nobody asked for is told as unknown, with the nearest known one. Nothing throws: what cannot be taken
// becomes a Problem with file, line and pointer, and the answer is empty.
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "adapters/in/files/located_json.hpp"
#include "engine/units/problem.hpp"
#include "engine/units/words.hpp"

namespace floatwright {

// One file while it is read.
struct FileReading {
  std::string file;  // as the user would type it
  Problems problems;
  // Keys that were asked for, by the object's pointer with "*" for an index or a free name: "/gauges/*".
  std::map<std::string, std::set<std::string>> known_keys;
};

enum class Need { Required, Optional };

// A number under one of several spellings of its key ("depth_ft", "depth_m"), not yet a quantity.
struct SpeltNumber {
  std::size_t spelling = 0;  // index into the endings asked for
  std::string key;
  double typed = 0.0;  // finite
};

// Likewise a list of numbers ("shot_g").
struct SpeltList {
  std::size_t spelling = 0;
  std::string key;
  const LocatedJson* value = nullptr;
};

class TypedObject {
 public:
  // The value is an object and outlives this one, as does the reading.
  TypedObject(const LocatedJson& object, std::string pointer, std::string pattern, FileReading& reading);

  // Text without control characters; empty text counts as none.
  [[nodiscard]] std::string text(std::string_view key, Need need);
  [[nodiscard]] std::vector<std::string> texts(std::string_view key, Need need);
  [[nodiscard]] bool truth(std::string_view key, bool otherwise);
  // Plain numbers: counts, shares, exponents, degrees of latitude. Both ends included.
  [[nodiscard]] std::optional<int> whole_number(std::string_view key, int least, int most, Need need);
  [[nodiscard]] std::optional<double> plain_number(std::string_view key, double least, double most, Need need);
  [[nodiscard]] std::optional<SpeltNumber> spelt_number(std::string_view stem,
                                                        const std::vector<std::string_view>& endings, Need need);
  [[nodiscard]] std::optional<SpeltList> spelt_list(std::string_view stem,
                                                    const std::vector<std::string_view>& endings);
  [[nodiscard]] std::optional<TypedObject> object(std::string_view key, Need need);
  [[nodiscard]] std::vector<TypedObject> objects(std::string_view key, Need need);

  // The value as it stands, null when the key is not there: for what has a reader of its own.
  [[nodiscard]] const LocatedJson* find(std::string_view key);
  [[nodiscard]] bool has(std::string_view key) const;
  // After a number was asked for by its stem: whether any spelling of it stands there, right or wrong.
  [[nodiscard]] bool has_any_spelling(std::string_view stem) const;
  // Where keys are names of the user's own; they are known, whatever they are.
  [[nodiscard]] const std::vector<std::pair<std::string, LocatedJson>>& named_members();

  // Something is wrong with the value of a key, or with the object itself when the key is empty or not there.
  void tell(std::string_view key, std::string found, std::string allowed, std::string mend, bool warning = false);
  // Tells unknown keys. Call once, when all keys have been asked for.
  void finish();

  [[nodiscard]] const std::string& pointer() const { return pointer_; }
  [[nodiscard]] FileReading& reading() const { return *reading_; }

 private:
  const LocatedJson* expect(std::string_view key, JsonKind kind, std::string_view allowed, Need need);
  std::optional<SpeltList> spelt(std::string_view stem, const std::vector<std::string_view>& endings, Need need);
  void tell_unknown(const std::string& key, int line);

  const LocatedJson* object_;
  std::string pointer_, pattern_;
  FileReading* reading_;
  std::vector<std::string> asked_;
  std::map<std::string, std::vector<std::string>> spellings_;  // by stem: the keys it may be spelt as
  bool any_name_ = false;
};

// The root of a file, which must be an object with "schema_version": 1 in it.
[[nodiscard]] std::optional<TypedObject> versioned_root(const LocatedJson& root, FileReading& reading);

// "\"a\"", "\"a\" or \"b\"", "\"a\", \"b\" or \"c\"".
[[nodiscard]] std::string either_of(const std::vector<std::string>& words);

// A word out of a closed list, each with its meaning; a word not in it is told with the nearest.
template <class T, std::size_t N>
[[nodiscard]] std::optional<T> meaning_of(TypedObject& in, std::string_view key, const std::string& word,
                                          const WordTable<T, N>& words);

// The problem of a word that is none of the known ones.
void tell_unknown_word(TypedObject& in, std::string_view key, const std::string& word,
                       const std::vector<std::string>& known);

template <class T, std::size_t N>
std::optional<T> meaning_of(TypedObject& in, std::string_view key, const std::string& word,
                            const WordTable<T, N>& words) {
  std::vector<std::string> known;
  for (const auto& [meaning, name] : words) {
    if (name == word) return meaning;
    known.emplace_back(name);
  }
  if (!word.empty()) tell_unknown_word(in, key, word, known);
  return std::nullopt;
}

}  // namespace floatwright
