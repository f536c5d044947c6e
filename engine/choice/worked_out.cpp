#include "engine/choice/worked_out.hpp"

#include <algorithm>
#include <iterator>
#include <numeric>
#include <set>

#include "engine/choice/known_casts.hpp"
#include "engine/choice/ranking.hpp"

namespace floatwright {
namespace {

constexpr int kMostRounds = 6;  // of working out what would be advised; then a table's word is taken

bool same_place(const ScoredRig& a, const ScoredRig& b) {
  return a.rig == b.rig && a.technique.platform == b.technique.platform;
}

// Those of one rig on one platform share the start of a cast.
void work_out_anew(KnownCasts& casts, std::vector<ScoredRig>& scored, const std::vector<std::size_t>& which) {
  std::set<std::size_t> left(which.begin(), which.end());
  while (!left.empty()) {
    const ScoredRig& first = scored[*left.begin()];
    std::vector<std::size_t> group;
    std::ranges::copy_if(left, std::back_inserter(group), [&](std::size_t i) { return same_place(scored[i], first); });
    RigWays ways{first.rig, {}};
    for (const std::size_t i : group) ways.techniques.push_back(scored[i].technique);
    for (const std::size_t i : group) left.erase(i);
    auto anew = casts.scored(ways);
    if (anew.empty()) continue;  // no answer: the table's stands
    for (std::size_t i = 0; i < group.size(); ++i) scored[group[i]] = std::move(anew[i]);
  }
}

// The best few by the tables; not those so far behind that hardly an error of a table brings them level.
std::vector<std::size_t> best_few(const std::vector<ScoredRig>& scored, double few) {
  constexpr double kLevelAtMost = 0.82;  // of the best: a tie is within 10 %, a table within 4 % in the mean
  std::vector<std::size_t> order(scored.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order, std::ranges::greater{}, [&](std::size_t i) { return scored[i].seconds; });
  if (few < static_cast<double>(order.size())) order.resize(static_cast<std::size_t>(few));
  std::erase_if(order, [&](std::size_t i) { return scored[i].seconds < kLevelAtMost * scored[order.front()].seconds; });
  return order;
}

std::vector<std::size_t> advised_on_platforms(const Scene& scene, const std::vector<ScoredRig>& scored) {
  const std::vector<Rig> none_rigged;
  const RankingRules rules{scene.tackle, scene.judgement.choice, none_rigged};
  std::vector<std::size_t> advised;
  for (const Platform platform : scene.water.platforms) {
    ScoredRefs on_it;
    for (const ScoredRig& one : scored)
      if (one.technique.platform == platform) on_it.push_back(&one);
    if (const ScoredRig* rig = advised_rig(on_it, rules))
      advised.push_back(static_cast<std::size_t>(rig - scored.data()));
  }
  return advised;
}

}  // namespace

void work_out_the_best(const Scene& scene, std::vector<ScoredRig>& of_method) {
  KnownCasts casts(scene);
  std::set<std::size_t> done;
  std::vector<std::size_t> next = best_few(of_method, scene.judgement.choice.exactly_scored);
  for (int round = 0; round <= kMostRounds && !next.empty(); ++round) {
    work_out_anew(casts, of_method, next);
    done.insert(next.begin(), next.end());
    next = advised_on_platforms(scene, of_method);
    std::erase_if(next, [&](std::size_t i) { return done.contains(i); });
  }
}

}  // namespace floatwright
