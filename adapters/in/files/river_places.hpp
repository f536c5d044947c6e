#pragma once
// Turns what a person types for a place (a mile, a kilometre, the id of an access) into a place on the river.
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/in/files/quantities.hpp"
#include "engine/river/river.hpp"

namespace floatwright {

struct NamedPlace {
  RiverPlace place;
  std::string name;  // of the access, else as typed: "mile 40.2"
};
struct Span {
  NamedPlace from, to;  // from is upstream
};

class PlaceReader {
 public:
  // Counting from the source turns every place round: place = -typed.
  explicit PlaceReader(bool from_source) : from_source_(from_source) {}
  // Accesses must be known before ends are read; they outlive this.
  void know(const std::vector<Access>& accesses) { accesses_ = &accesses; }
  // The place of this access could not be read: whoever names it is not to blame.
  void miss(const std::string& access) { missed_.insert(access); }

  // "mile" or "km" when the stem is empty, "joins_at_mile" for "joins_at_".
  [[nodiscard]] std::optional<RiverPlace> at(TypedObject& in, std::string_view stem, Need need);
  // "from" with the id of an access, "from_mile" or "from_km".
  [[nodiscard]] std::optional<NamedPlace> end(TypedObject& in, const std::string& stem, Need need);
  // From and to, or none of them; from downstream of to is told.
  [[nodiscard]] std::optional<Span> span(TypedObject& in, Need need, const std::string& from = "from",
                                         const std::string& to = "to");

  // False once a place could not be read: then what the graph would say of the rest means nothing.
  [[nodiscard]] bool all_read() const { return all_read_; }
  [[nodiscard]] bool mostly_kilometres() const { return kilometres_ > miles_; }

 private:
  [[nodiscard]] RiverPlace place(const TypedPlace& typed);
  [[nodiscard]] std::optional<NamedPlace> access(TypedObject& in, const std::string& key, const std::string& id);

  bool from_source_;
  bool all_read_ = true;
  int miles_ = 0, kilometres_ = 0;
  const std::vector<Access>* accesses_ = nullptr;
  std::set<std::string> missed_;
};

}  // namespace floatwright
