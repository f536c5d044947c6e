#include "engine/choice/changes.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/choice/ranking.hpp"
#include "engine/choice/rigging.hpp"

namespace floatwright {
namespace {

// The best few ways of each line and method; more of the line in use, which may be fished another way in other water.
std::vector<Way> candidate_ways(const std::vector<ScoredRig>& scored, const ScoredRig& in_use) {
  constexpr std::ptrdiff_t kOfTheLineInUse = 4, kOfOthers = 2;
  ScoredRefs by_seconds;
  for (const ScoredRig& rig : scored) by_seconds.push_back(&rig);
  std::ranges::stable_sort(by_seconds, std::ranges::greater{}, &ScoredRig::seconds);
  std::vector<Way> result{{in_use.rig, in_use.technique}};
  for (const ScoredRig* rig : by_seconds) {
    const auto alike = [&](const Way& way) {
      return same_line(way.rig, rig->rig) && way.technique.method == rig->technique.method;
    };
    const bool uses = same_line(rig->rig, in_use.rig) && rig->technique.method == in_use.technique.method;
    if (std::ranges::count_if(result, alike) < (uses ? kOfTheLineInUse : kOfOthers))
      result.push_back({rig->rig, rig->technique});
  }
  return result;
}

}  // namespace

ChangeSearch::ChangeSearch(const ScoredRig& in_use, const std::vector<ScoredRig>& scored, PresentFlow now,
                           const Tackle& tackle, const Preferences& preferences, const Judgement& judgement,
                           const FishingTables* tables)
    : now_(std::move(now)), asked_{candidate_ways(scored, in_use), in_use, tackle, preferences, judgement, tables} {
  auto water = now_.water_at(now_.flow);
  if (!water) return;
  FlowsAhead none_ahead(now_, asked_);
  SceneAtFlow here(*std::move(water), asked_);
  LineAtFlow present(asked_, here, none_ahead);
  if (present.finding() == LineThere::Changes) asked_.foregone = present.ratios();
}

// None where nothing can be said of it.
std::optional<LineAtFlow> ChangeSearch::at_flow(FlowsAhead& ahead, double factor) const {
  SceneAtFlow* here = ahead.at(factor);
  if (here == nullptr) return std::nullopt;
  LineAtFlow there(asked_, *here, ahead);
  if (there.finding() == LineThere::Unknown) return std::nullopt;
  return there;
}

// Between a factor at which the line holds and one at which it changes, halved twice in logs.
LineChange ChangeSearch::narrowed(FlowsAhead& ahead, double holds, double changes, LineAtFlow found) const {
  for (int halving = 0; halving < 2; ++halving) {
    const double middle = std::sqrt(holds * changes);
    ahead.expect(halving == 0 ? std::vector{std::sqrt(holds * middle), std::sqrt(middle * changes)}
                              : std::vector<double>{});
    auto there = at_flow(ahead, middle);
    if (there && there->finding() == LineThere::Changes) {
      changes = middle;
      found = *std::move(there);
    } else {
      holds = middle;
    }
  }
  return {changes * now_.flow, found.advised()};
}

ChangeSearch::Side ChangeSearch::look(double direction) const {
  const FlowJudgement& judgement = asked_.judgement.flow;
  const auto factor_at = [&](double step) { return std::exp2(direction * step / judgement.steps_per_doubling); };
  FlowsAhead ahead(now_, asked_);
  Side side{std::nullopt, now_.flow};
  double last = 1.0;  // factor
  for (double step = 1.0; step <= judgement.steps; ++step) {
    const double factor = factor_at(step), next = factor_at(step + 1.0);
    ahead.expect({next, std::sqrt(last * factor), std::sqrt(factor * next)});
    auto there = at_flow(ahead, factor);
    if (!there) return side;
    if (there->finding() == LineThere::Changes) {
      side.change = narrowed(ahead, last, factor, *std::move(there));
      side.looked_to = side.change->at;
      return side;
    }
    last = factor;
    side.looked_to = factor * now_.flow;
  }
  return side;
}

void ChangeSearch::look_below(WaterChoice& choice) const {
  Side side = look(-1.0);
  choice.holds.from = side.looked_to;
  choice.changes_below = std::move(side.change);
}

void ChangeSearch::look_above(WaterChoice& choice) const {
  Side side = look(1.0);
  choice.holds.to = side.looked_to;
  choice.changes_above = std::move(side.change);
}

void changes_at(WaterChoice& choice, const std::vector<ScoredRig>& scored, const WaterAtFlow& water_at, Discharge now,
                const Tackle& tackle, const Preferences& preferences, const Judgement& judgement,
                const FishingTables* tables) {
  if (!choice.best || now <= Discharge{}) return;
  const ChangeSearch search(*choice.best, scored, {now, water_at}, tackle, preferences, judgement, tables);
  search.look_below(choice);
  search.look_above(choice);
}

}  // namespace floatwright
