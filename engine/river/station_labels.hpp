#pragma once
// What the drawing writes beside the river: one row for each thing at a station, one for each piece of described water.
#include <optional>
#include <string>
#include <vector>

#include "engine/river/graph.hpp"

namespace floatwright {

enum class RowShape { Plain, Access, Dam, Joins, Taken, Leaves, Returns };

struct StationRow {
  RowShape shape = RowShape::Plain;
  std::string kind;                         // "gauge"
  std::string text;                         // "Lantern at Old Ferry"
  std::optional<std::size_t> side_channel;  // of Leaves and Returns
};

[[nodiscard]] std::vector<StationRow> station_rows(const River& river, RiverPlace place);
// "Mill run, 1.6 mi: run, bank"; the length is that of the whole row of pieces with this description.
[[nodiscard]] std::string reach_label(const River& river, const Reach& reach, Length length);

}  // namespace floatwright
