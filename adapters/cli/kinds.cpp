#include "adapters/cli/kinds.hpp"

#include <algorithm>
#include <iterator>

#include "adapters/cli/day_letter.hpp"
#include "adapters/cli/sheet_pdf.hpp"
#include "adapters/out/calendar/plan_ics.hpp"
#include "adapters/out/json/boats_json.hpp"
#include "adapters/out/json/plan_json.hpp"
#include "adapters/out/map/plan_geojson.hpp"
#include "adapters/out/map/plan_gpx.hpp"
#include "adapters/out/text/print_text.hpp"
#include "engine/wording/float_plan.hpp"
#include "engine/wording/left_ashore.hpp"

namespace floatwright {
namespace {

using Composer = Page (*)(const DayPlan&, const DayInputs&);

std::vector<Page> page_a_boat(const Printed& day, Composer composer) {
  std::vector<Page> pages;
  for (const BoatDay& boat : day.boats) pages.push_back(composer(boat.plan, boat.in));
  return pages;
}

// One page under the other; a form feed between them starts a new sheet on a line printer (ISO 646).
std::string texts(const Printed& day, Composer composer) {
  std::string all;
  for (const Page& page : page_a_boat(day, composer)) all += (all.empty() ? "" : "\f") + as_text(page);
  return all;
}

using Text = Result<std::string>;

Text json(const Printed& day) {
  const BoatDay& first = day.boats.front();
  const bool of_boats = !first.in.settings.boat_of_several.empty();
  return of_boats ? boats_json(day.boats) : plan_json(first.plan, first.in);
}

const Kind kKinds[] = {
    {"plan", "-plan.txt", [](const Printed& day) -> Text { return texts(day, float_plan); }},
    {"sheet", "-sheet.pdf", sheet_pdf},
    {"mail", "-mail.eml", [](const Printed& day) -> Text { return day_letter(day).map(as_eml); }},
    {"ashore", "-ashore.txt", [](const Printed& day) -> Text { return texts(day, left_ashore); }},
    {"json", "-plan.json", json},
    {"calendar", "-plan.ics", [](const Printed& day) -> Text { return plan_ics(day.boats); }},
    {"map", "-map.geojson", [](const Printed& day) -> Text { return plan_geojson(day.boats); }},
    {"map", "-map.gpx", [](const Printed& day) -> Text { return plan_gpx(day.boats); }},
};

}  // namespace

std::vector<Kind> kinds_named(const std::string& name) {
  std::vector<Kind> rows;
  std::copy_if(std::begin(kKinds), std::end(kKinds), std::back_inserter(rows),
               [&](const Kind& kind) { return name == kind.name; });
  return rows;
}

std::string known_kinds() {
  std::vector<std::string> names;
  for (const Kind& kind : kKinds)
    if (names.empty() || names.back() != kind.name) names.emplace_back(kind.name);
  std::string all;
  for (const std::string& name : names) all += (all.empty() ? "" : ", ") + name;
  return all;
}

}  // namespace floatwright
