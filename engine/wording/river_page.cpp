#include "engine/wording/river_page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/trip/local_time.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

void add_river_heading(Page& page, const Told& told, const RiverOfDay& river) {
  std::string left = typed(told.in.river.name);
  if (!river.reaches.empty()) {
    const RiverPlace top = river.reaches.front().from;
    RiverPlace mouth = top;
    for (const BelievedReach& reach : river.reaches) mouth = std::min(mouth, reach.to);
    left += fmt::format("  {}-{}  {}", say_place(top, told.in.river, told.units), place_figure(mouth, told.in.river, told.units),
                        say_distance(top - mouth, told.in.river, told.units));
  }
  page.blocks.push_back(Heading{left, head_of_day(told.plan.day), 1});
}

// What each gauge shows, the state it names and how the day follows from it.
void add_gauges(Page& page, const Told& told) {
  std::vector<std::string> lines;
  for (const GaugeOutlook& outlook : told.plan.outlooks) {
    const StateWords words{told.in.river,
                           told.clock,
                           told.units,
                           told.clock.day(told.plan.made_at),
                           told.day_word,
                           followed_dam(told.plan, told.in.river, outlook.gauge)};
    lines.push_back(say(outlook, words) + ".");
  }
  if (!lines.empty()) page.blocks.push_back(Lines{lines, "GAUGES"});
  if (const auto doubtful = doubts(told); !doubtful.empty()) page.blocks.push_back(Lines{doubtful, ""});
}

bool comes_on_the_day(const DamFront& front, const LocalDay& day) {
  return front.latest >= day.start && front.earliest < day.end;
}

std::string change_words(const Told& told, const DamFront& front) {
  const auto& dams = told.in.river.dams;
  const std::string dam = front.dam < dams.size() ? typed(dams[front.dam].name) : "the dam";
  return fmt::format("{} from {} to {} at {}", dam, flow_figure(front.before, told.units),
                     say_flow(front.after, told.units), told.clock.minute_seen_from(front.leaves, told.plan.day));
}

void add_fronts(Page& page, const Told& told) {
  const LocalDay day = local_day(told.plan.day, told.plan.time_zone);
  std::vector<DamFront> fronts;
  std::copy_if(told.plan.fronts.begin(), told.plan.fronts.end(), std::back_inserter(fronts),
               [&](const DamFront& front) { return comes_on_the_day(front, day); });
  if (fronts.empty()) return;
  for (std::size_t i = 0; i < fronts.size();) {
    const DamFront& first = fronts[i];
    PageTable table{{"REACHES", "EARLIEST", "EXPECTED", "LATEST"}, {}, {}};
    for (; i < fronts.size() && fronts[i].dam == first.dam && fronts[i].leaves == first.leaves; ++i)
      table.rows.push_back({fmt::format("{} {}", typed(fronts[i].place_name), place_figure(fronts[i].place, told.in.river, told.units)),
                            told.clock.ten_minutes_before(fronts[i].earliest), told.clock.ten_minutes(fronts[i].expected),
                            told.clock.ten_minutes_after(fronts[i].latest)});
    page.blocks.push_back(Heading{change_words(told, first), "", 2});
    page.blocks.push_back(std::move(table));
  }
}

}  // namespace

Page river_page(const RiverOfDay& river, const DayInputs& in) {
  const Told words = told(river.facts, in);
  Page page;
  page.title = typed(in.river.name) + ", " + say_day(in.day);
  add_river_heading(page, words, river);
  add_gauges(page, words);
  add_fronts(page, words);
  for (const BelievedReach& reach : river.reaches) add_believed_reach(page, words, reach);
  add_sources(page, words);
  add_foot(page, words);
  return page;
}

}  // namespace floatwright
