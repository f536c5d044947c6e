#include "adapters/cli/common_options.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdlib>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/files/calendar_text.hpp"
#include "adapters/in/gauges/rating_files.hpp"
#include "engine/trip/gauges_ahead.hpp"
#include "engine/trip/local_time.hpp"

namespace floatwright {
namespace {

std::optional<std::string> environment(const char* name) {
  const char* value = std::getenv(name);
  if (value == nullptr || *value == '\0') return std::nullopt;
  return std::string{value};
}

}  // namespace

void add_config_option(CLI::App& command, CommonOptions& options) {
  command.add_option("--config", options.config,
                     "directory with river.json, tackle.json and settings.json (else FLOATWRIGHT_CONFIG, else "
                     "$XDG_CONFIG_HOME/floatwright)")
      ->type_name("DIR");
}

void add_day_options(CLI::App& command, CommonOptions& options) {
  command.add_option("--date", options.date, "today, tomorrow or YYYY-MM-DD; without it today until the day turns, then tomorrow")
      ->type_name("DAY");
  command.add_option("--now", options.now, "plan as if it were this instant, such as 2027-05-13T19:50:00-06:00")
      ->type_name("INSTANT");
  command.add_flag("--offline", options.offline, "use the readings on disk, never the network");
}

void add_output_options(CLI::App& command, CommonOptions& options) {
  command.add_option("--units", options.units, "us or metric, instead of what settings.json says")
      ->type_name("us|metric")
      ->check(CLI::IsMember({"us", "metric"}).description(""));
  command.add_option("--out", options.out, "write files into this directory instead of standard output")->type_name("DIR");
  auto* quiet = command.add_flag("--quiet", options.quiet, "say nothing on standard error but failures");
  command.add_flag("--verbose", options.verbose, "say on standard error what was read, chosen and left out")->excludes(quiet);
}

Result<std::filesystem::path> configuration_directory(const CommonOptions& options) {
  if (!options.config.empty()) return options.config;
  if (const auto named = environment("FLOATWRIGHT_CONFIG")) return std::filesystem::path{*named};
  if (const auto xdg = environment("XDG_CONFIG_HOME")) return std::filesystem::path{*xdg} / "floatwright";
  if (const auto home = environment("HOME")) return std::filesystem::path{*home} / ".config" / "floatwright";
  return tl::unexpected(Failure{
      "no configuration named: give --config DIR, or set FLOATWRIGHT_CONFIG to the directory with river.json", kExitUsage});
}

Result<Instant> instant_now(const CommonOptions& options) {
  if (options.now.empty()) return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  if (const auto at = instant_in(options.now)) return *at;
  return tl::unexpected(Failure{
      fmt::format("--now: found \"{}\"; give an instant with its offset, such as 2027-05-13T19:50:00-06:00", options.now),
      kExitUsage});
}

std::chrono::days days_ahead(const River& river) {
  const bool official = std::ranges::any_of(river.gauges, [](const GaugeSite& gauge) { return !gauge.forecast.empty(); });
  return official ? kFarthestOfficial : kOwnDaysAhead;
}

Result<std::chrono::year_month_day> day_planned(const CommonOptions& options, const Configuration& configuration,
                                                Instant now) {
  const auto& zone = configuration.river.time_zone;
  if (options.date.empty()) return default_day(now, zone, configuration.settings.day_turns_at);
  const auto today = local_date(now, zone);
  if (options.date == "today") return today;
  if (options.date == "tomorrow") return std::chrono::year_month_day{std::chrono::sys_days{today} + std::chrono::days{1}};
  const auto day = date_in(options.date);
  if (!day) {
    return tl::unexpected(
        Failure{fmt::format("--date: found \"{}\"; give today, tomorrow or a date as YYYY-MM-DD", options.date), kExitUsage});
  }
  const auto ahead = std::chrono::sys_days{*day} - std::chrono::sys_days{today};
  const auto most = days_ahead(configuration.river);
  if (ahead < std::chrono::days{0} || ahead > most) {
    return tl::unexpected(
        Failure{fmt::format("--date: {} is {} days {} today on the river; a plan can be made for today and at most {} days ahead{}",
                            options.date, std::abs(ahead.count()), ahead < std::chrono::days{0} ? "before" : "after",
                            most == kOwnDaysAhead ? "two" : "fifteen",
                            most == kOwnDaysAhead ? " (more where a gauge in river.json names an official \"forecast\")" : ""),
                kExitUsage});
  }
  return *day;
}

Result<Configuration> configuration_or_told(const CommonOptions& options) {
  const auto directory = configuration_directory(options);
  if (!directory) return tl::unexpected(directory.error());
  auto loaded = with_ratings(load_configuration(*directory));
  for (const auto& problem : loaded.problems) {
    if (!problem.warning || !options.quiet) fmt::print(stderr, "{}\n", say(problem));
  }
  if (loaded.configuration) return std::move(*loaded.configuration);
  return tl::unexpected(Failure{fmt::format("{}: the configuration can't be used; mend what stands above", directory->string()),
                                loaded.exit_code == 0 ? kExitConfiguration : loaded.exit_code});
}

}  // namespace floatwright
