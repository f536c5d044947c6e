#pragma once
// What speaks for the flow of a reach, as numbers and indices: the sentence, with its units, is made where pages are
// worded.
#include <optional>
#include <string>

#include "engine/units/unit.hpp"

namespace floatwright {

struct FlowAnchor {                  // one of the two
  std::optional<std::size_t> gauge;  // into River::gauges
  std::optional<std::size_t> dam;    // into River::dams: its releases as typed

  friend bool operator==(const FlowAnchor&, const FlowAnchor&) = default;
};

enum class FlowOrigin { Unknown, At, Between, Below, Above };

struct FlowSource {
  FlowOrigin origin = FlowOrigin::Unknown;
  FlowAnchor from{};                   // of Between the upper one
  FlowAnchor to{};                     // of Between the lower one
  std::optional<double> area_ratio{};  // Below and Above: by drainage area; none: no areas typed, taken unchanged
  Length away{};                       // Below and Above, and Unknown for being too far: along the river
  bool share_of_stem = false;          // of a side channel
  std::string why_unknown{};
};

}  // namespace floatwright
