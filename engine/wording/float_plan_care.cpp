#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "engine/trip/cautions_of_all.hpp"
#include "engine/trip/heat.hpp"
#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_caution.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostPlacesSummed = 3;  // of a day without a float, whose stretches are the whole river

struct SaidOnce {
  std::string what;
  std::string limit;  // in a word or two, where it comes from
  std::vector<Caution> cautions;
};

std::string limit_words(const Caution& caution) {
  if (caution.our_judgement) return "the limit is our judgement";
  return caution.typed_limit ? "your own limit" : caution.published;
}

// On a day without a float one place stands for the others, whatever their figures.
bool stands_for(const Caution& first, const Caution& other) {
  if (first.kind != other.kind || !first.about.empty() || !other.about.empty()) return false;
  if (first.kind == CautionKind::FastRise) return true;
  const auto over = [](const Caution& c) { return c.flow > c.flow_limit; };
  return first.kind == CautionKind::BoatLimit && over(first) == over(other);
}

// The same sentence at several places is said once, with the places before it.
std::vector<SaidOnce> put_together(const std::vector<Caution>& cautions, const CautionWords& words, bool summed) {
  std::vector<SaidOnce> out;
  for (const Caution& caution : cautions) {
    const std::string what = say_what(caution, words);
    const auto found = std::find_if(out.begin(), out.end(), [&](const SaidOnce& s) {
      return s.what == what || (summed && stands_for(s.cautions.front(), caution));
    });
    if (found == out.end()) {
      out.push_back({what, limit_words(caution), {caution}});
    } else {
      found->cautions.push_back(caution);
    }
  }
  return out;
}

// Places that have commas of their own are parted by semicolons.
std::string joined_places(const std::vector<std::string>& places) {
  const bool commas =
      std::any_of(places.begin(), places.end(), [](const std::string& p) { return p.find(',') != std::string::npos; });
  if (!commas) return joined(places);
  std::string out;
  for (const std::string& place : places) out += (out.empty() ? "" : "; ") + place;
  return out;
}

// "Mill run" of "Mill run (bank)"; empty where no water stands behind it: hours may.
std::string reach_of(const std::string& place) {
  const std::size_t water = place.rfind(" (");
  const bool named = place.ends_with(')') && water != std::string::npos &&
                     place.find_first_of("0123456789", water) == std::string::npos;
  return named ? place.substr(0, water) : "";
}

// "Mill run (run)" and "Mill run (bank)" are "Mill run (run, bank)".
void add_place(std::vector<std::string>& places, std::string place) {
  const std::string reach = reach_of(place);
  if (place.empty() || std::ranges::find(places, place) != places.end()) return;
  if (places.empty() || reach.empty() || reach_of(places.back()) != reach) {
    places.push_back(std::move(place));
    return;
  }
  places.back().back() = ',';
  places.back() += " " + place.substr(reach.size() + 2);
}

// Summed: the first of many places stands for them all.
std::string line_of(const SaidOnce& said, const CautionWords& words, bool summed) {
  std::vector<std::string> places;
  for (const Caution& caution : said.cautions) add_place(places, say_where_and_when(caution, words));
  if (summed && places.size() > kMostPlacesSummed)
    places = {fmt::format("{} and {} more places", places.front(), places.size() - 1)};
  std::string line = places.empty() ? said.what : capitalised(joined_places(places)) + ": " + said.what;
  return said.limit.empty() || words.brief ? line : without_stop(line) + " (" + said.limit + ").";
}

}  // namespace

std::vector<Caution> cautions_by_weight(const Told& told) {
  std::vector<Caution> all = told.plan.cautions;
  // Of a spot that is ruled out too: they say what rules it out.
  const PlannedStretch* there = at_spot(told) ? &told.plan.stretches.front() : told.floated;
  const std::vector<Caution> met = there != nullptr ? there->cautions : cautions_of_all(told.plan.stretches);
  all.insert(all.end(), met.begin(), met.end());
  std::stable_sort(all.begin(), all.end(), [](const Caution& a, const Caution& b) { return a.weight > b.weight; });
  return with_first_heat_stop(std::move(all));
}

std::vector<std::string> care_lines(const Told& told, bool brief) {
  const CautionWords words{told.in.river, told.clock, told.units, brief, true};
  std::vector<std::string> lines;
  const bool summed = told.floated == nullptr && !at_spot(told);
  for (const SaidOnce& said : put_together(cautions_by_weight(told), words, summed))
    lines.push_back(line_of(said, words, summed));
  lines.push_back(brief
                      ? "Look before you row, wade or anchor: this list is not whole."
                      : "What is not listed here is not thereby without danger: look before you row, wade or anchor.");
  return lines;
}

void add_care(Page& page, const Told& told) { page.blocks.push_back(Lines{care_lines(told, false), "CARE"}); }

}  // namespace floatwright
