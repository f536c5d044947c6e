#pragma once
// Which sets of lines reach furthest: the best k of n by the weight of what at least one of them covers (maximum
// coverage), exactly. Taking a line in never takes more from what another would add (the weight is submodular), so that
// what is still to be won bounds the search; at most 64 lines.
#include <cstdint>
#include <vector>

namespace floatwright {

using LineMask = std::uint64_t;  // bit i: line i

// So much of the fishing that these lines cover it, and no others.
struct CoveredWeight {
  LineMask lines = 0;
  double weight = 0.0;
};

[[nodiscard]] double covered_by(const std::vector<CoveredWeight>& parts, LineMask set);

struct CoveringSet {
  LineMask lines = 0;
  double weight = 0.0;
};
// The best set of 1, 2, ... `most` of the lines `among`, ending with the first that no further line adds to. Of equal ones the
// one whose lines come first.
[[nodiscard]] std::vector<CoveringSet> best_sets(const std::vector<CoveredWeight>& parts, LineMask among, int most);

// Parts with the same lines as one.
[[nodiscard]] std::vector<CoveredWeight> put_together(std::vector<CoveredWeight> parts);

}  // namespace floatwright
