#pragma once
// What WaterML 2.0 says of a point beside its value, or of all points by default. A kind of fact that the point gives
// itself takes the place of the default's.
#include <array>
#include <optional>
#include <set>
#include <string>
#include <string_view>

#include "adapters/in/gauges/xml_tree.hpp"
#include "engine/readings/mark.hpp"

namespace floatwright {

struct PointFacts {
  std::array<std::optional<Marks>, 4> marks;  // of its qualifiers, quality, status, censored reason
  std::string_view unit;                      // empty: not said
  std::string_view over;                      // of what span the value is the mean, sum or the like; empty: not said
  bool missing = false;

  [[nodiscard]] Marks all_marks() const;
};

// `metadata`: the element whose children are the facts. Words that are not known are kept in `unknown`.
[[nodiscard]] PointFacts point_facts(const pugi::xml_node& metadata, std::set<std::string>& unknown);

[[nodiscard]] PointFacts with_default(PointFacts own, const PointFacts& standard);

// What an element says: its text, or the end of its link, or its title.
[[nodiscard]] std::string_view word_of(const pugi::xml_node& element);

}  // namespace floatwright
