#pragma once
// The river as a directed acyclic graph, cut at every station (gauge, access, confluence, split, dam, lake end, hazard,
// diversion, end of a named reach) and flattened into arrays in downstream order. graph.cpp is the one file that
// includes Boost.Graph (cycles, components, topological order); everyone else walks `reaches` from front to back.
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "engine/river/river.hpp"
#include "engine/units/problem.hpp"

namespace floatwright {

enum class StationKind { Source, Gauge, Access, Confluence, Split, Rejoin, Dam, Diversion, LakeEnd, Hazard, ReachEnd, Spot, Mouth };

struct Station {
  RiverPlace place;
  std::vector<StationKind> kinds;  // one place may be several things
  std::string name;
};

// A piece of river between two neighbouring stations: the unit of routing. Indices are into RiverGraph::reaches.
struct Reach {
  std::string id;    // "mile 40.2-38.0", with "/branch" in a side channel
  std::string name;  // of the named reach or the note it lies in, else its id
  RiverPlace from, to;
  Length length;
  std::vector<std::size_t> upstream;        // reaches whose water enters here
  std::optional<std::size_t> side_channel;  // index into River::side_channels when this is the branch
  bool main_thread = true;                  // false in a side channel
  std::optional<std::size_t> splits_off;    // index of the side channel that leaves at the upper end (stem reach only)
  std::optional<std::size_t> named_reach;   // index into River::reaches
  std::optional<std::size_t> note;          // index into River::notes that covers it
  std::optional<std::size_t> gauge_at_end;  // index into River::gauges at its lower end
  std::optional<std::size_t> dam_at_end;    // index into River::dams at its lower end
  std::vector<std::size_t> tributaries_at_start;  // indices into River::tributaries
  std::vector<std::size_t> diversions_at_start;   // indices into River::diversions
  std::optional<std::size_t> lake;          // index into River::lakes when it lies in one
  std::optional<Area> drainage_area;        // at the lower end; interpolated between known areas, jumping at tributaries
};

struct RiverGraph {
  std::vector<Station> stations;  // stem, upstream to downstream
  std::vector<Reach> reaches;     // downstream order: every reach stands after all reaches it takes water from
  std::vector<std::optional<std::size_t>> gauge_reach;  // by gauge: reach that ends at it (none: not on the stem)

  // Main-thread reaches from one place down to another, in order; empty when `to` is not downstream of `from`.
  [[nodiscard]] std::vector<std::size_t> between(RiverPlace from, RiverPlace to) const;
  // The main-thread reach that holds the place (its upper end included); none off the river.
  [[nodiscard]] std::optional<std::size_t> at(RiverPlace place) const;
};

// The waters of a reach: of its named reach, else of the note that covers it; empty when nobody described it.
[[nodiscard]] const std::vector<Water>& waters_of(const River& river, const Reach& reach);
[[nodiscard]] Bed bed_of(const River& river, const Reach& reach);

// What in the river file cannot be a river (cycles, an access off the river, overlapping reaches, a reach with no depth
// source as a warning, negative lengths, two gauges on one mile...): all problems, with pointers into river.json.
[[nodiscard]] Problems river_problems(const River& river);

// Call only on a river without errors (warnings are fine).
[[nodiscard]] RiverGraph river_graph(const River& river);

}  // namespace floatwright
