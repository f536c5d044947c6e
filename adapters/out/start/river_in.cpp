#include <algorithm>
#include <cctype>
#include <sstream>
#include <vector>

#include "adapters/out/start/first_files.hpp"

namespace floatwright {
namespace {

std::string upper_case(std::string word) {
  std::ranges::transform(word, word.begin(), [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
  return word;
}

// Words, whole or cut short, with which names of gauges go on after the river's; from recorded names, no list of the
// services'.
bool begins_the_place(const std::string& word) {
  static const std::vector<std::string> kWords{"AT",  "@",     "NR",  "NR.", "NEAR", "BELOW", "BLW", "BL",
                                               "BL.", "ABOVE", "ABV", "AB",  "AB.",  "BEL",   "IN",  "ON"};
  return std::ranges::find(kWords, upper_case(word)) != kWords.end();
}

// Of a name all in capitals; one that is written in both is left as it is.
std::string in_both_cases(std::string name) {
  if (std::ranges::any_of(name, [](unsigned char c) { return std::islower(c) != 0; })) return name;
  bool inside = false;
  for (char& c : name) {
    const auto sign = static_cast<unsigned char>(c);
    if (inside) c = static_cast<char>(std::tolower(sign));
    inside = std::isalpha(sign) != 0 || c == '\'';
  }
  return name;
}

}  // namespace

std::string river_in(const std::string& gauge_name) {
  std::istringstream words(gauge_name);
  std::string river, word;
  while (words >> word && (river.empty() || !begins_the_place(word))) {
    const bool last = word.ends_with(',');
    if (last) word.pop_back();
    river += (river.empty() ? "" : " ") + word;
    if (last) break;
  }
  return in_both_cases(river);
}

}  // namespace floatwright
