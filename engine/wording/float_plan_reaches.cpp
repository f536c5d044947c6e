#include <fmt/format.h>

#include <algorithm>

#include "engine/choice/techniques.hpp"
#include "engine/river/names.hpp"
#include "engine/trip/fast_rise.hpp"
#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/reach_rows.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/say_technique.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

Speed plain(SurfaceSpeed speed) { return Speed::from_si(speed.si()); }

std::string type_words(const ReachRow& row) {
  std::vector<std::string> words;
  for (const WaterType type : row.types) words.emplace_back(word_for(type));
  return joined(words);
}

// "Mill run 40.2"; of reaches put together "Mill run to Cottonwood bend 40.2-37.4", "Below Old Ferry 28.6-22.4".
std::string reach_words(const Told& told, const ReachRow& row) {
  const River& river = told.in.river;
  std::string words = capitalised(name_of(*row.first));
  if (row.last->named && name_of(*row.last) != name_of(*row.first)) words += " to " + name_of(*row.last);
  words += " " + place_figure(row.first->from, river, told.units);
  if (row.last != row.first && !told.floated->spot) words += "-" + place_figure(row.last->to, river, told.units);
  return row.first->lunch ? words + ", lunch" : words;
}

// "Mill run 40.2: run", then "bank" under it; "Below Old Ferry 28.6: likely run" where nobody described it.
std::string water_cell(const Told& told, const ReachRow& row) {
  std::string types = row.names_waters ? type_words(row) : "";
  if (!row.first->described && !row.types.empty()) types = "likely " + type_words(row);
  if (!row.begins_reach) return "  " + types;
  return reach_words(told, row) + (types.empty() ? "" : ": " + types);
}

std::string depth_cell(const Told& told, const ReachRow& row) {
  if (!row.depth_low || !row.depth_high) return "?";
  return (row.doubtful ? "~" : "") + length_range_figure(*row.depth_low, *row.depth_high, told.units);
}

std::string speed_cell(const Told& told, const ReachRow& row) {
  if (!row.speed_low || !row.speed_high) return "?";
  return speed_range_figure(plain(*row.speed_low), plain(*row.speed_high), told.units);
}

std::string rod_cell(const Told& told, const Rig& rig) {
  const auto at = in_boat(told.rods, told.in.tackle, rig);
  if (!at) return "?";
  const RodInBoat& rod = told.rods.rods[*at];
  return told.rods.marks_tell ? std::string(kMarkCell) + typed(told.in.tackle.rods.at(rod.rod).mark) : rod.letter;
}

std::string how_cell(const Told& told, const ScoredRig& best) {
  std::string how = say_how(told, best.technique);
  if (best.technique.method == Method::Indicator) how += " at " + say_length(best.indicator_to_fly, told.units);
  return how;
}

std::string fly_cell(const Told& told, const ReachRow& row) {
  if (row.best->technique.method == Method::Dry) return "top";
  return length_range_figure(*row.fly_low, *row.fly_high, told.units);
}

std::string why_not_fished(const ReachRow& row) {
  if (!row.first->closed_why.empty()) return "CLOSED: " + without_stop(typed(row.first->closed_why)) + ". Do not fish.";
  if (!row.first->kept_out.empty()) return "NO FISHING: " + typed(row.first->kept_out) + ".";
  if (row.types.empty()) return "nobody described this water: no line is named";
  return row.why_none.empty() ? "no line aboard reaches the fish here: fish the softer edge" : typed(row.why_none);
}

std::vector<std::string> cells(const Told& told, const ReachRow& row) {
  const std::string time = row.begins_reach ? told.clock.ten_minutes(row.first->arrive) : "";
  const std::string water = water_cell(told, row);
  if (row.types.empty()) return {time, water, why_not_fished(row)};
  if (!row.best) return {time, water, depth_cell(told, row), speed_cell(told, row), "-", why_not_fished(row)};
  return {time,
          water,
          depth_cell(told, row),
          speed_cell(told, row),
          rod_cell(told, row.best->rig),
          how_cell(told, *row.best),
          fly_cell(told, row)};
}

// "The Ledge: STOP ABOVE. PORTAGE RIGHT." is a row of its own: the place, then what to do, over the other columns.
std::vector<std::string> stop_cells(const Told& told, const PlannedReach& reach) {
  const std::string sentence = typed(reach.stop_sentence);
  const std::size_t colon = sentence.find(": ");
  std::string place = colon == std::string::npos ? std::string("STOP") : sentence.substr(0, colon);
  for (char& c : place)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  std::string what = colon == std::string::npos ? sentence : sentence.substr(colon + 2);
  if (reach.portage_at_end && what.empty()) what = "STOP ABOVE. PORTAGE.";
  if (reach.stop_time) what += " " + say_duration(*reach.stop_time);
  return {told.clock.ten_minutes(reach.leave), place + " " + place_figure(reach.to, told.in.river, told.units), what};
}

// The hour from which trout are left alone stands where it comes, before the first reach that begins after it.
void add_heat_stop(PageTable& table, const Told& told, Instant before, Instant next) {
  const auto& by = told.floated->stop_by;
  if (told.floated->spot || !by || *by <= before || *by > next) return;
  table.rows.push_back({told.clock.ten_minutes_before(*by), "STOP FISHING", "Too warm for trout from then on."});
}

void add_row(PageTable& table, const Told& told, const ReachRow& row, bool ends_reach) {
  table.rows.push_back(cells(told, row));
  const PlannedReach& last = *row.last;
  if (ends_reach && (last.portage_at_end || !last.stop_sentence.empty())) table.rows.push_back(stop_cells(told, last));
}

void add_doubt_words(Page& page, const std::vector<ReachRow>& rows) {
  const bool doubtful = std::any_of(rows.begin(), rows.end(), [](const ReachRow& r) { return r.doubtful; });
  if (doubtful)
    page.blocks.push_back(Lines{{"~ a guess, or a flow far from the one it was seen at: sound it first."}, ""});
}

void add_end(PageTable& table, const Told& told) {
  const PlannedStretch& s = *told.floated;
  if (s.spot && !s.reaches.empty() && !is_fished(s.reaches.back())) return;  // its last row says so already
  table.rows.push_back({told.clock.ten_minutes(s.end),
                        typed(s.to_name) + " " + place_figure(s.to_place, told.in.river, told.units),
                        s.spot ? "off the water" : "take out; off by " + told.clock.ten_minutes(s.off_by)});
}

}  // namespace

std::string say_how(const Told& told, const Technique& technique) {
  const bool may_rise_on = std::any_of(told.plan.outlooks.begin(), told.plan.outlooks.end(), comes_up_fast);
  if (!stands(technique.platform) || !may_rise_on) return say(technique);
  return say(technique.platform) + " unless it rises, " + say_technique(technique);
}

void add_reaches(Page& page, const Told& told) {
  const std::vector<ReachRow> rows = reach_rows(*told.floated);
  const std::string counted = "(" + place_word(told.in.river, told.units) + ")";
  const std::string length = length_unit(told.units);
  PageTable table{{"TIME", "WATER", "DEEP", "FAST", "ROD", "HOW", "FLY AT"},
                  {"", counted, length, speed_unit(told.units), "", "", length},
                  {}};
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const bool ends_reach = i + 1 == rows.size() || rows[i + 1].begins_reach;
    add_row(table, told, rows[i], ends_reach);
    if (ends_reach)
      add_heat_stop(table, told, rows[i].first->arrive, i + 1 == rows.size() ? told.floated->end : rows[i + 1].first->arrive);
  }
  add_end(table, told);
  page.blocks.push_back(std::move(table));
  add_doubt_words(page, rows);
}

}  // namespace floatwright
