#pragma once
// One cast to be simulated: the line, the water it falls on, where it is laid and what the angler does with it.
#include <vector>

#include "engine/sinking/steady.hpp"

namespace floatwright {

struct CastCase {
  // From the fly up; the uppermost is the body: `line_out` of it lies out when the cast lands, the rest can be fed.
  std::vector<LinePart> parts;
  TowedFly fly;
  Length depth;
  SurfaceSpeed surface_speed;
  Profile profile;
  Temperature temperature = celsius(10.0);
  Speed boat;                     // of the rod over the ground, along the stream
  Angle bearing = degrees(70.0);  // of the cast from straight downstream, 0 to 180 degrees
  // The body lies in an arc bulging upstream, its length over its chord is 1 + slack; what hangs below the body lies
  // straight on beyond it. All of it moves with the surface water.
  double slack = 0.1;
  Length line_out;
  Duration feed;   // from landing: line is let out as fast as the surface passes the rod
  Duration count;  // strip: until the first pull
  Speed strip;     // from then on line is taken in so fast, until `least_out` is between fly and rod
  Length least_out;
  double tangential_drag = 0.012;  // on the wetted area
  bool has_bed = true;             // false: depth goes on past the water's, the profile frozen at the bed's
};

// Where a cast has got to.
struct CastRow {
  Duration t;                        // from landing
  Length tip_depth, fly_depth;       // of the leader's upper end and of the fly; 0 on the surface
  Angle bearing;                     // of the fly from straight downstream of the rod
  Speed over_ground, through_water;  // of the fly, horizontal; the second against the water at its depth
};

}  // namespace floatwright
