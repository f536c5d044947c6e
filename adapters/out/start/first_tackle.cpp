#include "adapters/out/start/first_files.hpp"

namespace floatwright {

std::string first_tackle() {
  return R"(// Three rods to begin with, of the usual kind (common practice, no source): write what you own in their place.
// A line is its taper and function code, its kind, and the length and the still-water sink rate of what sinks. "mark" is
// the shape that you paint or tape on the rod's butt, which the rig sheet shows. floatwright-tackle(5) has the rest.
{
  "schema_version": 1,
  "rods": [
    { "id": "streamer", "mark": "square",   "line_number": 6, "length_ft": 9.0 },
    { "id": "nymph",    "mark": "triangle", "line_number": 5, "length_ft": 9.0 },
    { "id": "dry",      "mark": "circle",   "line_number": 5, "length_ft": 9.0 }
  ],
  "lines": [
    { "id": "sinking_tip", "on_rod": "streamer", "spool": "main",  "code": "WF-6-F/S", "kind": "sinking_tip", "tip_length_ft": 12.5, "sink_rate_in_s": 5.0 },
    { "id": "slow_tip",    "on_rod": "streamer", "spool": "spare", "code": "WF-6-F/S", "kind": "sinking_tip", "tip_length_ft": 10.0, "sink_rate_in_s": 4.0 },
    { "id": "nymph_taper", "on_rod": "nymph",    "spool": "main",  "code": "WF-5-F",   "kind": "nymph_taper" },
    { "id": "floating",    "on_rod": "dry",      "spool": "main",  "code": "WF-5-F",   "kind": "floating" }
  ],
  "flies": [
    { "id": "streamer_weighted", "name": "weighted streamer",   "use": ["swing", "strip"],          "mass_g": 0.55, "sink_rate_in_s": 5.0, "size": "6" },
    { "id": "streamer_plain",    "name": "unweighted streamer", "use": ["swing", "strip"],          "mass_g": 0.20, "sink_rate_in_s": 1.5, "size": "6" },
    { "id": "nymph_light",       "name": "small bead nymph",    "use": ["indicator", "tight_line"], "mass_g": 0.20, "sink_rate_in_s": 5.0, "size": "16" },
    { "id": "nymph_heavy",       "name": "heavy nymph",         "use": ["indicator", "tight_line"], "mass_g": 0.50, "sink_rate_in_s": 9.0, "size": "8" },
    { "id": "dry_small",         "name": "small dry",           "use": ["dry"],                     "mass_g": 0.04, "sink_rate_in_s": 0.0, "size": "16" },
    { "id": "dry_large",         "name": "large dry",           "use": ["dry"],                     "mass_g": 0.12, "sink_rate_in_s": 0.0, "size": "8" }
  ],
  "shot_g": [0.2, 0.4]
}
)";
}

}  // namespace floatwright
