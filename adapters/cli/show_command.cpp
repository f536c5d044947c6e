// floatwright show readings: what is on record of a gauge, or what a recorded answer of a service holds.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <fstream>
#include <memory>
#include <sstream>

#include "adapters/cli/commands.hpp"
#include "adapters/cli/common_options.hpp"
#include "adapters/cli/gather_order.hpp"
#include "adapters/cli/message.hpp"
#include "adapters/in/calendar/written_period.hpp"
#include "adapters/in/gauges/payload.hpp"
#include "adapters/out/readings/print_readings.hpp"
#include "adapters/out/readings/words.hpp"
#include "adapters/out/text/readings_text.hpp"

namespace floatwright {
namespace {

struct ReadingsOptions : CommonOptions {
  std::string gauge, payload, service, since = "P2D", as;
};

Result<std::string> bytes_of(const std::string& path) {
  std::ifstream in{path, std::ios::binary};
  std::ostringstream all;
  if (in) all << in.rdbuf();
  if (!in || std::filesystem::is_directory(path)) {
    return tl::unexpected(Failure{fmt::format("{}: no file there that can be read", path), kExitNoInput});
  }
  return all.str();
}

int run_show_payload(const ReadingsOptions& options) {
  const auto bytes = bytes_of(options.payload);
  if (!bytes) return tell(bytes.error());
  const auto service = options.service.empty() ? std::nullopt : std::optional{options.service};
  const auto answer = read_payload(*bytes, options.payload, service);
  if (!answer) return tell(answer.error());
  for (const auto& note : answer->notes) fmt::print(stderr, "{}: {}\n", options.payload, note);
  fmt::print("{}", options.as == "json" ? readings_json(*answer) : readings_csv(*answer));
  return kExitFresh;
}

// A gauge's id in river.json, or any station as it is written there.
Result<std::string> station_named(const River& river, const std::string& name) {
  std::vector<std::string> ids;
  for (const GaugeSite& gauge : river.gauges) {
    if (gauge.id == name) return gauge.station;
    ids.push_back(gauge.id);
  }
  if (name.find(':') != std::string::npos) return name;
  return tl::unexpected(Failure{fmt::format("no gauge \"{}\" in river.json; its gauges are {}, and a station is written as "
                                            "usgs:00000001",
                                            name, fmt::join(ids, ", ")),
                                kExitUsage});
}

int show_gauge(const ReadingsOptions& options, const Configuration& configuration, Instant now, Period since) {
  const auto station = station_named(configuration.river, options.gauge);
  if (!station) return tell(station.error());
  CommonOptions offline = options;
  offline.offline = true;
  const GatherOrder order = gather_order(offline, configuration, now, Period{0});
  Payloads found = gather_series(configuration, {*station}, now - since, order);
  for (const auto& trouble : found.troubles) say_beside(trouble);
  GaugeAnswer answer;
  for (GaugeSeries& series : found.series) {
    std::erase_if(series.readings, [&](const Reading& row) { return row.time < now - since || (!series.issued && row.time > now); });
    if (series.station == *station && !series.readings.empty()) answer.series.push_back(std::move(series));
  }
  if (answer.series.empty())
    return tell({fmt::format("{}: no readings since {}; run floatwright fetch, or look further back with --since", *station,
                             time_word(now - since)),
                 kExitNothingMade});
  if (options.as == "json" || options.as == "csv") {
    fmt::print("{}", options.as == "json" ? readings_json(answer) : readings_csv(answer));
    return kExitFresh;
  }
  const bool us = options.units.empty() ? configuration.settings.units == UnitSystem::Us : options.units == "us";
  fmt::print("{}", readings_text(answer.series, {.gauge = options.gauge == *station ? "" : options.gauge,
                                                 .station = *station,
                                                 .zone = configuration.river.time_zone,
                                                 .units = us ? UnitSystem::Us : UnitSystem::Metric,
                                                 .from = now - since,
                                                 .now = now}));
  return kExitFresh;
}

int run_show_readings(const ReadingsOptions& options) {
  if (!options.payload.empty()) return run_show_payload(options);
  if (options.gauge.empty())
    return tell({"show readings: name a gauge of river.json, a station, or a recorded answer with --payload FILE", kExitUsage});
  const auto since = period_in(options.since);
  if (!since)
    return tell({fmt::format("--since: found \"{}\"; give a span of time as P2D or PT12H", options.since), kExitUsage});
  const auto now = instant_now(options);
  if (!now) return tell(now.error());
  const auto configuration = configuration_or_told(options);
  return configuration ? show_gauge(options, *configuration, *now, *since) : tell(configuration.error());
}

}  // namespace

void add_show_command(CLI::App& program, RunCommand& run) {
  auto options = std::make_shared<ReadingsOptions>();
  CLI::App* show = program.add_subcommand("show", "look at what it believes");
  show->require_subcommand(1);
  show->footer("Example: floatwright show readings cutbank --since P2D");
  CLI::App* readings = show->add_subcommand("readings", "what is on record of a gauge; or what a recorded answer of a service holds");
  readings->add_option("GAUGE", options->gauge, "a gauge's id in river.json, or a station such as usgs:00000001");
  add_config_option(*readings, *options);
  readings->add_option("--since", options->since, "how far back, such as P2D (without it) or PT12H")->type_name("PERIOD");
  readings->add_option("--now", options->now, "look as if it were this instant, such as 2027-05-13T19:50:00-06:00")->type_name("INSTANT");
  readings->add_option("--units", options->units, "us or metric, instead of what settings.json says")
      ->type_name("us|metric")
      ->check(CLI::IsMember({"us", "metric"}).description(""));
  readings->add_option("--payload", options->payload, "a file with a service's answer, in place of a gauge")->type_name("FILE")->excludes("GAUGE");
  readings->add_option("--service", options->service, "whose answer it is; without it the bytes decide")->type_name("NAME")->needs("--payload");
  readings->add_option("--as", options->as, "json or csv, in SI and UTC; without it a gauge is drawn, an answer is csv")
      ->check(CLI::IsMember({"json", "csv"}).description(""))
      ->type_name("json|csv");
  readings->footer("Example: floatwright show readings cutbank --since P2D\n"
                   "         floatwright show readings --payload answer.json --as csv");
  readings->callback([options, &run] { run = [options] { return run_show_readings(*options); }; });
  add_show_river(*show, run);
  add_show_skill(*show, run);
}

}  // namespace floatwright
