#include "engine/wording/still_page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/wording/say_rig.hpp"
#include "engine/wording/sink_doubts.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr Length kTold = feet(0.25);
constexpr const char* kLawFirst =
    "The law, the agency and a licensed guide on the water come before anything printed here.";

std::string layer_words(const StillAsked& asked, const CountedRig& one) {
  const std::string to = say_length(*asked.layer, asked.units);
  const Measured<Duration>& count = *one.to_layer;
  if (!count) return fmt::format("It does not count down to {}: {}.", to, count.why_absent());
  return fmt::format(
      "Count {:.0f} s to {} ({:.0f} to {:.0f} s: lines sink at 0.87 to 0.99 of the rate they are sold by).",
      count->si(), to, count->si() * 0.9 / 0.99, count->si() * 0.9 / 0.87);
}

std::string retrieve_words(Retrieve retrieve) {
  return retrieve == Retrieve::Level ? "level" : retrieve == Retrieve::Rising ? "rising" : "still sinking";
}

PageTable table_of(const StillAsked& asked, const std::vector<StillCount>& rows) {
  const std::string unit = length_unit(asked.units);
  PageTable table{
      {"COUNT", "LINE AT FIRST PULL", "HALFWAY", "NEAR THE END", "RETRIEVE"}, {"s", unit, unit, unit, ""}, {}};
  for (const StillCount& row : rows) {
    const auto figure = [&](Length depth) { return length_figure(depth, asked.units); };
    const std::string count = fmt::format("{:.0f}", row.count.si());
    if (row.to_the_bed) {
      table.rows.push_back({count, "on the bed"});
      break;
    }
    table.rows.push_back(
        {count, figure(row.at_first), figure(row.halfway), figure(row.at_the_end), retrieve_words(row.retrieve)});
  }
  return table;
}

// The fly is above or below the line by up to its leader.
std::string fly_beside_line(const std::vector<StillCount>& rows, UnitSystem units) {
  Length most;
  for (const StillCount& row : rows) {
    const Length below = row.fly_at_first - row.at_first;
    if (!row.to_the_bed && std::max(below, -below) > std::max(most, -most)) most = below;
  }
  if (std::max(most, -most) < kTold) return "";
  return fmt::format(" The fly is up to {} {} the line until it is pulled.", say_length(std::max(most, -most), units),
                     most > Length{} ? "below" : "above");
}

std::string why(const StillAsked& asked, const CountedRig& one) {
  const Line& line = asked.tackle.lines.at(one.rig.line);
  const std::string held =
      line.kind == LineKind::FullSinking
          ? "A full sinking line is drawn in along itself: above the depth that it takes at this pace it goes on "
            "sinking, there it keeps its level until little of it is out."
          : "The sinking part hangs from a floating line: a pull draws it up toward the rod. A full sinking line keeps "
            "its level better.";
  return held + fly_beside_line(*one.counts, asked.units);
}

}  // namespace

Page still_page(const StillAsked& asked, const std::vector<CountedRig>& rigs) {
  Page page;
  page.title = "Still water";
  page.blocks.emplace_back(
      Heading{fmt::format("Still water {} deep, retrieve {}.", say_length(asked.water.depth, asked.units),
                          say_speed(asked.strip, asked.units)),
              "", 1});
  std::vector<std::string> doubts{std::string(kNeverCompared) +
                                  " Counts are for the rate the line is sold by: time your own to a known bottom. They are for a boat at anchor: "
                                  "one that the wind drives draws the line up or lets it sink."};
  if (asked.lake) page.blocks.emplace_back(Lines{{lake_words(*asked.lake, asked.units)}, "LAYER"});
  for (const CountedRig& one : rigs) {
    const Line& line = asked.tackle.lines.at(one.rig.line);
    page.blocks.emplace_back(Heading{
        capitalised(say_line(asked.tackle, one.rig, asked.units)) + ", " + say_fly(asked.tackle, one.rig), "", 2});
    if (!one.counts) {
      page.blocks.emplace_back(Lines{{"No counts: " + one.counts.why_absent() + "."}, ""});
      continue;
    }
    if (one.to_layer) page.blocks.emplace_back(Lines{{layer_words(asked, one)}, ""});
    page.blocks.emplace_back(table_of(asked, *one.counts));
    page.blocks.emplace_back(Lines{{why(asked, one)}, ""});
    if (std::string words = say_optimistic(line, asked.units); !words.empty()) doubts.push_back(std::move(words));
  }
  if (!asked.layer)
    page.blocks.emplace_back(
        Lines{{"Find the fish by counting: begin short, count on at each cast, and keep the count that meets them."},
              "FIND"});
  page.blocks.emplace_back(Lines{std::move(doubts), "SURE"});
  std::vector<std::string> care;
  if (asked.lake) care = lake_cautions(*asked.lake, asked.units);
  care.emplace_back(kLawFirst);
  page.blocks.emplace_back(Lines{std::move(care), "CARE"});
  return page;
}

}  // namespace floatwright
