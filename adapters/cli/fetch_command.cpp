// floatwright fetch: brings the archive up to date.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "adapters/cli/commands.hpp"
#include "adapters/cli/common_options.hpp"
#include "adapters/cli/gather_order.hpp"
#include "adapters/cli/lock.hpp"
#include "adapters/cli/message.hpp"
#include "adapters/cli/progress_bar.hpp"
#include "adapters/cli/whole_records.hpp"

namespace floatwright {
namespace {

struct FetchOptions : CommonOptions {
  std::string since;
};

// A run in cron is quiet when all is well.
void tell_rows(const FetchOptions& options, const Fetched& fetched) {
  if (!options.verbose) return;
  fmt::print(stderr, "{} stations asked; {} readings new, {} changed, {} as they were\n", fetched.asked,
             fetched.rows.added, fetched.rows.changed, fetched.rows.same);
}

int told_what_is_missing(const Fetched& fetched, std::size_t stations) {
  if (fetched.lost.empty() && fetched.not_kept.empty()) return kExitFresh;
  if (!fetched.not_kept.empty()) return tell({"what came could not be kept; see above", kExitWriteFailed});
  const bool all = fetched.lost.size() >= stations;
  return tell({fmt::format("{} of {} stations could not be brought up to date", fetched.lost.size(), stations),
               all ? kExitNothingMade : kExitOldReadings});
}

int run_fetch(const FetchOptions& options) {
  const auto now = instant_now(options);
  if (!now) return tell(now.error());
  const auto since = since_wanted(options.since);
  if (!since) return tell(since.error());
  const auto configuration = configuration_or_told(options);
  if (!configuration) return tell(configuration.error());
  if (configuration->readings.payloads)
    return tell({fmt::format("settings.json reads {}, so there is nothing to fetch; take \"readings\" away to read from the "
                             "network",
                             configuration->readings.payloads->string()),
                 kExitConfiguration});
  const auto lock = lock_run(configuration->directory);
  if (!lock) return tell(lock.error());

  GatherOrder order = gather_order(options, *configuration, *now, Period{0});
  if (!order.archive) return tell({"no place for an archive: name a directory as \"archive\" in settings.json", kExitConfiguration});
  ProgressBar bar("readings", !options.quiet);
  order.fetch.since = *since;
  order.fetch.progress = [&](std::size_t done, std::size_t of) { bar.show(done, of); };
  auto archive = Archive::open_to_write(*order.archive, order.fetch.clock);
  if (!archive) return tell(archive.error());
  std::vector<std::string> troubles = archive->notes();
  const ServicesAsked services(configuration->readings, troubles);
  const auto stations = stations_of(configuration->river);
  const Fetched fetched = fetch(stations, services, &*archive, order.fetch);
  troubles.insert(troubles.end(), fetched.troubles.begin(), fetched.troubles.end());
  for (const auto& trouble : troubles) say_beside(trouble);
  tell_rows(options, fetched);
  return told_what_is_missing(fetched, fetched.asked);
}

}  // namespace

void add_fetch_command(CLI::App& program, RunCommand& run) {
  auto options = std::make_shared<FetchOptions>();
  CLI::App* command = program.add_subcommand("fetch", "bring the readings on disk up to date from the gauge services");
  add_config_option(*command, *options);
  command->add_option("--since", options->since, "fill in the past that far, such as P5Y; a run that is cut goes on where it was")
      ->type_name("PERIOD");
  command->add_option("--now", options->now, "fetch up to this instant, such as 2027-05-13T19:50:00-06:00")->type_name("INSTANT");
  auto* quiet = command->add_flag("--quiet", options->quiet, "say nothing on standard error but failures");
  command->add_flag("--verbose", options->verbose, "say how much came")->excludes(quiet);
  command->footer("Example: floatwright fetch --config ~/lantern --since P5Y");
  command->callback([options, &run] { run = [options] { return run_fetch(*options); }; });
}

}  // namespace floatwright
