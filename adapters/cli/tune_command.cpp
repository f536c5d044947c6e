// floatwright tune: fits to the records, says how good that has been on what was not fitted, and keeps it for plans.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <memory>

#include "adapters/cli/commands.hpp"
#include "adapters/cli/common_options.hpp"
#include "adapters/cli/hand_out.hpp"
#include "adapters/cli/lock.hpp"
#include "adapters/cli/progress_bar.hpp"
#include "adapters/cli/whole_records.hpp"
#include "adapters/in/files/tuned_file.hpp"
#include "adapters/in/gauges/measurement_files.hpp"
#include "adapters/out/text/print_text.hpp"
#include "adapters/out/tuned/tuned_json.hpp"
#include "engine/tune_river.hpp"
#include "engine/wording/tuning_page.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;

struct TuneOptions : CommonOptions {
  std::string part, payload, as = "text";
};

TuneParts parts_of(const std::string& part) {
  return {part.empty() || part == "geometry", part.empty() || part == "routing", part.empty() || part == "forecast"};
}

std::vector<FieldMeasurement> measurements(const Configuration& configuration) {
  if (!configuration.readings.payloads) return {};
  Measurements found = read_measurement_directory(*configuration.readings.payloads);
  for (const auto& trouble : found.troubles) say_beside(trouble);
  return std::move(found.visits);
}

bool has_nothing(const TuneInputs& in) {
  return in.measurements.empty() && std::all_of(in.records.begin(), in.records.end(), [](const GaugeRecord& record) {
           return record.discharge.empty() && record.daily_discharge.empty() && record.temperature.empty();
         });
}

Result<Written> print_report(const TuneOptions& options, const Configuration& configuration, const TuningReports& reports) {
  if (options.as == "json") return print_out(reports_json(reports));
  const LocalClock clock(configuration.river.time_zone);
  const bool us = options.units.empty() ? configuration.settings.units == UnitSystem::Us : options.units == "us";
  return print_out(as_text(tuning_page(reports, {configuration.river, clock, us ? UnitSystem::Us : UnitSystem::Metric})));
}

// A file that can't be read is put aside under another name, not written over.
Result<Written> keep(const fs::path& directory, const River& river, Tuning now) {
  const fs::path file = directory / kTunedFile;
  TunedFile before = read_tuned_file(file, river);
  if (before.damaged) {
    fs::path aside = file;
    aside += ".damaged";
    std::error_code error;
    fs::rename(file, aside, error);
    if (error)
      return tl::unexpected(Failure{fmt::format("{}: can't be used and can't be put aside ({})", file.string(), error.message()),
                                    kExitCantCreate});
    say_beside(fmt::format("{} could not be used and is now {}", file.string(), aside.filename().string()));
  }
  return write_whole_file(file, tuned_json(put_together(std::move(before.tuning), std::move(now))));
}

int run_tune(const TuneOptions& options) {
  const auto now = instant_now(options);
  if (!now) return tell(now.error());
  auto configuration = configuration_with_payload(options, options.payload);
  if (!configuration) return tell(configuration.error());
  if (const auto ready = prepare_out(options.out); !ready) return tell(ready.error());
  const fs::path directory = options.out.empty() ? configuration->directory : fs::path{options.out};
  const auto lock = lock_run(directory);  // the one whose tuned.json is changed
  if (!lock) return tell(lock.error());

  ProgressBar bar("tuning", !options.quiet);
  TuneInputs in{.river = configuration->river,
                .records = whole_records(options, *configuration, Instant::min(), *now),
                .measurements = measurements(*configuration),
                .parts = parts_of(options.part),
                .stop = configuration->settings.heat_stop.value_or(fahrenheit(70.0)),
                .made_on = *now,
                .progress = [&](std::size_t done, std::size_t of) { bar.show(done, of); }};
  if (has_nothing(in))
    return tell({"nothing to tune to: no gauge of this river has a record here; run floatwright fetch --since P3Y, or name a "
                 "directory with recorded answers with --payload",
                 kExitNothingMade});
  Tuning tuning = tune_river(std::move(in));
  if (const auto done = print_report(options, *configuration, tuning.reports); !done) return tell(done.error());
  if (const auto kept = keep(directory, configuration->river, std::move(tuning)); !kept) return tell(kept.error());
  if (!options.quiet) fmt::print(stderr, "written: {}\n", (directory / kTunedFile).string());
  return kExitFresh;
}

}  // namespace

void add_tune_command(CLI::App& program, RunCommand& run) {
  auto options = std::make_shared<TuneOptions>();
  CLI::App* command = program.add_subcommand("tune", "fit to the gauges' records, report the error on the rest, keep it for plans");
  command->add_option("PART", options->part, "geometry, routing or forecast; without it all of them")
      ->check(CLI::IsMember({"geometry", "routing", "forecast"}).description(""))
      ->type_name("geometry|routing|forecast");
  add_config_option(*command, *options);
  command->add_option("--payload", options->payload, "a directory with recorded answers and field measurements, in place of the archive")
      ->type_name("DIR");
  command->add_option("--now", options->now, "tune to what was on record at this instant, such as 2027-05-13T19:50:00-06:00")
      ->type_name("INSTANT");
  command->add_option("--as", options->as, "the report as text or json (SI and UTC)")
      ->check(CLI::IsMember({"text", "json"}).description(""))
      ->type_name("text|json");
  command->add_option("--units", options->units, "us or metric, instead of what settings.json says")
      ->type_name("us|metric")
      ->check(CLI::IsMember({"us", "metric"}).description(""));
  command->add_option("--out", options->out, "write tuned.json into this directory instead of the configuration's")->type_name("DIR");
  command->add_flag("--quiet", options->quiet, "say nothing on standard error but failures");
  command->footer("Example: floatwright tune --config ~/lantern\n"
                  "         floatwright tune geometry --payload ~/measurements");
  command->callback([options, &run] { run = [options] { return run_tune(*options); }; });
}

}  // namespace floatwright
