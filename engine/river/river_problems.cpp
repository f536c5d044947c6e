#include <algorithm>
#include <iterator>

#include "engine/river/graph.hpp"
#include "engine/river/problem_groups.hpp"

namespace floatwright {
namespace {

void append(Problems& all, Problems more) {
  all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

}  // namespace

Problems river_problems(const River& river) {
  Problems all;
  for (const auto group :
       {identity_problems, span_problems, map_problems, extent_problems, circle_problems, flow_problems, water_problems,
        section_problems, note_problems}) {
    append(all, group(river));
  }
  if (std::ranges::all_of(all, &Problem::warning)) append(all, undescribed_water(river));
  return all;
}

}  // namespace floatwright
