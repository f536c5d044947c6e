#pragma once
// What a fishing table depends on, and how its tables are worked out. Two rigs that the water cannot tell apart (the
// same parts of line, the same weight of fly, cast as far) have one order, whatever their ids; the platform plays no
// part but by the boat's pace. Techniques of one order are worked out together, since they share the start of a cast.
#include <vector>

#include "engine/sinking/fishing_table.hpp"

namespace floatwright {

// Goes with the tables on disk. To be raised with every change of the model of a cast, of the profile taken for a water
// nobody measured, or of the grid.
inline constexpr int kTableModel = 6;

struct TableOrder {
  Rig rig;  // one that is so built
  Length cast;
  double pace = 0.0;                  // k: the boat's speed over the surface speed
  std::vector<Technique> techniques;  // of one method, swing or strip
  std::vector<double> physics;        // all that the tables depend on beside the model, in SI; equal: equal tables
};
// Absent where the rig cannot be cast so.
[[nodiscard]] Measured<TableOrder> table_order(const Tackle& tackle, const Rig& rig, Length cast, double pace,
                                               std::vector<Technique> techniques, const DriftLimits& limits);

// By technique; none where a cast of it has no answer in some node.
using TableSet = std::vector<std::optional<FishingTable>>;
[[nodiscard]] TableSet fishing_tables(const Tackle& tackle, const TableOrder& order, const DriftLimits& limits);

// The casts behind the nodes, by node, then technique: asked for together, since waters are worked out abreast.
using CastsOverGrid = std::vector<std::vector<Measured<CastPath>>>;
[[nodiscard]] CastsOverGrid casts_over_grid(const Tackle& tackle, const TableOrder& order, const DriftLimits& limits);

}  // namespace floatwright
