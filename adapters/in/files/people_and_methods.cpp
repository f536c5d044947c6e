#include "adapters/in/files/people_and_methods.hpp"

#include "adapters/in/files/quantities.hpp"
#include "engine/tackle/names.hpp"

namespace floatwright {
namespace {

constexpr Range<Length> kCasts{metres(2.0), metres(40.0)};

}  // namespace

std::vector<Angler> read_people(TypedObject& in, std::string_view key, Need need) {
  std::vector<Angler> people;
  for (TypedObject& item : in.objects(key, need)) {
    Angler person;
    person.name = item.text("name", Need::Optional);
    person.cast = read_length(item, "cast", kCasts, Need::Optional).value_or(person.cast);
    person.wades = item.truth("wades", false);
    item.finish();
    people.push_back(person);
  }
  if (people.empty() && in.has(key)) {
    in.tell(key, "nobody", "at least one person", "Write { \"name\": \"guest\", \"cast_ft\": 40, \"wades\": false }.");
  }
  return people;
}

std::map<Method, double> read_methods(TypedObject& in, Need need) {
  std::map<Method, double> methods;
  auto typed = in.object("methods", need);
  if (!typed) return methods;
  for (const auto& [method, word] : kMethodWords) {
    const auto preference = typed->plain_number(word, 0.0, 1.0, Need::Optional);
    if (preference && *preference > 0.0) methods[method] = *preference;
  }
  typed->finish();
  if (methods.empty()) {
    typed->tell("", "no method with a preference over 0", "at least one",
                "Write \"swing\": 1.0, or the method you fish.");
  }
  return methods;
}

}  // namespace floatwright
