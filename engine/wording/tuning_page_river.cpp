#include <fmt/format.h>

#include "engine/wording/tuning_page.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

std::string minutes_figure(Duration time) { return fmt::format("{:.0f} min", in_minutes(time)); }

std::vector<std::string> rise_cells(const char* how, const RiseScore& score) {
  if (score.rises == 0) return {how, "0", "-", "-", "-"};
  return {how, std::to_string(score.rises), minutes_figure(score.median_error), percent_figure(score.within_quarter_hour),
          percent_figure(score.within_margin)};
}

std::string measured_figure(const Measured<double>& score) { return score.has_value() ? score_figure(*score) : "?"; }

std::vector<std::string> routed_cells(const char* how, const RoutedScore& score) {
  return {how, measured_figure(score.nash_sutcliffe), measured_figure(score.kling_gupta)};
}

std::string skill_words(const ChannelReport& report, const LocalClock& clock) {
  return fmt::format("{} visits; fitted to the earlier {}, judged on the later {} (from {}).", report.visits, report.skill->fitted,
                     report.skill->judged, short_day(clock.day(report.skill->from)));
}

// Errors of the logarithm are per cent as long as they are small.
PageTable skill_table(const ChannelSkill& skill) {
  const auto row = [](const char* what, double error, double plain, double held) {
    return std::vector<std::string>{what, percent_figure(error), percent_figure(plain), percent_figure(held)};
  };
  return {{"LATER VISITS", "MEDIAN MISS", "LEAST SQUARES", "IN SPREAD"},
          {},
          {row("depth", skill.depth_error, skill.plain_depth_error, skill.depth_held),
           row("speed", skill.speed_error, skill.plain_speed_error, skill.speed_held)}};
}

std::vector<std::string> section_lines(const ChannelReport& report, UnitSystem units) {
  std::vector<std::string> lines;
  for (const FittedChannel& other : report.other_sections)
    lines.push_back(fmt::format("Another section, told apart by its width: {} visits from {} to {}.", other.visits,
                                say_flow(other.least, units), say_flow(other.most, units)));
  return lines;
}

// A few are named, all are counted.
std::vector<std::string> visit_lines(const char* what, const std::vector<VisitLeftOut>& visits, const LocalClock& clock) {
  constexpr std::size_t kMostNamed = 8;
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < visits.size() && i < kMostNamed; ++i)
    lines.push_back(fmt::format("{}: {}, {}.", what, visits[i].time ? short_day(clock.day(*visits[i].time)) : typed(visits[i].visit),
                                without_stop(typed(visits[i].why))));
  if (visits.size() > kMostNamed) lines.push_back(fmt::format("{}: {} more.", what, visits.size() - kMostNamed));
  return lines;
}

void add_notes(Page& page, const std::vector<std::string>& notes) {
  std::vector<std::string> lines;
  for (const std::string& note : notes) lines.push_back(capitalised(typed(note)));
  if (!lines.empty()) page.blocks.push_back(Lines{lines, ""});
}

}  // namespace

void add_channel_reports(Page& page, const std::vector<ChannelReport>& reports, const TuningWords& words) {
  for (const ChannelReport& report : reports) {
    page.blocks.push_back(Heading{"CHANNEL: " + name_of_gauge(report.gauge, words.river), "", 2});
    if (report.skill) {
      page.blocks.push_back(Lines{{skill_words(report, words.clock)}, ""});
      page.blocks.push_back(skill_table(*report.skill));
    }
    std::vector<std::string> lines = section_lines(report, words.units);
    for (const std::string& line : visit_lines("Left out", report.left_out, words.clock)) lines.push_back(line);
    for (const std::string& line : visit_lines("Far off the rest", report.outliers, words.clock)) lines.push_back(line);
    if (!lines.empty()) page.blocks.push_back(Lines{lines, ""});
    add_notes(page, report.notes);
  }
}

void add_lag_reports(Page& page, const std::vector<LagReport>& reports, const TuningWords& words) {
  for (const LagReport& report : reports) {
    page.blocks.push_back(Heading{fmt::format("TRAVEL: {} to {}, {}", name_of_gauge(report.from, words.river),
                                              name_of_gauge(report.to, words.river),
                                              say_distance(report.apart, words.river, words.units)),
                                  "", 2});
    if (report.changes > 0) {
      page.blocks.push_back(
          Lines{{fmt::format("{} changes over {} seen at both. ", report.changes, say_flow(report.least_change, words.units)) +
                 judged_words(report.used_from, report.judged_from, report.judged_to, words.clock)},
                ""});
      page.blocks.push_back(PageTable{{"RISES", "SEEN", "MEDIAN MISS", "IN 15 MIN", "IN MARGIN"},
                                      {},
                                      {rise_cells("tuned", report.tuned), rise_cells("one lag", report.constant),
                                       rise_cells("by the channel", report.by_channel)}});
      page.blocks.push_back(PageTable{{"LOWER GAUGE BY THE UPPER", "NSE", "KGE"},
                                      {},
                                      {routed_cells("as it was above", report.unrouted), routed_cells("routed", report.routed),
                                       routed_cells("brought down", report.brought_down)}});
    }
    add_notes(page, report.notes);
  }
}

}  // namespace floatwright
