#pragma once
// The river as a directed acyclic graph, cut at every station (gauge, access, confluence, split, dam, lake end, hazard,
// diversion, spot, end of a named reach or of a note) and flattened into arrays in downstream order. graph.cpp is the
// one file that includes Boost.Graph (cycles, topological order); everyone else walks `reaches` from front to back. The
// river runs from the topmost to the lowest of its accesses, gauges, dams, lakes, named reaches and notes. Places less
// than 2 m apart are one station.
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "engine/river/river.hpp"
#include "engine/units/problem.hpp"

namespace floatwright {

enum class StationKind {
  Source,
  Gauge,
  Access,
  Confluence,
  Split,
  Rejoin,
  Dam,
  Diversion,
  LakeEnd,
  Hazard,
  ReachEnd,
  Spot,
  Mouth
};

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
  std::optional<std::size_t> gauge_at_start;  // at its upper end; the only mention of a gauge at the top of the river
  std::optional<std::size_t> dam_at_start;    // likewise
  std::vector<std::size_t> tributaries_at_start;  // indices into River::tributaries
  std::vector<std::size_t> diversions_at_start;   // indices into River::diversions
  std::optional<std::size_t> lake;                // index into River::lakes when it lies in one
  // At the lower end, from the areas of gauges and tributaries: linear in river distance between gauges, jumping where
  // a tributary joins; beyond the outer gauges at the rate of the two nearest, not under 0. None with fewer than two
  // gauges of known area (but at the gauge itself), and none in a side channel.
  std::optional<Area> drainage_area;
};

struct RiverGraph {
  std::vector<Station> stations;  // stem, upstream to downstream
  std::vector<Reach> reaches;     // downstream order: every reach stands after all reaches it takes water from
  // By gauge: the main-thread reach that ends at it. None: not on the stem, or at the very top (see gauge_at_start).
  std::vector<std::optional<std::size_t>> gauge_reach;

  // Main-thread reaches from one place down to another, in order, also those that hold only a part of the way; empty
  // when `to` is not downstream of `from`.
  [[nodiscard]] std::vector<std::size_t> between(RiverPlace from, RiverPlace to) const;
  // The main-thread reach that holds the place (its upper end included; the mouth belongs to the last one); none off
  // the river.
  [[nodiscard]] std::optional<std::size_t> at(RiverPlace place) const;
};

// The waters of a reach: of its named reach, else of the note that covers it; empty when nobody described it.
[[nodiscard]] const std::vector<Water>& waters_of(const River& river, const Reach& reach);
[[nodiscard]] Bed bed_of(const River& river, const Reach& reach);

// What in the river file cannot be a river (water in a circle, a hazard off the river, overlapping reaches, two gauges
// on one mile...) and what a plan will miss (water nobody described, a dam without releases: warnings). All problems at
// once, with pointers into river.json.
[[nodiscard]] Problems river_problems(const River& river);

// Call only on a river without errors (warnings are fine): what lies off the river is left out here without a word.
[[nodiscard]] RiverGraph river_graph(const River& river);

}  // namespace floatwright
