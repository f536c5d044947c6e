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

// The first rod's loads are those that stand side by side.
void change_first(std::vector<double>& worth, const std::vector<double>& was, std::size_t radix, const Minutes& lost) {
  for (std::size_t base = 0; base < worth.size(); base += radix) {
    double* const here = &worth[base];
    for (std::size_t from = 0; from < radix; ++from) {
      const double come = was[base + from];
      const double* const minutes = lost[from].data();
      for (std::size_t to = 0; to < radix; ++to) here[to] = std::max(here[to], come - minutes[to]);
    }
  }
}

// Lets one rod change: the best worth of each state, and into `before`, if there is one, the load the rod had. Equal
// worth: no change. States that differ in the loads of the rods before it alone stand side by side.
void change_one(std::vector<double>& worth, std::uint16_t* before, const States& states, std::size_t rod,
                const Minutes& lost) {
  const std::vector<double> was = worth;
  const std::size_t stride = states.stride(rod), radix = states.radix(rod);
  if (stride == 1 && !before) return change_first(worth, was, radix, lost);
  for (std::size_t base = 0; base < states.count(); base += stride * radix) {
    for (std::size_t to = 0; to < radix; ++to) {
      const std::size_t here = base + to * stride;
      if (before) std::fill_n(before + here, stride, static_cast<std::uint16_t>(to));
      for (std::size_t from = 0; from < radix; ++from) {
        const double* const come = &was[base + from * stride];
        const double minutes = lost[from][to];
        if (!before) {
          for (std::size_t i = 0; i < stride; ++i) worth[here + i] = std::max(worth[here + i], come[i] - minutes);
          continue;
        }
        for (std::size_t i = 0; i < stride; ++i) {
          const double changed = come[i] - minutes;
          if (changed > worth[here + i]) worth[here + i] = changed, before[here + i] = static_cast<std::uint16_t>(from);
        }
      }
    }
  }
}

// Adds what the best of the rods brings in a water.
void fish(std::vector<double>& worth, const std::vector<const RodLoads*>& set, const States& states,
          std::size_t water) {
  std::vector<double> most(states.count(), 0.0);
  for (std::size_t rod = 0; rod < states.rods(); ++rod) {
    const std::size_t stride = states.stride(rod), radix = states.radix(rod);
    for (std::size_t base = 0; base < states.count(); base += stride * radix) {
      for (std::size_t load = 0; load < radix; ++load) {
        const double gain = set[rod]->loads[load].gain[water];
        double* const here = &most[base + load * stride];
        for (std::size_t i = 0; i < stride; ++i) here[i] = std::max(here[i], gain);
      }
    }
  }
  for (std::size_t state = 0; state < states.count(); ++state) worth[state] += most[state];
}

using Before = std::vector<std::vector<std::uint16_t>>;  // by water and rod, by state: the load it had before

// The worth of each state after the last water.
std::vector<double> through_the_day(const std::vector<const RodLoads*>& set, const States& states, std::size_t waters,
                                    const ChangesJudgement& judgement, Before* before) {
  std::vector<Minutes> lost;
  for (const RodLoads* rod : set) lost.push_back(change_minutes(*rod, judgement));
  std::vector<double> worth(states.count(), 0.0);
  for (std::size_t water = 0; water < waters; ++water) {
    for (std::size_t rod = 0; rod < states.rods() && water > 0; ++rod)
      change_one(worth, before ? (*before)[water * states.rods() + rod].data() : nullptr, states, rod, lost[rod]);
    fish(worth, set, states, water);
  }
  return worth;
}

}  // namespace

double worth_at_most(const std::vector<const RodLoads*>& set, std::size_t waters) {
  double worth = 0.0;
  for (std::size_t water = 0; water < waters; ++water) {
    double most = 0.0;
    for (const RodLoads* rod : set)
      for (const Load& load : rod->loads) most = std::max(most, load.gain[water]);
    worth += most;
  }
  return worth;
}

double best_worth(const std::vector<const RodLoads*>& set, std::size_t waters, const ChangesJudgement& judgement) {
  return std::ranges::max(through_the_day(set, States(set), waters, judgement, nullptr));
}

RodSetDay best_day(const std::vector<const RodLoads*>& set, std::size_t waters, const ChangesJudgement& judgement) {
  const States states(set);
  Before before(waters * states.rods(), std::vector<std::uint16_t>(states.count()));
  const std::vector<double> worth = through_the_day(set, states, waters, judgement, &before);

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
