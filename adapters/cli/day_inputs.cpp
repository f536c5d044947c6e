#include "adapters/cli/day_inputs.hpp"

#include <fmt/format.h>

#include "adapters/cli/message.hpp"
#include "adapters/in/files/log_file.hpp"
#include "engine/trip/gauges_ahead.hpp"

namespace floatwright {

namespace {

Learned learned_by(const std::filesystem::path& directory, const River& river, bool quiet) {
  const LogFile log = read_log(directory);
  for (const Problem& problem : log.problems)
    if (!quiet) fmt::print(stderr, "{}\n", say(problem));
  return learned(river, river_graph(river), log.entries);
}

}  // namespace

DayInputs day_inputs(const CommonOptions& options, Configuration&& configuration, Instant now,
                     std::chrono::year_month_day day) {
  DayInputs in{std::move(configuration.river),
               std::move(configuration.tackle),
               std::move(configuration.settings),
               std::move(configuration.judgement),
               {},
               day,
               now};
  in.tuned = std::move(configuration.tuned);
  in.learned = learned_by(configuration.directory, in.river, options.quiet);
  if (!options.units.empty()) in.settings.units = options.units == "us" ? UnitSystem::Us : UnitSystem::Metric;
  return in;
}

void read_into(DayInputs& in, Gathered&& gathered) {
  in.records = std::move(gathered.records);
  in.weather = std::move(gathered.weather);
}

DayInputs day_inputs(const CommonOptions& options, Configuration&& configuration, Instant now,
                     std::chrono::year_month_day day, Gathered&& gathered) {
  DayInputs in = day_inputs(options, std::move(configuration), now, day);
  read_into(in, std::move(gathered));
  return in;
}

std::optional<Failure> day_out_of_reach(const DayInputs& in) {
  const std::string why = why_no_day(in.river, in.records, in.day, in.now);
  if (why.empty()) return std::nullopt;
  return Failure{"--date: " + why, kExitNothingMade};
}

int told_how_fresh(const DayPlan& plan, const char* what, int otherwise) {
  if (plan.nothing)
    return tell({fmt::format("no {}: no gauge of this river has a reading that can be used; see the page for what was tried", what),
                 kExitNothingMade});
  if (!plan.stale) return otherwise;
  const std::string missing = fmt::format("{}", fmt::join(plan.missing_gauges, ", "));
  return tell({missing.empty() ? "made from readings older than 6 h, or with a gauge whose readings cannot be used" : "made without fresh readings of: " + missing,
               kExitOldReadings});
}

}  // namespace floatwright
