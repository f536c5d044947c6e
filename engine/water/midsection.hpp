#pragma once
// The discharge of a section that somebody waded with a meter and a tape, by the midsection method (Turnipseed & Sauer
// 2010, USGS Techniques and Methods 3-A8): each vertical speaks for half of the way to either neighbour, at an edge for
// the one half that it has,
//   q_i = v_i d_i (x_{i+1} - x_{i-1})/2.
// A bank that is a wall has a vertical with a depth; elsewhere the edges are verticals of no depth.
#include <span>

#include "engine/units/measured.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

struct Vertical {
  Length across;  // along the tape, from any point
  Length depth;
  MeanSpeed speed;  // over the depth; under 0 where the water runs back
};

struct SectionMeasured {
  Discharge discharge;
  Length width;  // from the first vertical to the last
  Area area;
};

// Absent: fewer than three verticals, a depth under 0, the tape not read onward, nothing that flows, a value that is no
// number.
[[nodiscard]] Measured<SectionMeasured> midsection(std::span<const Vertical> verticals);

}  // namespace floatwright
