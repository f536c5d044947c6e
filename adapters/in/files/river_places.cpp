#include "adapters/in/files/river_places.hpp"

#include <fmt/format.h>

namespace floatwright {

RiverPlace PlaceReader::place(const TypedPlace& typed) {
  ++(typed.in_kilometres ? kilometres_ : miles_);
  const double along = in_metres(typed.along);  // m from the file's zero
  return RiverPlace::from_si(from_source_ ? -along : along);
}

std::optional<RiverPlace> PlaceReader::at(TypedObject& in, std::string_view stem, Need need) {
  const auto typed = read_typed_place(in, stem, need);
  if (typed) return place(*typed);
  if (need == Need::Required || in.has_any_spelling(stem)) all_read_ = false;
  return std::nullopt;
}

std::optional<NamedPlace> PlaceReader::access(TypedObject& in, const std::string& key, const std::string& id) {
  if (missed_.contains(id)) return std::nullopt;
  std::vector<std::string> known;
  for (const Access& access : *accesses_) {
    if (access.id == id) return NamedPlace{access.place, access.name};
    known.push_back(access.id);
  }
  tell_unknown_word(in, key, id, known);
  all_read_ = false;
  return std::nullopt;
}

std::optional<NamedPlace> PlaceReader::end(TypedObject& in, const std::string& stem, Need need) {
  const std::string id = in.text(stem, Need::Optional);
  const auto typed = read_typed_place(in, stem + "_", Need::Optional);
  const bool typed_a_place = in.has_any_spelling(stem + "_");
  if (in.has(stem) && typed_a_place) {
    in.tell(stem, "\"" + stem + "\" and a mile or kilometre for it", "one of them",
            "Keep one and take the other away.");
  } else if (typed) {
    return NamedPlace{place(*typed),
                      fmt::format("{} {:.4g}", typed->in_kilometres ? "km" : "mile",
                                  typed->in_kilometres ? in_kilometres(typed->along) : in_miles(typed->along))};
  } else if (!id.empty()) {
    return access(in, stem, id);
  } else if (need == Need::Required && !in.has(stem) && !typed_a_place) {
    in.tell("", "no \"" + stem + "\"",
            "the id of an access, or a number under " + either_of({stem + "_mile", stem + "_km"}),
            "Add " + either_of({stem, stem + "_mile", stem + "_km"}) + ".");
  }
  if (need == Need::Required || in.has(stem) || typed_a_place) all_read_ = false;
  return std::nullopt;
}

std::optional<Span> PlaceReader::span(TypedObject& in, Need need, const std::string& from, const std::string& to) {
  const auto upper = end(in, from, need);
  const auto lower = end(in, to, upper ? Need::Required : need);
  if (lower && !upper && need == Need::Optional && !in.has(from) && !in.has_any_spelling(from + "_")) {
    in.tell("", "no \"" + from + "\" to go with \"" + to + "\"", "both or none",
            "Add " + either_of({from, from + "_mile", from + "_km"}) + ".");
    all_read_ = false;
  }
  if (!upper || !lower) return std::nullopt;
  if (upper->place <= lower->place) {
    in.tell(
        "",
        fmt::format("{} as \"{}\" and {} as \"{}\", which is not downstream of it", upper->name, from, lower->name, to),
        "\"" + from + "\" upstream of \"" + to + "\"", "Swap the two, or mend the one that is wrong.");
  }
  return Span{*upper, *lower};
}

}  // namespace floatwright
