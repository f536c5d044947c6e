#include "engine/trip/score_waters.hpp"

#include <set>
#include <tuple>

#include "engine/trip/heat.hpp"
#include "engine/trip/planned_reach.hpp"

namespace floatwright {
namespace {

// Waters of the rows of stretches, each once.
class WatersWanted {
 public:
  explicit WatersWanted(const RiverDay& day) : day_(day) {}
  void add(const Stretch& stretch) {
    if (stretch.broken || stretch.times.rows.empty()) return;
    const auto stop_by = heat_of(day_, stretch.times, heat_limits(day_.river, day_.settings)).stop_by;
    for (const TimedPassage& row : stretch.times.rows) {
      const PlannedReach reach = planned_reach(day_, row);
      if (!why_not_fished(reach, fishing_in(row, stop_by)).empty()) continue;
      if (!met_.insert({row.passage.from, row.passage.to, reach.read_at, row.passage.rises}).second) continue;
      for (std::size_t w = 0; w < waters_of(day_, row.passage).size(); ++w)
        wanted_.push_back({row.passage, w, reach.read_at});
    }
  }
  [[nodiscard]] const std::vector<WaterAtHour>& wanted() const { return wanted_; }

 private:
  const RiverDay& day_;
  std::set<std::tuple<RiverPlace, RiverPlace, Instant, bool>> met_;
  std::vector<WaterAtHour> wanted_;
};

}  // namespace

void score_waters(const RiverDay& day, WaterBook& book, Scored how, const std::vector<const Stretch*>& stretches,
                  const DoEach& do_each) {
  WatersWanted waters(day);
  for (const Stretch* stretch : stretches) waters.add(*stretch);
  do_each(waters.wanted().size(), [&](std::size_t i) { (void)book.at(waters.wanted()[i], how); });
}

}  // namespace floatwright
