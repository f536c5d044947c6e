#include <fmt/format.h>

#include <cmath>

#include "engine/wording/tuning_page.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

// A difference of temperatures: "1.9"
std::string degrees(TemperatureChange change, UnitSystem units) {
  const double shown = units == UnitSystem::Us ? 1.8 * in_kelvins(change) : in_kelvins(change);
  return std::isfinite(shown) ? fmt::format("{:.2f}", shown) : "?";
}

std::string degree_unit(UnitSystem units) { return units == UnitSystem::Us ? "F" : "C"; }

PageTable table_of(const TemperatureReport& report, UnitSystem units) {
  const std::string unit = degree_unit(units);
  PageTable table{{"LEAD", "TIMES", "ERROR", "UNTUNED", "SAME HOUR", "BAND", "UNTUNED'S", "STATED"},
                  {"", "", unit, unit, unit, "", "", ""},
                  {}};
  for (const TemperatureScoreRow& row : report.rows)
    table.rows.push_back({lead_figure(row.lead), std::to_string(row.origins), degrees(row.tuned, units), degrees(row.untuned, units),
                          degrees(row.same_hour, units), row.banded == 0 ? "-" : percent_figure(row.inside_band),
                          percent_figure(row.inside_untuned), percent_figure(row.inside_stated)});
  return table;
}

std::string maximum_line(const MaximumScore& score, UnitSystem units) {
  return fmt::format("The day's highest, seen from 06:00 on {} days: {} {} off in the mean, {} too high in the mean "
                     "(yesterday's highest: {} off).",
                     score.days, degrees(score.error, units), degree_unit(units), degrees(score.bias, units),
                     degrees(score.yesterday_error, units));
}

std::string stop_line(const StopScore& score) {
  return fmt::format("Too warm to fish, called {} {:02}:00: in time on {} of the {} days it came; in vain on {} of the {} others.",
                     score.evening_before ? "the evening before at" : "at", score.seen_from, score.named_in_time, score.came,
                     score.called_in_vain, score.others);
}

}  // namespace

void add_temperature_reports(Page& page, const std::vector<TemperatureReport>& reports, const TuningWords& words) {
  for (const TemperatureReport& report : reports) {
    page.blocks.push_back(Heading{"WATER TEMPERATURE: " + name_of_gauge(report.gauge, words.river), "", 2});
    std::vector<std::string> lines;
    if (!report.rows.empty()) {
      page.blocks.push_back(
          Lines{{judged_words(report.fitted_from, report.fitted_until, report.judged_until, words.clock)}, ""});
      page.blocks.push_back(table_of(report, words.units));
      if (report.maximum.days > 0) lines.push_back(maximum_line(report.maximum, words.units));
      for (const StopScore& stop : report.stops)
        if (stop.came > 0) lines.push_back(stop_line(stop));
    }
    for (const std::string& note : report.notes) lines.push_back(capitalised(typed(note)));
    if (!lines.empty()) page.blocks.push_back(Lines{lines, ""});
  }
}

}  // namespace floatwright
