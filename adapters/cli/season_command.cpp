// floatwright season: which lines earn their place, over the years on record.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <filesystem>
#include <memory>

#include "adapters/cli/commands.hpp"
#include "adapters/cli/common_options.hpp"
#include "adapters/cli/day_tables.hpp"
#include "adapters/cli/hand_out.hpp"
#include "adapters/cli/progress_bar.hpp"
#include "adapters/cli/side_by_side.hpp"
#include "adapters/cli/whole_records.hpp"
#include "adapters/out/figure/coverage_picture.hpp"
#include "adapters/out/figure/png.hpp"
#include "adapters/out/figure/svg.hpp"
#include "adapters/out/json/coverage_json.hpp"
#include "adapters/out/text/print_text.hpp"
#include "engine/coverage/usual_lines.hpp"
#include "engine/coverage_of_river.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/wording/coverage_page.hpp"

namespace floatwright {
namespace {

constexpr double kPictureWidth = 640.0;   // points
constexpr double kPixelsPerPoint = 2.0;

struct SeasonOptions : CommonOptions {
  std::string since, payload, as = "text";
};

Result<std::string> printed(const std::string& as, const Coverage& found, const CoverageWords& words) {
  if (as == "json") return coverage_json(found, words);
  if (as == "text") return as_text(coverage_page(found, words));
  const Drawing drawing = coverage_picture(found, words, kPictureWidth);
  if (as == "png") return as_png(drawing, kPixelsPerPoint);
  return as_svg(drawing, coverage_picture_alt(found, words)) + "\n";
}

Result<Written> hand_out_season(const SeasonOptions& options, const std::string& text) {
  if (options.out.empty()) return print_out(text);
  if (const auto ready = prepare_out(options.out); !ready) return ready;
  const std::string name = "season." + (options.as == "text" ? std::string{"txt"} : options.as);
  return write_whole_file(std::filesystem::path{options.out} / name, text);
}

CoverageAsked asked_of(const SeasonOptions& options, const Configuration& configuration, std::optional<Period> since, Instant now) {
  CoverageAsked asked{.river = configuration.river,
                      .tackle = with_usual_lines(configuration.listed),
                      .settings = configuration.settings,
                      .judgement = configuration.judgement,
                      .records = whole_records(options, configuration, since ? now - *since : Instant::min(), now)};
  if (since) asked.since = std::chrono::sys_days{local_date(now - *since, configuration.river.time_zone)};
  return asked;
}

Coverage worked_out(const SeasonOptions& options, CoverageAsked& asked) {
  asked.tables = tables_at_hand(tables_for_coverage(asked), asked.tackle.all, asked.judgement, {options.quiet, options.verbose});
  ProgressBar bar("waters fished", !options.quiet);
  asked.do_each = on_all_cores;
  asked.progress = [&](std::size_t done, std::size_t of) { bar.show(done, of); };
  return coverage_of_river(asked);
}

bool has_flow(const std::vector<GaugeRecord>& records) {
  return std::ranges::any_of(records, [](const GaugeRecord& r) { return !r.discharge.empty() || !r.daily_discharge.empty(); });
}

int run_season(const SeasonOptions& options) {
  const auto now = instant_now(options);
  if (!now) return tell(now.error());
  const auto since = since_wanted(options.since);
  if (!since) return tell(since.error());
  const auto configuration = configuration_with_payload(options, options.payload);
  if (!configuration) return tell(configuration.error());
  CoverageAsked asked = asked_of(options, *configuration, *since, *now);
  if (!has_flow(asked.records))
    return tell({"no flow on record of any gauge of this river in that time; run floatwright fetch --since P10Y, or name a "
                 "directory with recorded answers with --payload",
                 kExitNothingMade});
  const Coverage found = worked_out(options, asked);
  const bool us = options.units.empty() ? configuration->settings.units == UnitSystem::Us : options.units == "us";
  const bool usual = asked.tackle.all.lines.size() > configuration->listed.all.lines.size();
  const CoverageWords words{asked.river, asked.tackle.all, us ? UnitSystem::Us : UnitSystem::Metric, usual};
  const auto text = printed(options.as, found, words);
  if (!text) return tell(text.error());
  if (const auto done = hand_out_season(options, *text); !done) return tell(done.error());
  if (const std::string brief = say_short_record(found.counted); !brief.empty() && !options.quiet)
    say_beside("the record is shorter than a year; see the page for what that means");
  return kExitFresh;
}

}  // namespace

void add_season_command(CLI::App& program, RunCommand& run) {
  auto options = std::make_shared<SeasonOptions>();
  CLI::App* command = program.add_subcommand("season", "which lines earn their place over the years on record, and which to buy");
  add_config_option(*command, *options);
  command->add_option("--since", options->since, "look back so far, such as P10Y; without it over all that is on record")
      ->type_name("PERIOD");
  command->add_option("--payload", options->payload, "a directory with recorded answers, in place of the archive")->type_name("DIR");
  command->add_option("--now", options->now, "look back from this instant, such as 2027-05-13T19:50:00-06:00")->type_name("INSTANT");
  command->add_option("--as", options->as, "text, json (SI), or a picture: svg or png")
      ->check(CLI::IsMember({"text", "json", "svg", "png"}).description(""))
      ->type_name("text|json|svg|png");
  add_output_options(*command, *options);
  command->footer("Example: floatwright season --config ~/lantern --since P10Y\n"
                  "         floatwright season --as svg --out ~/plans");
  command->callback([options, &run] { run = [options] { return run_season(*options); }; });
}

}  // namespace floatwright
