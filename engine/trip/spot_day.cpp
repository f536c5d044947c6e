#include "engine/trip/spot_day.hpp"

#include <algorithm>

#include "engine/trip/closed_water.hpp"
#include "engine/trip/line_of_the_day.hpp"
#include "engine/trip/planned_stretch.hpp"
#include "engine/trip/score_waters.hpp"
#include "engine/trip/spot_hours.hpp"

namespace floatwright {
namespace {

// "no hour can be fished at Cottonwood Bend: too deep or too fast to wade, too warm for trout"
std::string why_no_hour(const RiverDay& day, const Stretch& stretch) {
  std::vector<std::string> reasons;
  for (const TimedPassage& row : stretch.times.rows) {
    std::string reason = row.kept_out;
    if (!row.passage.closures.empty()) reason = "closed: " + why_closed(day.river, row.passage.closures);
    if (std::find(reasons.begin(), reasons.end(), reason) == reasons.end()) reasons.push_back(reason);
  }
  if (reasons.empty()) reasons.push_back("the hours of the day are over");
  std::string words = say_limit(*stretch.broken);
  for (std::size_t i = 0; i < reasons.size(); ++i) words += (i == 0 ? ": " : ", ") + reasons[i];
  return words;
}

void judge(const RiverDay& day, WaterBook& book, const Stretch& stretch, PlannedStretch& planned,
           const DoEach& do_each) {
  if (stretch.broken) {
    planned.why = why_no_hour(day, stretch);
  } else if (planned.fished > Duration{}) {
    planned.verdict = Verdict::Recommended;
    add_changes(day, book, stretch, planned, do_each);
    planned.line = line_of_the_day(day, book, stretch, planned);
  } else {
    planned.why = "the water is not known, or no line fishes there";
  }
}

}  // namespace

std::vector<PlannedStretch> day_at_spot(const RiverDay& day, std::size_t spot, const DoEach& do_each) {
  const auto place = spot_passage(day, spot);
  if (!place) return {};
  Stretch stretch{.spot = spot, .times = spot_hours(day, *place)};
  const auto& rows = stretch.times.rows;
  if (std::none_of(rows.begin(), rows.end(), [](const TimedPassage& row) { return row.fished; })) {
    stretch.broken = BrokenLimit{.kind = LimitKind::NoHours, .where = place->name};
  }
  WaterBook book(day);
  score_waters(day, book, Scored::WorkedOut, {&stretch}, do_each);
  PlannedStretch planned = planned_stretch(day, book, Scored::WorkedOut, stretch);
  judge(day, book, stretch, planned, do_each);
  return {std::move(planned)};
}

}  // namespace floatwright
