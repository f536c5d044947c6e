#include "engine/choice/rod_set.hpp"

#include <algorithm>
#include <cstdint>

namespace floatwright {
namespace {

// States are mixed-radix numbers: the first rod's load counts fastest.
class States {
 public:
  explicit States(const std::vector<const RodLoads*>& set) {
    for (const RodLoads* rod : set) {
      strides_.push_back(count_);
      radices_.push_back(rod->loads.size());
      count_ *= rod->loads.size();
    }
  }
  [[nodiscard]] std::size_t count() const { return count_; }
  [[nodiscard]] std::size_t rods() const { return radices_.size(); }
  [[nodiscard]] std::size_t radix(std::size_t rod) const { return radices_[rod]; }
  [[nodiscard]] std::size_t stride(std::size_t rod) const { return strides_[rod]; }
  [[nodiscard]] std::size_t load(std::size_t state, std::size_t rod) const {
    return state / strides_[rod] % radices_[rod];
  }
  [[nodiscard]] std::size_t with(std::size_t state, std::size_t rod, std::size_t load_now) const {
    return state + load_now * strides_[rod] - load(state, rod) * strides_[rod];
  }

 private:
  std::vector<std::size_t> strides_, radices_;
  std::size_t count_ = 1;
};

using Minutes = std::vector<std::vector<double>>;  // [from load][to load]

Minutes change_minutes(const RodLoads& rod, const ChangesJudgement& judgement) {
  Minutes result;
  for (const Load& from : rod.loads) {
    std::vector<double>& row = result.emplace_back();
    for (const Load& to : rod.loads) row.push_back(in_minutes(change_time(from.carried, to.carried, judgement)));
  }
  return result;
}

// Lets one rod change: the best worth of each state, and the load the rod had before. Equal worth: no change.
void change_one(std::vector<double>& worth, std::vector<std::uint16_t>& before, const States& states, std::size_t rod,
                const Minutes& lost) {
  const std::vector<double> was = worth;
  const std::size_t stride = states.stride(rod), radix = states.radix(rod);
  for (std::size_t base = 0; base < states.count(); ++base) {
    if (states.load(base, rod) != 0) continue;
    for (std::size_t to = 0; to < radix; ++to) {
      const std::size_t state = base + to * stride;
      before[state] = static_cast<std::uint16_t>(to);
      for (std::size_t from = 0; from < radix; ++from) {
        const double changed = was[base + from * stride] - lost[from][to];
        if (changed > worth[state]) worth[state] = changed, before[state] = static_cast<std::uint16_t>(from);
      }
    }
  }
}

// Adds what the best of the rods brings in a water.
void fish(std::vector<double>& worth, const std::vector<const RodLoads*>& set, const States& states,
          std::size_t water) {
  std::vector<double> most(states.count(), 0.0);
  for (std::size_t rod = 0; rod < states.rods(); ++rod) {
    std::vector<double> gains;
    for (const Load& load : set[rod]->loads) gains.push_back(load.gain[water]);
    for (std::size_t state = 0; state < states.count(); ++state)
      most[state] = std::max(most[state], gains[states.load(state, rod)]);
  }
  for (std::size_t state = 0; state < states.count(); ++state) worth[state] += most[state];
}

}  // namespace

RodSetDay best_day(const std::vector<const RodLoads*>& set, std::size_t waters, const ChangesJudgement& judgement) {
  const States states(set);
  std::vector<Minutes> lost;
  for (const RodLoads* rod : set) lost.push_back(change_minutes(*rod, judgement));

  std::vector<double> worth(states.count(), 0.0);
  std::vector<std::vector<std::uint16_t>> before(waters * states.rods(), std::vector<std::uint16_t>(states.count()));
  for (std::size_t water = 0; water < waters; ++water) {
    for (std::size_t rod = 0; rod < states.rods() && water > 0; ++rod) {
      change_one(worth, before[water * states.rods() + rod], states, rod, lost[rod]);
    }
    fish(worth, set, states, water);
  }

  const auto last = std::ranges::max_element(worth);
  RodSetDay day{*last, Carriage(waters, std::vector<std::size_t>(states.rods()))};
  auto state = static_cast<std::size_t>(last - worth.begin());
  for (std::size_t water = waters; water-- > 0;) {
    for (std::size_t rod = 0; rod < states.rods(); ++rod) day.carriage[water][rod] = states.load(state, rod);
    for (std::size_t rod = states.rods(); rod-- > 0 && water > 0;) {
      state = states.with(state, rod, before[water * states.rods() + rod][state]);
    }
  }
  return day;
}

}  // namespace floatwright
