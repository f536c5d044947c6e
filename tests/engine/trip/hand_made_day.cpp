#include "tests/engine/trip/hand_made_day.hpp"

#include "engine/trip/likely_waters.hpp"

namespace floatwright {

HandMadeDay::HandMadeDay() = default;
HandMadeDay::HandMadeDay(HandMadeDay&&) noexcept = default;
HandMadeDay::~HandMadeDay() = default;

const RiverDay& HandMadeDay::day() {
  graph_ = river_graph(river);
  const Instant midnight = Instant{std::chrono::sys_days{date}} + std::chrono::hours{6};  // about that of the river
  const TimeGrid grid{midnight - std::chrono::hours{24}, std::chrono::hours{1}, 55};
  flows_ = RiverFlows{};
  flows_.grid = grid;
  flows_.fronts = fronts;
  temperatures_ = RiverTemperatures{};
  temperatures_.grid = grid;
  for (std::size_t r = 0; r < graph_.reaches.size(); ++r) add_reach(grid);
  made_ = std::make_unique<RiverDay>(
      RiverDay{river, graph_, settings, tackle, judgement, records, flows_, temperatures_, date, now,
               nullptr, weather ? &*weather : nullptr, &likely_});
  likely_ = likely_waters(*made_);
  return *made_;
}

void HandMadeDay::add_reach(const TimeGrid& grid) {
  std::vector<Discharge> low, middle, high;
  std::vector<PerCase<Temperature>> temperature;
  for (std::size_t i = 0; i < grid.count; ++i) {
    const auto q = flow(grid.at(i));
    low.push_back(q.low);
    middle.push_back(q.middle);
    high.push_back(q.high);
    temperature.push_back(water(grid.at(i)));
  }
  flows_.flow.low.push_back(low);
  flows_.flow.middle.push_back(middle);
  flows_.flow.high.push_back(high);
  flows_.known.push_back(true);
  flows_.source.emplace_back();
  temperatures_.reach.push_back(temperature);
  temperatures_.source.emplace_back();
}

}  // namespace floatwright
