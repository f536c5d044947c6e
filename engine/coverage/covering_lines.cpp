#include "engine/coverage/covering_lines.hpp"

#include <algorithm>

namespace floatwright {
namespace {

struct BestByMethod {
  const std::vector<LineSeconds>* lines;
  double seconds = 0.0;
  double worth = 0.0;
};

}  // namespace

LineMask covering_lines(const SecondsByMethod& seconds, const Conditions& conditions, const Preferences& preferences,
                        const Judgement& judgement) {
  std::vector<BestByMethod> methods;
  double most_worth = 0.0;
  for (const auto& [method, lines] : seconds) {
    if (lines.empty() || (method == Method::Dry && !conditions.hatch)) continue;
    const auto best = std::ranges::max_element(lines, {}, &LineSeconds::seconds);
    if (best->seconds < judgement.choice.least_seconds || best->efficiency < judgement.choice.least_efficiency) continue;
    const double suited = suits(method, conditions, judgement.suits);
    const double its_worth = worth(preferences.methods.at(method), suited, best->efficiency, judgement.choice);
    methods.push_back({&lines, best->seconds, its_worth});
    most_worth = std::max(most_worth, its_worth);
  }
  LineMask covering = 0;
  for (const BestByMethod& one : methods) {
    if (!(one.worth > 0.0) || one.worth < (1.0 - judgement.choice.tie) * most_worth) continue;
    for (std::size_t i = 0; i < one.lines->size(); ++i)
      if ((*one.lines)[i].seconds >= kCovers * one.seconds) covering |= LineMask{1} << i;
  }
  return covering;
}

}  // namespace floatwright
