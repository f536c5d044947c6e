#include <algorithm>
#include <utility>

#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_caution.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

std::vector<Caution> by_weight(const Told& told) {
  std::vector<Caution> all = told.plan.cautions;
  if (told.floated != nullptr) all.insert(all.end(), told.floated->cautions.begin(), told.floated->cautions.end());
  std::stable_sort(all.begin(), all.end(), [](const Caution& a, const Caution& b) { return a.weight > b.weight; });
  return all;
}

struct SaidOnce {
  std::string what;
  bool our_limit = false;  // no source stands behind it, which the page says
  std::vector<Caution> cautions;
};

// The same sentence at several places is said once, with the places before it.
std::vector<SaidOnce> put_together(const std::vector<Caution>& cautions, const CautionWords& words) {
  std::vector<SaidOnce> out;
  for (const Caution& caution : cautions) {
    const std::string what = say_what(caution, words);
    const auto found = std::find_if(out.begin(), out.end(), [&](const SaidOnce& s) { return s.what == what; });
    if (found == out.end()) {
      out.push_back({what, caution.basis.starts_with("judgement"), {caution}});
    } else {
      found->cautions.push_back(caution);
    }
  }
  return out;
}

std::string line_of(const SaidOnce& said, const CautionWords& words) {
  std::vector<std::string> places;
  for (const Caution& caution : said.cautions) {
    std::string place = say_where_and_when(caution, words);
    if (!place.empty() && std::find(places.begin(), places.end(), place) == places.end())
      places.push_back(std::move(place));
  }
  std::string line = places.empty() ? said.what : capitalised(joined(places)) + ": " + said.what;
  return said.our_limit ? without_stop(line) + " (the limit is our judgement)." : line;
}

}  // namespace

void add_care(Page& page, const Told& told) {
  const CautionWords words{told.in.river, told.clock, told.units};
  std::vector<std::string> lines;
  for (const SaidOnce& said : put_together(by_weight(told), words)) lines.push_back(line_of(said, words));
  lines.push_back("What is not listed here is not thereby without danger: look before you row, wade or anchor.");
  page.blocks.push_back(Lines{lines, "CARE"});
}

}  // namespace floatwright
