#include "engine/choice/line_at_flow.hpp"

#include <algorithm>
#include <limits>
#include <utility>

#include "engine/choice/ranking.hpp"
#include "engine/choice/rigging.hpp"

namespace floatwright {
namespace {

constexpr double kTableError = 0.05;  // of seconds or worth, nearly always

// By seconds within a method, else by worth.
double over(const ScoredRig& rig, const ScoredRig& in_use) {
  const bool one_method = rig.technique.method == in_use.technique.method;
  const double had = one_method ? in_use.seconds : in_use.worth, has = one_method ? rig.seconds : rig.worth;
  return had > 0.0 ? has / had : has > 0.0 ? std::numeric_limits<double>::infinity() : 0.0;
}

double foregone(const LineAsked& asked, const Rig& rig, Method method) {
  double most = 1.0;
  for (const Foregone& f : asked.foregone)
    if (same_line(f.rig, rig) && f.method == method) most = std::max(most, f.ratio);
  return most;
}

}  // namespace

LineAtFlow::LineAtFlow(const LineAsked& asked, SceneAtFlow& here, FlowsAhead& ahead)
    : asked_(&asked),
      here_(&here),
      ahead_(&ahead),
      on_tables_(asked.tables != nullptr && here.scene.in_tables.middle.has_value()),
      leeway_(on_tables_ ? kTableError : 0.0),
      in_use_(asked.in_use),
      finding_(found()) {}

std::optional<ScoredRig> LineAtFlow::read(const Way& way) const {
  const auto cast = middle_casts(here_->scene, way.rig, {&way.technique, 1}, Casts::FromTables);
  if (!cast.front()) return std::nullopt;
  return score_middle(here_->scene, way, *cast.front());
}

// Where nothing is found so, what was read stands.
void LineAtFlow::work_out(Rival& rival) {
  if (std::exchange(rival.is_worked_out, true) || !on_tables_ || !is_pulled(rival.way->technique.method)) return;
  const auto& cast = ahead_->cast(*here_, *rival.way);
  if (cast) rival.scored = score_middle(here_->scene, *rival.way, *cast);
}

// Each way in which it is fished there by its method, the most seconds first.
void LineAtFlow::read_ways_in_use() {
  for (const Way& way : asked_->candidates) {
    const bool uses = same_line(way.rig, asked_->in_use.rig) && way.technique.method == asked_->in_use.technique.method;
    if (!uses) continue;
    if (auto scored = read(way)) ways_.push_back({&way, true, false, std::move(scored)});
  }
  std::ranges::stable_sort(ways_, std::ranges::greater{}, [](const Rival& way) { return way.scored->seconds; });
}

// `leeway`: what may be missing to it.
bool LineAtFlow::takes_over(const ScoredRig& rig, const ScoredRig& in_use, double leeway) const {
  const ChoiceJudgement& judgement = asked_->judgement.choice;
  if (!fishes(rig, judgement)) return false;
  const double more =
      (1.0 + judgement.worth_changing) * (1.0 - leeway) * foregone(*asked_, rig.rig, rig.technique.method);
  return over(rig, in_use) >= more;
}

// A method that could not be worth enough however well it fished is not even read.
bool LineAtFlow::may_take_over(Rival& rival, const ScoredRig& in_use, double leeway) const {
  const Method method = rival.way->technique.method;
  const double enough = (1.0 + asked_->judgement.choice.worth_changing) * (1.0 - leeway) * in_use.worth;
  if (method != in_use.technique.method && most_worth_[static_cast<std::size_t>(method)] < enough) return false;
  if (!std::exchange(rival.is_read, true)) rival.scored = read(*rival.way);
  return rival.scored && takes_over(*rival.scored, in_use, leeway);
}

std::vector<LineAtFlow::Rival*> LineAtFlow::challengers(const ScoredRig& in_use, double leeway) {
  std::vector<Rival*> result;
  for (Rival& rival : rivals_)
    if (may_take_over(rival, in_use, leeway)) result.push_back(&rival);
  return result;
}

// By the tables alone: it fishes and nothing takes over, however their errors lie. Most flows are settled so.
bool LineAtFlow::surely_holds() {
  if (!challengers(in_use_, 2.0 * leeway_).empty()) return false;
  ScoredRig least = in_use_;
  least.seconds *= 1.0 - leeway_;
  least.efficiency *= 1.0 - leeway_;
  return fishes(least, asked_->judgement.choice);
}

// Works out those ways of it that may be its best, and stops at one that holds.
bool LineAtFlow::holds_in_some_way() {
  const double nearly = (1.0 - leeway_) * ways_.front().scored->seconds;
  const auto far = [&](const Rival& way) { return way.scored->seconds < nearly; };
  const auto end = std::ranges::find_if(ways_, far);
  for (auto way = ways_.begin(); way != end; ++way) {
    work_out(*way);
    if (way == ways_.begin() || way->scored->seconds > in_use_.seconds) in_use_ = *way->scored;
    if (challengers(in_use_, leeway_).empty() && fishes(in_use_, asked_->judgement.choice)) return true;
  }
  return false;
}

bool LineAtFlow::some_takes_over() {
  std::vector<Rival*> near = challengers(in_use_, leeway_);
  std::ranges::stable_sort(near, std::ranges::greater{}, [&](const Rival* r) { return over(*r->scored, in_use_); });
  return std::ranges::any_of(near, [&](Rival* rival) {
    work_out(*rival);
    return takes_over(*rival->scored, in_use_, 0.0);
  });
}

LineThere LineAtFlow::found() {
  read_ways_in_use();
  if (ways_.empty()) return LineThere::Unknown;
  in_use_ = *ways_.front().scored;
  for (std::size_t i = 0; i < kMethods; ++i) most_worth_[i] = most_worth(here_->scene, static_cast<Method>(i));
  for (const Way& way : asked_->candidates)
    if (!same_line(way.rig, asked_->in_use.rig)) rivals_.push_back({&way});
  if (surely_holds() || holds_in_some_way()) return LineThere::Holds;
  if (some_takes_over()) return LineThere::Changes;
  return fishes(in_use_, asked_->judgement.choice) ? LineThere::Holds : LineThere::Unknown;
}

std::vector<ScoredRig> LineAtFlow::better() {
  std::vector<ScoredRig> result;
  for (Rival* rival : challengers(in_use_, leeway_)) {
    work_out(*rival);
    if (takes_over(*rival->scored, in_use_, 0.0)) result.push_back(*rival->scored);
  }
  return result;
}

std::vector<Foregone> LineAtFlow::ratios() {
  std::vector<Foregone> result;
  for (const ScoredRig& rig : better()) result.push_back({rig.rig, rig.technique.method, over(rig, in_use_)});
  return result;
}

ScoredRig LineAtFlow::advised() {
  const std::vector<ScoredRig> among = better();
  ScoredRefs refs;
  for (const ScoredRig& rig : among) refs.push_back(&rig);
  const std::vector<Rig> none_rigged;
  return *advised_by_method(refs, {asked_->tackle, asked_->judgement.choice, none_rigged}).front();
}

}  // namespace floatwright
