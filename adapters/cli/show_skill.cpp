// floatwright show skill: how good the tuned forecasts have been, as tuned.json keeps it; without it what holds instead.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "adapters/cli/commands.hpp"
#include "adapters/cli/common_options.hpp"
#include "adapters/cli/hand_out.hpp"
#include "adapters/in/files/tuned_file.hpp"
#include "adapters/out/text/print_text.hpp"
#include "adapters/out/tuned/tuned_json.hpp"
#include "engine/wording/tuning_page.hpp"

namespace floatwright {
namespace {

struct SkillOptions : CommonOptions {
  std::string as = "text";
};

int run_show_skill(const SkillOptions& options) {
  const auto configuration = configuration_or_told(options);
  if (!configuration) return tell(configuration.error());
  const TuningReports reports = read_tuned_file(configuration->directory / kTunedFile, configuration->river).tuning.reports;
  const bool nothing = reports.flows.empty() && reports.daily_flows.empty() && reports.temperatures.empty() &&
                       reports.lags.empty() && reports.channels.empty();
  const LocalClock clock(configuration->river.time_zone);
  const bool us = options.units.empty() ? configuration->settings.units == UnitSystem::Us : options.units == "us";
  const TuningWords words{configuration->river, clock, us ? UnitSystem::Us : UnitSystem::Metric};
  const std::string text = options.as == "json" ? reports_json(reports)
                                                : as_text(nothing ? untuned_page(words) : tuning_page(reports, words));
  const auto done = print_out(text);
  return done ? kExitFresh : tell(done.error());
}

}  // namespace

void add_show_skill(CLI::App& show, RunCommand& run) {
  auto options = std::make_shared<SkillOptions>();
  CLI::App* command = show.add_subcommand("skill", "how good forecast, travel and temperature have been on the gauges' own records");
  add_config_option(*command, *options);
  command->add_option("--as", options->as, "text or json (SI and UTC)")
      ->check(CLI::IsMember({"text", "json"}).description(""))
      ->type_name("text|json");
  command->add_option("--units", options->units, "us or metric, instead of what settings.json says")
      ->type_name("us|metric")
      ->check(CLI::IsMember({"us", "metric"}).description(""));
  command->footer("Example: floatwright show skill --config ~/lantern");
  command->callback([options, &run] { run = [options] { return run_show_skill(*options); }; });
}

}  // namespace floatwright
