#include "adapters/out/json/coverage_json.hpp"

#include <nlohmann/json.hpp>

#include "adapters/out/json/plan_values.hpp"
#include "engine/coverage/covering_lines.hpp"
#include "engine/river/names.hpp"
#include "engine/tackle/names.hpp"

namespace floatwright {
namespace {

// The line's id, and the tip's of a looped head.
Json named(const ConsideredLine& line, const Tackle& tackle) {
  return {{"line", tackle.lines.at(line.line).id}, {"tip", line.tip ? Json(tackle.tips.at(*line.tip).id) : Json(nullptr)}};
}

Json span_json(const FishingSpan& span) {
  Json waters = Json::object();
  for (const auto& [type, word] : kWaterWords) waters[std::string(word)] = span.by_water[static_cast<std::size_t>(type)];
  return {{"discharge_m3_s", {{"low", si(span.from)}, {"high", si(span.to)}}}, {"by_month", span.by_month}, {"by_water", waters}};
}

Json line_json(const LineCoverage& line, const Tackle& tackle) {
  const SinkingPart part = sinking_part(tackle, {line.line.line, line.line.tip, 0, {}});
  Json object = named(line.line, tackle);
  object["rod"] = tackle.lines.at(line.line.line).on_rod;
  object["line_kind"] = word_for(tackle.lines.at(line.line.line).kind);
  object["tip_length_m"] = part.whole_line ? Json(nullptr) : Json(si(part.length));
  object["sink_rate_m_s"] = si(part.sink_rate);
  object["owned"] = line.line.owned;
  object["why_not_judged"] = line.line.why_not.empty() ? Json(nullptr) : Json(line.line.why_not);
  object["covers"] = line.alone;
  object["covered_by_no_other_owned"] = line.only;
  object["where_it_covers"] = line.alone > 0.0 ? span_json(line.covers) : Json(nullptr);
  object["where_no_other_owned_does"] = line.only > 0.0 ? span_json(line.adds) : Json(nullptr);
  object["covers_by_discharge"] = line.by_flow;
  return object;
}

Json record_json(const Coverage& found) {
  const DaysCounted& counted = found.counted;
  return {{"first_day", day_text(counted.first)},
          {"last_day", day_text(counted.last)},
          {"days_with_flow", counted.dates - counted.gaps},
          {"days_without_flow", counted.gaps},
          {"reach_days_fishable", counted.fishable},
          {"of_these_with_temperature", counted.temperature_known},
          {"reach_days_outside_flows", counted.outside_flows},
          {"reach_days_closed", counted.closed},
          {"reach_days_too_warm", counted.too_warm},
          {"reach_days_without_flow", counted.no_flow},
          {"reach_days_judged", found.fishing},
          {"reach_days_no_line_reaches", found.unreached},
          {"reach_days_water_unknown", found.unknown},
          {"water_unknown_why", found.unknown_why}};
}

}  // namespace

std::string coverage_json(const Coverage& found, const CoverageWords& words) {
  Json document{{"schema_version", 1}, {"kind", "line_coverage"}, {"river", words.river.name}};
  document["record"] = record_json(found);
  document["covers_at"] = kCovers;
  document["usual_lines_stand_in"] = words.usual_lines;
  document["owned_cover"] = found.owned;
  document["all_cover"] = found.all;
  document["discharge_steps"] = Json::array();
  for (const FlowStep& step : found.flows)
    document["discharge_steps"].push_back({{"from_m3_s", si(step.from)}, {"to_m3_s", si(step.to)}, {"share", step.share}});
  document["lines"] = Json::array();
  for (const LineCoverage& line : found.lines) document["lines"].push_back(line_json(line, words.tackle));
  const auto names = [&](const std::vector<std::size_t>& lines) {
    Json list = Json::array();
    for (const std::size_t i : lines) list.push_back(named(found.lines[i].line, words.tackle));
    return list;
  };
  document["best_sets"] = Json::array();
  for (const CoveringShare& set : found.best_sets) document["best_sets"].push_back({{"lines", names(set.lines)}, {"covers", set.share}});
  document["adds_most"] = found.adds_most ? named(found.lines[*found.adds_most].line, words.tackle) : Json(nullptr);
  document["earn_nothing"] = names(found.earn_nothing);
  return document_text(document);
}

}  // namespace floatwright
