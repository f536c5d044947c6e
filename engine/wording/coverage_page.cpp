#include "engine/wording/coverage_page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/coverage/covering_lines.hpp"
#include "engine/units/words.hpp"
#include "engine/wording/clock.hpp"
#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr double kWorthNaming = 0.10;  // of a line's own fishing: a month or a water with less is not named
constexpr int kYear = 365;             // days
constexpr std::array<const char*, kMonths> kMonthNames{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                       "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

Rig bare(const ConsideredLine& line) { return {line.line, line.tip, 0, {}}; }

std::string rod_words(const ConsideredLine& line, const Tackle& tackle, UnitSystem units) {
  const std::size_t rod = rod_of(tackle, bare(line));
  return rod < tackle.rods.size() ? say(tackle.rods[rod], units) : "";
}

// "6,210"
std::string figure(int count) {
  std::string digits = std::to_string(count);
  for (auto at = static_cast<std::ptrdiff_t>(digits.size()) - 3; at > 0; at -= 3) digits.insert(static_cast<std::size_t>(at), ",");
  return digits;
}

std::string days(int count) { return figure(count) + (count == 1 ? " day" : " days"); }

constexpr WordTable<WaterType, 7> kManyWaters{{{WaterType::Riffle, "riffles"},
                                               {WaterType::Run, "runs"},
                                               {WaterType::Pool, "pools"},
                                               {WaterType::Tailout, "tailouts"},
                                               {WaterType::Bank, "water along the banks"},
                                               {WaterType::Eddy, "eddies"},
                                               {WaterType::Pocket, "pockets"}}};

std::string say_waters(const FishingSpan& span) {
  std::vector<std::string> named;
  for (const auto& [type, words] : kManyWaters)
    if (span.by_water[static_cast<std::size_t>(type)] >= kWorthNaming) named.emplace_back(words);
  return joined(named);
}

std::string say_flows(const FishingSpan& span, UnitSystem units) {
  const std::string low = rough_flow_figure(span.from, units), high = rough_flow_figure(span.to, units);
  return (low == high ? high : low + " to " + high) + " " + flow_unit(units);
}

std::string not_fished(const DaysCounted& counted) {
  std::vector<std::string> parts;
  const auto add = [&](int count, const char* why) {
    if (count > 0) parts.push_back(figure(count) + " " + why);
  };
  add(counted.outside_flows, "outside the flows of the boat or of a hazard");
  add(counted.closed, "closed");
  add(counted.too_warm, "too warm");
  add(counted.no_flow, "without a known flow");
  return parts.empty() ? "" : " (not: " + joined(parts) + ")";
}

std::string temperature_words(const DaysCounted& counted) {
  const double known = static_cast<double>(counted.temperature_known) / std::max(1, counted.fishable);
  if (counted.temperature_known == counted.fishable) return "";
  if (counted.temperature_known == 0) return "No water temperature is on record: the water counts as neither cold nor warm.";
  return fmt::format("Water temperature is on record for {} of them; the rest counts as neither cold nor warm.", say_share(known));
}

void add_record(Page& page, const Coverage& found) {
  const DaysCounted& counted = found.counted;
  const int all = counted.fishable + counted.outside_flows + counted.closed + counted.too_warm + counted.no_flow;
  const double fished = found.fishing + found.unreached + found.unknown;
  std::vector<std::string> lines;
  lines.push_back(fmt::format("{} to {}: a flow on record on {}{}.", short_day(counted.first), short_day(counted.last),
                              days(counted.dates - counted.gaps),
                              counted.gaps > 0 ? "; " + days(counted.gaps) + " without one left out" : ""));
  lines.push_back(say_short_record(counted));
  lines.push_back(fmt::format("A reach on a day counts one, its waters by their fishing time: {} of {} could be fished{}.",
                              figure(counted.fishable), figure(all), not_fished(counted)));
  lines.push_back(temperature_words(counted));
  if (found.unknown > 0.0)
    lines.push_back(fmt::format("Left out too: {} of them, where {}.", say_share(found.unknown / fished),
                                without_stop(typed(found.unknown_why.front()))));
  if (found.unreached > 0.0)
    lines.push_back(fmt::format("On {} of them none of these lines reaches the fish; that is left out of the shares below.",
                                say_share(found.unreached / fished)));
  lines.push_back(fmt::format("A line covers a water on a day when it fishes it, in the way that suits it best that day, for at "
                              "least {} of the seconds that the best of all these lines does.",
                              say_share(kCovers)));
  std::erase(lines, "");
  page.blocks.push_back(Lines{lines, ""});
}

std::vector<std::size_t> by_share(const Coverage& found, bool owned, double LineCoverage::*share) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < found.lines.size(); ++i)
    if (found.lines[i].line.owned == owned && found.lines[i].line.why_not.empty()) order.push_back(i);
  std::ranges::stable_sort(order, std::ranges::greater{}, [&](std::size_t i) { return found.lines[i].*share; });
  return order;
}

void add_owned(Page& page, const Coverage& found, const CoverageWords& words) {
  page.blocks.push_back(Heading{"WHAT EACH LINE COVERS", "", 2});
  PageTable table{{"LINE", "ROD", "COVERS", "ONLY IT", "MOSTLY AT"}, {}, {}};
  for (const std::size_t i : by_share(found, true, &LineCoverage::alone)) {
    const LineCoverage& line = found.lines[i];
    table.rows.push_back({say_considered(line.line, words.tackle, words.units), rod_words(line.line, words.tackle, words.units),
                          say_share(line.alone), say_share(line.only),
                          line.alone > 0.0 ? say_flows(line.covers, words.units) : "-"});
  }
  page.blocks.push_back(std::move(table));
  page.blocks.push_back(Lines{{fmt::format("All of them together cover {}. \"Only it\": no other of them does.", say_share(found.owned))}, ""});
}

std::string say_set(const CoveringShare& set, const Coverage& found, const CoverageWords& words) {
  std::vector<std::string> lines;
  for (const std::size_t i : set.lines) lines.push_back(say_considered(found.lines[i].line, words.tackle, words.units));
  return fmt::format("{} {} {}: {}.", set.lines.size(), set.lines.size() == 1 ? "line covers" : "lines cover", say_share(set.share),
                     joined(lines));
}

void add_sets(Page& page, const Coverage& found, const CoverageWords& words) {
  if (found.best_sets.empty()) return;
  page.blocks.push_back(Heading{"THE FEW THAT COVER MOST", "", 2});
  std::vector<std::string> lines;
  for (const CoveringShare& set : found.best_sets) lines.push_back(say_set(set, found, words));
  page.blocks.push_back(Lines{lines, ""});
}

std::string say_adding_most(const LineCoverage& line, const CoverageWords& words) {
  return fmt::format("{} would add most: {} of all the fishing, which no line you own covers, mostly at {}, in {}, in {}.",
                     capitalised(say_considered_on_rod(line.line, words.tackle, words.units)), say_share(line.only),
                     say_flows(line.adds, words.units), say_months(line.adds.by_month), say_waters(line.adds));
}

void add_candidates(Page& page, const Coverage& found, const CoverageWords& words) {
  const std::vector<std::size_t> order = by_share(found, false, &LineCoverage::only);
  page.blocks.push_back(Heading{"WHAT ANOTHER LINE WOULD ADD", "", 2});
  std::vector<std::string> lines;
  if (words.usual_lines)
    lines.emplace_back("No line to think of is typed (\"owned\": false in tackle.json): lines as they are commonly sold stand in.");
  if (order.empty())
    lines.emplace_back("No line is asked about that is not owned.");
  else if (found.adds_most)
    lines.push_back(say_adding_most(found.lines[*found.adds_most], words));
  else
    lines.emplace_back("None of those asked about covers anything that the lines you own do not.");
  page.blocks.push_back(Lines{lines, ""});
  PageTable table{{"LINE", "ROD", "ADDS", "COVERS", "ADDS AT", "IN"}, {}, {}};
  for (const std::size_t i : order) {
    const LineCoverage& line = found.lines[i];
    const bool adds = line.only > 0.0;
    table.rows.push_back({say_considered(line.line, words.tackle, words.units), rod_words(line.line, words.tackle, words.units),
                          say_share(line.only), say_share(line.alone), adds ? say_flows(line.adds, words.units) : "-",
                          adds ? say_months(line.adds.by_month) : "-"});
  }
  if (!order.empty()) page.blocks.push_back(std::move(table));
}

void add_spare(Page& page, const Coverage& found, const CoverageWords& words) {
  std::vector<std::string> lines;
  std::vector<std::string> named;
  for (const std::size_t i : found.earn_nothing)
    if (found.lines[i].line.why_not.empty()) named.push_back(say_considered_on_rod(found.lines[i].line, words.tackle, words.units));
  if (!named.empty())
    lines.push_back(fmt::format("{} could stay at home{}, and the others would cover as much.", capitalised(joined(named)),
                                named.size() > 1 ? " together" : ""));
  for (const LineCoverage& line : found.lines)
    if (!line.line.why_not.empty())
      lines.push_back(fmt::format("Not judged: {}. {}", say_considered_on_rod(line.line, words.tackle, words.units),
                                  capitalised(typed(line.line.why_not))));
  if (lines.empty()) return;
  page.blocks.push_back(Heading{"WHAT EARNS NOTHING", "", 2});
  page.blocks.push_back(Lines{lines, ""});
}

}  // namespace

std::string say_considered(const ConsideredLine& line, const Tackle& tackle, UnitSystem units) {
  return say_line(tackle, bare(line), units);
}

std::string say_considered_on_rod(const ConsideredLine& line, const Tackle& tackle, UnitSystem units) {
  const std::string rod = rod_words(line, tackle, units);
  return say_considered(line, tackle, units) + (rod.empty() ? "" : " on the " + rod);
}

std::string say_share(double share) {
  if (share > 0.0 && share < 0.01) return "under 1 %";
  return fmt::format("{:.0f} %", 100.0 * share);
}

std::string say_months(const std::array<double, kMonths>& by_month) {
  const auto named = [&](int month) { return by_month[static_cast<std::size_t>((month + kMonths) % kMonths)] >= kWorthNaming; };
  std::vector<std::string> runs;
  for (int first = 0; first < kMonths; ++first) {
    if (!named(first) || named(first - 1)) continue;
    int last = first;
    while (named(last + 1) && last - first < kMonths - 1) ++last;
    const std::string from = kMonthNames[static_cast<std::size_t>(first)];
    const std::string to = kMonthNames[static_cast<std::size_t>(last % kMonths)];
    runs.push_back(from == to ? from : from + (last == first + 1 ? " and " : " to ") + to);
  }
  return runs.empty() ? "all months" : joined(runs);
}

std::string say_short_record(const DaysCounted& counted) {
  const int known = counted.dates - counted.gaps;
  if (known >= kYear) return "";
  return fmt::format("That is less than a year: of the flows and months it lacks it says nothing, and a year may be another "
                     "than this one. floatwright fetch --since P10Y fills in years.");
}

Page coverage_page(const Coverage& found, const CoverageWords& words) {
  Page page;
  page.title = "Which lines earn their place on " + typed(words.river.name);
  page.blocks.push_back(Heading{"WHICH LINES EARN THEIR PLACE: " + typed(words.river.name), "", 1});
  add_record(page, found);
  if (found.fishing > 0.0) {
    add_owned(page, found, words);
    add_sets(page, found, words);
    add_candidates(page, found, words);
    add_spare(page, found, words);
  } else {
    page.blocks.push_back(Lines{{"Nothing of it could be fished with these lines: nothing can be said of them."}, ""});
  }
  page.blocks.push_back(Lines{{kFoot}, ""});
  return page;
}

}  // namespace floatwright
