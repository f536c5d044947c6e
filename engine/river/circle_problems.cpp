// Side channels that carry water back up: found as circles in the graph of what runs into what.
#include <set>

#include "engine/river/place_text.hpp"
#include "engine/river/problem_groups.hpp"
#include "engine/river/reaches.hpp"
#include "engine/river/stations.hpp"

namespace floatwright {
namespace {

std::set<std::size_t> side_channels_on_circles(const River& river) {
  const auto pieces = cut_reaches(river, river_stations(river));
  std::set<std::size_t> found;
  for (const auto piece : flow_order(pieces.size(), flow_edges(pieces)).circle) {
    if (pieces[piece].side_channel) found.insert(*pieces[piece].side_channel);
  }
  return found;
}

}  // namespace

Problems circle_problems(const River& river) {
  Problems all;
  const auto on_circles = side_channels_on_circles(river);
  for (std::size_t i = 0; i < river.side_channels.size(); ++i) {
    const auto& side = river.side_channels[i];
    const std::string ends = called("side channel", side.id, i) + " leaves at " + place_text(river, side.leaves) +
                             " and returns at " + place_text(river, side.returns);
    if (same_place(side.leaves, side.returns)) {
      all.push_back(river_error(pointer_to("side_channels", i), ends + ": no length",
                                "it returns below where it leaves", "Mend one of the two miles."));
    } else if (side.returns > side.leaves && on_circles.contains(i)) {
      all.push_back(river_error(pointer_to("side_channels", i), ends + ": its water would run in a circle",
                                "it returns below where it leaves", "Exchange the two miles, or mend one."));
    } else if (side.returns > side.leaves) {
      all.push_back(river_error(pointer_to("side_channels", i), ends + ": upstream", "it returns below where it leaves",
                                "Exchange the two miles, or mend one."));
    }
  }
  return all;
}

}  // namespace floatwright
