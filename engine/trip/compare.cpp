#include "engine/trip/compare.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "engine/trip/line_of_the_day.hpp"
#include "engine/trip/score_waters.hpp"

namespace floatwright {
namespace {

bool has_line(const PlannedStretch& planned) { return planned.fished > Duration{}; }

bool flow_known(const PlannedStretch& planned) {
  return std::all_of(planned.reaches.begin(), planned.reaches.end(),
                     [](const PlannedReach& reach) { return reach.discharge.has_value(); });
}

bool comes_before(const ComparedStretch& a, const ComparedStretch& b) {
  const auto standing = [](const PlannedStretch& p) {
    if (p.verdict == Verdict::RuledOut) return 3;
    if (!has_line(p)) return 2;
    return flow_known(p) ? 0 : 1;
  };
  const int left = standing(a.planned), right = standing(b.planned);
  if (left != right) return left < right;
  if (a.planned.worth != b.planned.worth) return a.planned.worth > b.planned.worth;
  // Of equals the upper and the shorter first, so that the order of the file does not matter.
  if (a.planned.from_place != b.planned.from_place) return a.planned.from_place > b.planned.from_place;
  return a.planned.to_place > b.planned.to_place;
}

std::string name_of(const PlannedStretch& planned) { return planned.from_name + " to " + planned.to_name; }

int percent_of(double share) { return static_cast<int>(std::lround(100.0 * share)); }

// No number with a unit: percent only.
std::string why_best(const std::vector<ComparedStretch>& all) {
  const PlannedStretch& best = all.front().planned;
  if (all.size() == 1) return "no other stretch was looked at";
  const auto second =
      std::find_if(all.begin() + 1, all.end(), [](const ComparedStretch& p) { return p.planned.verdict == Verdict::Possible; });
  if (second == all.end()) return "every other stretch breaks a limit";
  const PlannedStretch& next = second->planned;
  if (!has_line(next) || next.worth <= 0.0) return "no line aboard fishes on any other";
  if (flow_known(best) && !flow_known(next)) return "the flow of " + name_of(next) + " is not known all the way";
  const int more = percent_of(best.worth / next.worth - 1.0);
  if (more < 1) return "its fishing hours are worth as much as those of " + name_of(next) + ", no other's more";
  return "its fishing hours are worth " + std::to_string(more) + " % more than those of " + name_of(next);
}

std::string why_not_best(const PlannedStretch& planned, const PlannedStretch& best) {
  if (!has_line(planned)) return "no line aboard fishes there, or the water is not known";
  if (best.verdict != Verdict::Recommended) return "";
  if (!flow_known(planned)) return "the flow of part of it is unknown";
  const int less = percent_of(1.0 - planned.worth / best.worth);
  return less < 1 ? "its fishing hours are worth as much" : "its fishing hours are worth " + std::to_string(less) + " % less";
}

void judge(std::vector<ComparedStretch>& all) {
  PlannedStretch& best = all.front().planned;
  if (best.verdict == Verdict::Possible && has_line(best)) {
    best.verdict = Verdict::Recommended;
    best.why = why_best(all);
  }
  for (ComparedStretch& pair : all) {
    if (pair.planned.verdict == Verdict::Possible) pair.planned.why = why_not_best(pair.planned, best);
  }
}

using Stretches = std::vector<ComparedStretch*>;

Stretches refs_to(std::vector<ComparedStretch>& all) {
  Stretches refs;
  for (ComparedStretch& one : all) refs.push_back(&one);
  return refs;
}

// All of them scored in the same way.
void plan_each(const RiverDay& day, WaterBook& book, const Stretches& stretches, const DoEach& do_each) {
  std::vector<const Stretch*> refs;
  for (const ComparedStretch* one : stretches) refs.push_back(&one->stretch);
  score_waters(day, book, stretches.front()->how, refs, do_each);
  do_each(stretches.size(), [&](std::size_t i) {
    ComparedStretch& one = *stretches[i];
    one.planned = planned_stretch(day, book, one.how, one.stretch);
  });
}

void put_in_order(std::vector<ComparedStretch>& all) { std::stable_sort(all.begin(), all.end(), comes_before); }

// Of stretches that are sorted: the first, and then those that an error of the tables may have put behind it.
Stretches worth_working_out(std::vector<ComparedStretch>& all) {
  constexpr double kTableError = 0.04;  // of a stretch's worth (docs/accuracy.md: 3.4 % at the most)
  const auto on_tables = [](const ComparedStretch& one) {
    return one.how == Scored::OnTables && one.planned.verdict != Verdict::RuledOut;
  };
  ComparedStretch& best = all.front();
  if (on_tables(best)) return {&best};
  Stretches unsure;
  for (ComparedStretch& one : all)
    if (on_tables(one) && one.planned.worth >= (1.0 - kTableError) * best.planned.worth) unsure.push_back(&one);
  return unsure;
}

}  // namespace

std::vector<ComparedStretch> compared(const RiverDay& day, WaterBook& book, const DoEach& do_each) {
  std::vector<ComparedStretch> all;
  for (Stretch& stretch : stretches(day)) all.push_back({std::move(stretch), {}, Scored::OnTables});
  if (all.empty()) return {};
  plan_each(day, book, refs_to(all), do_each);
  put_in_order(all);
  for (auto unsure = worth_working_out(all); !unsure.empty(); unsure = worth_working_out(all)) {
    for (ComparedStretch* one : unsure) one->how = Scored::WorkedOut;
    plan_each(day, book, unsure, do_each);
    put_in_order(all);
  }
  judge(all);
  return all;
}

std::vector<PlannedStretch> compared_stretches(const RiverDay& day, WaterBook& book, const DoEach& do_each) {
  std::vector<ComparedStretch> all = compared(day, book, do_each);
  std::vector<PlannedStretch> planned;
  for (ComparedStretch& one : all) {
    if (one.planned.verdict == Verdict::Recommended) {
      add_changes(day, book, one.stretch, one.planned, do_each);
      one.planned.line = line_of_the_day(day, book, one.stretch, one.planned);
    }
    planned.push_back(std::move(one.planned));
  }
  return planned;
}

}  // namespace floatwright
