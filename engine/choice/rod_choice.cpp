#include "engine/choice/rod_choice.hpp"

#include <algorithm>
#include <functional>

namespace floatwright {
namespace {

constexpr std::size_t kMostStates = 1728;

std::size_t states_of(const std::vector<RodLoads>& rods, std::size_t aboard) {
  std::vector<std::size_t> sizes;
  for (const RodLoads& rod : rods) sizes.push_back(rod.loads.size());
  std::ranges::sort(sizes, std::ranges::greater{});
  std::size_t count = 1;
  for (std::size_t i = 0; i < aboard; ++i) count *= sizes[i];
  return count;
}

// Drops the least of the fullest rod's loads until every set is small enough.
void thin(std::vector<RodLoads>& rods, std::size_t aboard) {
  const auto fullness = [](const RodLoads& rod) { return rod.loads.size(); };
  while (states_of(rods, aboard) > kMostStates) {
    const auto fullest = std::ranges::max_element(rods, {}, fullness);
    if (fullest->loads.size() < 2) return;
    fullest->loads.pop_back();
  }
}

// Which of the rod's loads are on the same line: by load, the first on it.
std::vector<std::size_t> lines_of(const RodLoads& rod) {
  std::vector<std::size_t> first;
  for (const Load& load : rod.loads) {
    const auto on_it = [&](const Load& other) { return other.carried.rig.line == load.carried.rig.line; };
    first.push_back(static_cast<std::size_t>(std::ranges::find_if(rod.loads, on_it) - rod.loads.begin()));
  }
  return first;
}

// They bring the same and cost the same to change, whichever lines they are.
bool are_alike(const RodLoads& a, const RodLoads& b) {
  const auto same = [](const Load& x, const Load& y) {
    const Rig &one = x.carried.rig, &other = y.carried.rig;
    return x.gain == y.gain && x.carried.leader == y.carried.leader && one.tip == other.tip && one.fly == other.fly &&
           one.shot == other.shot;
  };
  return std::ranges::equal(a.loads, b.loads, same) && lines_of(a) == lines_of(b);
}

std::vector<std::size_t> first_alike(const std::vector<RodLoads>& rods) {
  std::vector<std::size_t> first;
  for (const RodLoads& rod : rods) {
    const auto found = std::ranges::find_if(rods, [&](const RodLoads& other) { return are_alike(other, rod); });
    first.push_back(static_cast<std::size_t>(found - rods.begin()));
  }
  return first;
}

}  // namespace

RodChoice rod_choice(const std::vector<WaterMinutes>& waters, const Tackle& tackle, const Preferences& preferences,
                     const Judgement& judgement) {
  RodChoice choice{rod_loads(waters, tackle, judgement), {}, 0};
  std::erase_if(choice.rods, [&](const RodLoads& rod) { return preferences.rods_elsewhere.contains(rod.rod); });
  const auto wanted = static_cast<std::size_t>(std::max(0, preferences.rods_aboard));
  choice.aboard = std::min(wanted, choice.rods.size());
  thin(choice.rods, choice.aboard);
  choice.alike = first_alike(choice.rods);
  return choice;
}

}  // namespace floatwright
