#pragma once
// A gauge's rating: which discharge a stage means. Between two points of the table discharge is a power of the stage
// above an offset (a straight line on logarithms), as the agencies draw ratings, or linear. Outside the table there is
// no answer: the channel there was never measured.
#include <string>
#include <vector>

#include "engine/units/measured.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

struct RatingPoint {
  Stage stage;
  Discharge flow;
};

struct Rating {
  enum class Between { Logarithmic, Linear };
  // The stage that counts as zero on logarithms, from a stage upwards.
  struct Offset {
    Stage from;
    Stage zero;
  };

  std::string station;   // "usgs:01594440"
  std::string id;        // as the service numbers its ratings
  bool shifted = false;  // the shift of the day it was fetched is in it: good for about that day
  Between between = Between::Linear;
  std::vector<Offset> offsets;      // rising; the first holds below its `from` too
  std::vector<RatingPoint> points;  // stages rise; flows do not fall
};

// Where no logarithm can be drawn (a point at or under the offset, or without flow) the stretch is read as linear.
[[nodiscard]] Measured<Discharge> flow_at(const Rating& rating, Stage stage);
// Where several stages have the same flow, the lowest.
[[nodiscard]] Measured<Stage> stage_at(const Rating& rating, Discharge flow);

}  // namespace floatwright
