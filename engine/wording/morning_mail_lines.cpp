#include "engine/wording/morning_mail_lines.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/river/names.hpp"
#include "engine/wording/most_fished.hpp"
#include "engine/wording/say_briefly.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/say_technique.hpp"
#include "engine/wording/since_yesterday.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostCares = 4, kMostChanges = 2;

std::string rig_line(const Told& told) {
  const auto most = most_fished(*told.floated);
  if (!most) return fmt::format("Rig: no line is named, none{} is known to reach the fish here.", aboard(told));
  const ScoredRig& best = *most->water->choice.best;
  return fmt::format("Rig: {}. {}: {}.", say(told.in.tackle, best, told.units),
                     capitalised(std::string(word_for(most->water->type))), say_how(told, best.technique));
}

const GaugeRecord* main_record(const Told& told) {
  const auto& records = told.in.records;
  const auto found = std::find_if(records.begin(), records.end(),
                                  [&](const GaugeRecord& r) { return r.gauge == told.plan.main_gauge; });
  return found == records.end() ? nullptr : &*found;
}

// "2 1/2 in lower than yesterday" is read on the day of the reading; of a plan made the evening before it would not be
// clear which day is meant. One of several gauges is named.
std::string since_words(const Told& told) {
  const GaugeRecord* record = main_record(told);
  const std::string change = record == nullptr ? "" : say_since_yesterday(*record, told.plan.made_at, told.units);
  if (change.empty()) return "Change since yesterday not known.";
  const bool on_the_day = told.clock.day(told.plan.made_at) == told.plan.day;
  const std::string at = told.in.river.gauges.size() > 1 ? "at gauge " + typed(told.plan.main_gauge) + " " : "";
  return capitalised(at + change) + (change.starts_with("as ") ? " as " : " than ") +
         (on_the_day ? "yesterday." : "24 h before.");
}

// The strongest wind while on the water, else of the day's light.
std::string wind_words(const Told& told) {
  if (!told.in.weather) return "Wind not known.";
  const Instant from = told.floated ? told.floated->launch : told.plan.sunrise;
  const Instant to = told.floated ? told.floated->off_by : told.plan.sunset;
  const auto met = strongest_wind(*told.in.weather, from, to);
  if (!met) return "Wind not known.";
  return "Wind up to " + say_wind_speed(met->speed, told.units) + " at " + told.clock.ten_minutes(met->at) + ".";
}

// From when to when a rod is fished; where others are fished between, only from when.
std::string hours_of_rod(const Told& told, std::size_t rod) {
  std::vector<const PlannedReach*> with;
  std::size_t first = 0, last = 0;
  const auto& reaches = told.floated->reaches;
  for (std::size_t i = 0; i < reaches.size(); ++i) {
    const auto& waters = reaches[i].waters;
    const bool fished = is_fished(reaches[i]) && std::any_of(waters.begin(), waters.end(), [&](const auto& w) {
      return w.choice.best && in_boat(told.rods, told.in.tackle, w.choice.best->rig) == rod;
    });
    if (!fished) continue;
    if (with.empty()) first = i;
    last = i;
    with.push_back(&reaches[i]);
  }
  if (with.empty()) return "";
  const std::string from = told.clock.ten_minutes(with.front()->arrive);
  const bool without_a_break = last - first + 1 == with.size();
  return without_a_break ? from + "-" + told.clock.ten_minutes(with.back()->leave) : "from " + from;
}

// "floating double taper on C, dry fly, 11:30-15:30": the rods beside the one that the rig line names.
std::vector<std::string> other_rods(const Told& told) {
  const auto most = most_fished(*told.floated);
  std::vector<std::size_t> others;
  for (std::size_t i = 0; i < told.rods.rods.size(); ++i)
    if (most && told.rods.rods[i].as_fished &&
        in_boat(told.rods, told.in.tackle, most->water->choice.best->rig) != i)
      others.push_back(i);
  const auto first_use = [&](std::size_t i) { return told.rods.rods[i].first_reach->arrive; };
  std::stable_sort(others.begin(), others.end(), [&](auto a, auto b) { return first_use(a) < first_use(b); });

  std::vector<std::string> words;
  for (const std::size_t i : others) {
    const RodInBoat& rod = told.rods.rods[i];
    words.push_back(fmt::format("{} on {}, {}, {}", say_line(told.in.tackle, rod.as_fished->rig, told.units),
                                rod.letter, say_technique(rod.as_fished->technique), hours_of_rod(told, i)));
  }
  return words;
}

// The nearest flow on either side at which another line of the boat takes over.
std::vector<std::string> flow_changes(const Told& told) {
  std::vector<std::string> words;
  bool told_under = false, told_over = false;
  for (const TakesOver& t : lines_that_take_over(told)) {
    bool& already = t.under ? told_under : told_over;
    const auto rod = in_boat(told.rods, told.in.tackle, t.to.rig);
    if (!t.likely || !rod || already) continue;
    already = true;
    words.push_back(fmt::format("{} {} {}: {} on {}", t.under ? "under" : "over", say_rough_flow(t.at, told.units),
                                t.where.front(), say_line(told.in.tackle, t.to.rig, told.units),
                                told.rods.rods[*rod].letter));
  }
  return words;
}

std::string sentences(const std::vector<std::string>& parts) {
  std::string all;
  for (const std::string& part : parts)
    all += (all.empty() ? without_stop(part) : " " + capitalised(without_stop(part))) + ".";
  return all;
}

std::string changes_line(const Told& told) {
  std::vector<std::string> parts = other_rods(told);
  std::vector<std::string> rigs = rig_change_lines(told);
  const std::size_t more = rigs.size() > kMostChanges ? rigs.size() - kMostChanges : 0;
  rigs.resize(rigs.size() - more);
  parts.insert(parts.end(), rigs.begin(), rigs.end());
  if (more > 0) parts.push_back(fmt::format("{} more below, under RODS", more));
  for (const std::string& change : flow_changes(told)) parts.push_back(change);
  if (parts.empty()) return "Changes: none.";
  return "Changes: " + sentences(parts);
}

bool said_elsewhere(const Caution& c) {
  return c.kind == CautionKind::OldReading || c.kind == CautionKind::MissingGauge || c.kind == CautionKind::RulesOld;
}

// Places of one sentence: the first is named, the others counted.
struct BriefCare {
  std::string what, first_where;
  std::size_t places = 0;
};

std::vector<BriefCare> brief_cares(const Told& told) {
  const CautionWords words{told.in.river, told.clock, told.units};
  std::vector<BriefCare> cares;
  for (Caution caution : cautions_by_weight(told)) {
    if (said_elsewhere(caution)) continue;
    if (at_spot(told)) caution.where.clear();  // the place is the day's
    if (caution.kind == CautionKind::FastRise && caution.where.empty()) caution.where = caution.about;  // a gauge
    const std::string what = say_what_briefly(caution, words);
    const auto found = std::find_if(cares.begin(), cares.end(), [&](const BriefCare& c) { return c.what == what; });
    if (found == cares.end()) {
      cares.push_back({what, say_where_and_when(caution, words), 1});
    } else {
      ++found->places;
    }
  }
  return cares;
}

std::string care_line(const Told& told) {
  const std::vector<BriefCare> cares = brief_cares(told);
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < std::min(cares.size(), kMostCares); ++i) {
    const BriefCare& care = cares[i];
    std::string where = care.first_where;
    if (care.places > 1) where += fmt::format(" and {} more place{}", care.places - 1, care.places > 2 ? "s" : "");
    parts.push_back(where.empty() ? care.what : where + ": " + care.what);
  }
  if (cares.size() > kMostCares) parts.push_back(fmt::format("{} more below", cares.size() - kMostCares));
  parts.emplace_back("Check local rules");
  return "Care: " + sentences(parts);
}

}  // namespace

std::vector<std::string> phone_lines(const Told& told) {
  return {rig_line(told), "Flow " + flow_and_trend(told) + ". " + since_words(told),
          water_temperature(told) + ". " + water_clarity(told) + ". " + wind_words(told), changes_line(told),
          care_line(told)};
}

}  // namespace floatwright
