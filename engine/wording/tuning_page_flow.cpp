#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "engine/wording/tuning_page.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kFewestTold = 10;  // origins; a row of fewer says nothing

double less_than_holding(const FlowScoreRow& row) {
  return row.holding.mean_error > Discharge{} ? 1.0 - row.forecast.mean_error / row.holding.mean_error : std::nan("");
}

std::string state_words(const FlowScoreRow& row) {
  if (!row.state) return "all";
  std::string words{word_in(kFlowStateWords, *row.state)};
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

std::vector<std::string> cells(const FlowScoreRow& row, UnitSystem units, RecordOf record) {
  return {state_words(row),
          lead_figure(row.lead, record),
          std::to_string(row.origins),
          flow_figure(row.forecast.mean_error, units),
          flow_figure(row.holding.mean_error, units),
          percent_figure(less_than_holding(row)),
          score_figure(row.forecast.nash_sutcliffe),
          score_figure(row.holding.nash_sutcliffe),
          score_figure(row.forecast.kling_gupta),
          score_figure(row.holding.kling_gupta),
          row.banded == 0 ? "-" : percent_figure(row.inside_band)};
}

// A gauge that is in one state all the time has nothing to tell of it that "all" does not.
bool is_always_so(const FlowReport& report, const FlowScoreRow& row) {
  return std::any_of(report.rows.begin(), report.rows.end(), [&](const FlowScoreRow& all) {
    return !all.state && all.lead == row.lead && all.origins == row.origins;
  });
}

PageTable table_of(const FlowReport& report, UnitSystem units, RecordOf record) {
  PageTable table{{"STATE", "LEAD", "TIMES", "ERROR", "HELD", "LESS", "NSE", "HELD", "KGE", "HELD", "BAND"},
                  {"", "", "", flow_unit(units), flow_unit(units), "", "", "", "", "", ""},
                  {}};
  for (const FlowScoreRow& row : report.rows)
    if (!row.state || (row.origins >= kFewestTold && !is_always_so(report, row))) table.rows.push_back(cells(row, units, record));
  return table;
}

double median(std::vector<double> values) {
  std::erase_if(values, [](double value) { return !std::isfinite(value); });
  if (values.empty()) return std::nan("");
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : 0.5 * (values[half - 1] + values[half]);
}

struct AcrossGauges {
  std::vector<double> less, nash_sutcliffe, kling_gupta, inside;  // the scores less those of holding
};

// Over several gauges what is usual, and the worst.
void add_summary(Page& page, const std::vector<FlowReport>& reports, RecordOf record) {
  std::map<Period, AcrossGauges> leads;
  for (const FlowReport& report : reports)
    for (const FlowScoreRow& row : report.rows) {
      if (row.state || row.origins < kFewestTold) continue;
      AcrossGauges& lead = leads[row.lead];
      lead.less.push_back(less_than_holding(row));
      lead.nash_sutcliffe.push_back(row.forecast.nash_sutcliffe - row.holding.nash_sutcliffe);
      lead.kling_gupta.push_back(row.forecast.kling_gupta - row.holding.kling_gupta);
      if (row.banded > 0) lead.inside.push_back(row.inside_band);
    }
  PageTable table{{"LEAD", "GAUGES", "LESS, MEDIAN", "LEAST", "NSE GAIN", "KGE GAIN", "BAND"}, {}, {}};
  for (const auto& [lead, all] : leads)
    if (all.less.size() > 1)
      table.rows.push_back({lead_figure(lead, record), std::to_string(all.less.size()), percent_figure(median(all.less)),
                            percent_figure(*std::min_element(all.less.begin(), all.less.end())),
                            score_figure(median(all.nash_sutcliffe)), score_figure(median(all.kling_gupta)),
                            all.inside.empty() ? "-" : percent_figure(median(all.inside))});
  if (table.rows.empty()) return;
  page.blocks.push_back(Lines{{"Over the gauges, beside holding the newest value (medians, and the least gain):"}, ""});
  page.blocks.push_back(std::move(table));
}

}  // namespace

void add_flow_reports(Page& page, const std::vector<FlowReport>& reports, RecordOf record, const TuningWords& words) {
  const bool days = record == RecordOf::Days;
  const char* const what = days ? "FLOW BY DAILY MEANS" : "FLOW";
  const LocalClock dates("UTC");  // a day's mean stands at its date's 00:00Z
  for (const FlowReport& report : reports) {
    page.blocks.push_back(Heading{fmt::format("{}: {}", what, name_of_gauge(report.gauge, words.river)), "", 2});
    if (!report.rows.empty()) {
      page.blocks.push_back(
          Lines{{judged_words(report.fitted_from, report.fitted_until, report.judged_until, days ? dates : words.clock)}, ""});
      page.blocks.push_back(table_of(report, words.units, record));
    }
    std::vector<std::string> notes;
    for (const std::string& note : report.notes) notes.push_back(capitalised(typed(note)));
    if (!notes.empty()) page.blocks.push_back(Lines{notes, ""});
  }
  if (!reports.empty())
    page.blocks.push_back(Lines{{"ERROR: mean miss; HELD: of the newest value kept; LESS: how much smaller. NSE, KGE: 1 is perfect. "
                                 "BAND: how often it came between low and high (wanted: 80 %)."},
                                ""});
  add_summary(page, reports, record);
}

}  // namespace floatwright
