#include "engine/trip/line_of_the_day.hpp"

namespace floatwright {
namespace {

struct Fished {
  std::size_t reach, water;
  const PlannedWater* here;
};

bool has_a_shape(Method method) {
  return method == Method::Swing || method == Method::Strip || method == Method::Indicator;
}

std::vector<Fished> fished_waters(const PlannedStretch& planned) {
  std::vector<Fished> all;
  for (std::size_t r = 0; r < planned.reaches.size(); ++r)
    for (std::size_t w = 0; w < planned.reaches[r].waters.size(); ++w) {
      const PlannedWater& water = planned.reaches[r].waters[w];
      if (water.choice.best && has_a_shape(water.choice.best->technique.method)) all.push_back({r, w, &water});
    }
  return all;
}

Duration fished_with(const Rig& rig, const std::vector<Fished>& waters) {
  Duration sum{};
  for (const Fished& f : waters)
    if (f.here->choice.best->rig == rig) sum = sum + f.here->fishing;
  return sum;
}

// Of equals the first on the way down.
const Fished* longest(const std::vector<Fished>& waters) {
  const Fished* best = nullptr;
  Duration most{};
  for (const Fished& f : waters) {
    const Duration with_rig = fished_with(f.here->choice.best->rig, waters);
    if (best != nullptr && (with_rig < most || (with_rig == most && f.here->fishing <= best->here->fishing))) continue;
    best = &f;
    most = with_rig;
  }
  return best;
}

}  // namespace

std::optional<LineOfTheDay> line_of_the_day(const RiverDay& day, WaterBook& book, const Stretch& stretch,
                                            const PlannedStretch& planned) {
  const auto waters = fished_waters(planned);
  const Fished* drawn = longest(waters);
  if (drawn == nullptr) return std::nullopt;
  const Instant t = planned.reaches[drawn->reach].read_at;
  const MetWater& met = book.at({stretch.times.rows[drawn->reach].passage, drawn->water, t}, Scored::WorkedOut).met;
  if (!met.to_fish) return std::nullopt;
  const auto line = line_over_bed(*met.to_fish, *drawn->here->choice.best, day.tackle, day.settings.preferences, day.judgement);
  if (!line) return std::nullopt;
  return LineOfTheDay{drawn->reach, drawn->water, *line};
}

}  // namespace floatwright
