#include "adapters/in/files/nearest.hpp"

#include <algorithm>
#include <limits>
#include <numeric>

namespace floatwright {
namespace {

// Longer words than any key are cut: the distance costs their product, and a file may hold anything.
constexpr std::size_t kLongestWord = 80;

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  a = a.substr(0, kLongestWord);
  b = b.substr(0, kLongestWord);
  std::vector<std::size_t> before_last(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  std::iota(last.begin(), last.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({changed, last[j] + 1, row[j - 1] + 1});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before_last[j - 2] + 1);
    }
    before_last.swap(last);
    last.swap(row);
  }
  return last[b.size()];
}

std::string nearest_word(std::string_view typed, const std::vector<std::string>& known) {
  std::size_t least = std::numeric_limits<std::size_t>::max();
  std::string nearest;
  for (const std::string& word : known) {
    const std::size_t distance = edit_distance(typed, word);
    if (distance >= least) continue;
    least = distance;
    nearest = word;
  }
  return nearest;
}

}  // namespace floatwright
