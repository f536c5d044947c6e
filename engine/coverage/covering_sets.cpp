#include "engine/coverage/covering_sets.hpp"

#include <algorithm>
#include <bit>
#include <functional>
#include <map>

namespace floatwright {
namespace {

constexpr double kTrace = 1e-9;  // of the whole weight: sums taken in another order

class Search {
 public:
  Search(const std::vector<CoveredWeight>& parts, LineMask among, int size) : size_(size), trace_(kTrace * covered_by(parts, among)) {
    for (int line = 0; line < 64; ++line)
      if (among >> line & 1u) lines_.push_back(line);
    look(parts, 0, {});
  }
  [[nodiscard]] CoveringSet best() const { return best_; }

 private:
  // `left`: what the lines taken so far do not cover. `from`: into lines_, those that may still be taken.
  void look(const std::vector<CoveredWeight>& left, std::size_t from, CoveringSet so_far) {
    const int more = size_ - std::popcount(so_far.lines);
    if (so_far.weight > best_.weight + trace_ || best_.lines == 0) best_ = so_far;
    if (more == 0 || from == lines_.size()) return;
    std::vector<double> gains;
    for (std::size_t i = from; i < lines_.size(); ++i) gains.push_back(covered_by(left, LineMask{1} << lines_[i]));
    if (so_far.weight + most_of(gains, more) <= best_.weight + trace_) return;
    const LineMask next = LineMask{1} << lines_[from];
    std::vector<CoveredWeight> uncovered;
    std::ranges::copy_if(left, std::back_inserter(uncovered), [&](const CoveredWeight& part) { return !(part.lines & next); });
    look(uncovered, from + 1, {so_far.lines | next, so_far.weight + gains.front()});
    look(left, from + 1, so_far);
  }

  static double most_of(std::vector<double> gains, int count) {
    std::ranges::sort(gains, std::greater<>{});
    double sum = 0.0;
    for (std::size_t i = 0; i < gains.size() && i < static_cast<std::size_t>(count); ++i) sum += gains[i];
    return sum;
  }

  int size_;
  double trace_;
  std::vector<int> lines_;
  CoveringSet best_;
};

}  // namespace

double covered_by(const std::vector<CoveredWeight>& parts, LineMask set) {
  double weight = 0.0;
  for (const CoveredWeight& part : parts)
    if (part.lines & set) weight += part.weight;
  return weight;
}

std::vector<CoveringSet> best_sets(const std::vector<CoveredWeight>& parts, LineMask among, int most) {
  std::vector<CoveringSet> sets;
  const double all = covered_by(parts, among);
  for (int size = 1; size <= most && size <= std::popcount(among); ++size) {
    const CoveringSet best = Search(parts, among, size).best();
    if (best.weight <= (sets.empty() ? 0.0 : sets.back().weight) + kTrace * all) break;
    sets.push_back(best);
  }
  return sets;
}

std::vector<CoveredWeight> put_together(std::vector<CoveredWeight> parts) {
  std::map<LineMask, double> weights;
  for (const CoveredWeight& part : parts) weights[part.lines] += part.weight;
  std::vector<CoveredWeight> together;
  for (const auto& [lines, weight] : weights) together.push_back({lines, weight});
  return together;
}

}  // namespace floatwright
