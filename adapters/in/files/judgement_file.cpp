#include "adapters/in/files/judgement_file.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "adapters/in/files/nearest.hpp"
#include "adapters/in/text/printable.hpp"
#include "engine/choice/judgement_keys.hpp"

namespace floatwright {
namespace {

// Walks the file along the pointers that the judgement knows.
class JudgementReader {
 public:
  JudgementReader(Judgement& judgement, FileReading& reading) : reading_(reading) {
    for (const JudgementKey& key : judgement_keys(judgement)) {
      numbers_.emplace(key.pointer, key);
      know(key.pointer);
    }
  }

  void take(const LocatedJson& value, const std::string& pointer, const std::string& pattern) {
    if (const auto number = numbers_.find(pointer); number != numbers_.end()) {
      take_number(value, number->second);
    } else if (children_[pointer].front() == "0") {
      take_list(value, pointer, pattern);
    } else {
      take_object(value, pointer, pattern);
    }
  }

 private:
  // Every step of "/zone/shelter/sand" is a child of the one before.
  void know(const std::string& pointer) {
    for (std::size_t slash = pointer.rfind('/'), end = pointer.size(); slash != std::string::npos;) {
      std::vector<std::string>& siblings = children_[pointer.substr(0, slash)];
      const std::string name = pointer.substr(slash + 1, end - slash - 1);
      if (std::find(siblings.begin(), siblings.end(), name) == siblings.end()) siblings.push_back(name);
      end = slash;
      slash = slash == 0 ? std::string::npos : pointer.rfind('/', slash - 1);
    }
  }

  void take_number(const LocatedJson& value, const JudgementKey& key) {
    const bool fits = value.kind == JsonKind::Number && value.number >= key.least && value.number <= key.most;
    if (fits) {
      *key.value = value.number;
      return;
    }
    const std::string allowed = fmt::format("a number from {} to {}", key.least, key.most);
    tell(value, key.pointer, describe(value), allowed, fmt::format("Write {}.", allowed));
  }

  void take_list(const LocatedJson& value, const std::string& pointer, const std::string& pattern) {
    const std::size_t length = children_[pointer].size();
    if (value.kind != JsonKind::List || value.items.size() != length) {
      tell(value, pointer, describe(value), fmt::format("a list of {}", length), "Keep the list's length.");
      return;
    }
    for (std::size_t i = 0; i < length; ++i) take(value.items[i], pointer_to(pointer, i), pattern + "/*");
  }

  void take_object(const LocatedJson& value, const std::string& pointer, const std::string& pattern) {
    const std::vector<std::string>& known = children_[pointer];
    if (value.kind != JsonKind::Object) {
      tell(value, pointer, describe(value), "an object in { }", "Write an object here.");
      return;
    }
    reading_.known_keys[pattern].insert(known.begin(), known.end());
    for (const auto& [name, member] : value.members) {
      if (std::find(known.begin(), known.end(), name) != known.end()) {
        take(member, pointer_to(pointer, name), pointer_to(pattern, name));
        continue;
      }
      tell(member, pointer_to(pointer, name), fmt::format("the unknown key \"{}\"", printable(name)), either_of(known),
           fmt::format("The nearest known key is \"{}\".", nearest_word(name, known)));
    }
  }

  void tell(const LocatedJson& at, std::string pointer, std::string found, std::string allowed, std::string mend) {
    reading_.problems.push_back(
        {reading_.file, at.line, std::move(pointer), std::move(found), std::move(allowed), std::move(mend)});
  }

  FileReading& reading_;
  std::map<std::string, JudgementKey> numbers_;
  std::map<std::string, std::vector<std::string>> children_;  // by the pointer above them
};

}  // namespace

Judgement read_judgement(const LocatedJson& root, FileReading& reading) {
  Judgement judgement;
  JudgementReader(judgement, reading).take(root, "", "");
  for (Problem& problem : judgement_problems(judgement)) {
    problem.file = reading.file;
    problem.line = line_of(root, problem.pointer);
    reading.problems.push_back(std::move(problem));
  }
  return judgement;
}

}  // namespace floatwright
