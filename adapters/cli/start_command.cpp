// floatwright start: a first configuration from a gauge's number.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "adapters/cli/commands.hpp"
#include "adapters/cli/common_options.hpp"
#include "adapters/cli/first_values.hpp"
#include "adapters/cli/gather_order.hpp"
#include "adapters/cli/hand_out.hpp"
#include "adapters/in/fetch/first_look.hpp"
#include "adapters/in/files/station_name.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/out/files/whole_file.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;

struct StartOptions : CommonOptions {
  std::string station, payload;
};

// Recorded answers are as of their newest reading.
Instant newest_in(const std::vector<GaugeSeries>& series, Instant otherwise) {
  std::optional<Instant> newest;
  for (const GaugeSeries& one : series)
    if (!one.readings.empty() && !one.daily && !one.issued)
      newest = std::max(newest.value_or(Instant{}), one.readings.back().time);
  return newest.value_or(otherwise);
}

Result<FirstLook> looked(const StartOptions& options, Instant now) {
  if (!options.payload.empty()) return first_look_in(options.payload, options.station);
  Configuration nothing_yet;
  nothing_yet.readings.contact = "start";
  std::vector<std::string> troubles;
  const ServicesAsked services(nothing_yet.readings, troubles);
  auto look = first_look(options.station, services, gather_order(options, nothing_yet, now, Period{0}).fetch);
  if (look) look->troubles.insert(look->troubles.begin(), troubles.begin(), troubles.end());
  return look;
}

struct NewFile {
  fs::path path;
  std::string text;
};

// All or none: what was written before one failed goes again.
Result<Written> written(const fs::path& directory, const std::vector<NewFile>& files) {
  std::error_code error;
  fs::create_directories(directory, error);
  if (error || !fs::is_directory(directory, error))
    return tl::unexpected(Failure{fmt::format("--dir {}: the directory can't be made ({})", directory.string(),
                                              error ? error.message() : "something else stands there"),
                                  kExitCantCreate});
  for (std::size_t i = 0; i < files.size(); ++i) {
    auto done = write_whole_file(files[i].path, files[i].text);
    if (done) continue;
    for (std::size_t before = 0; before < i; ++before) fs::remove(files[before].path, error);
    return done;
  }
  return Written{};
}

std::string say_start(const FirstValues& values, const StartOptions& options) {
  std::string out =
      values.about.name.empty() ? options.station : fmt::format("{}: {}", options.station, printable(values.about.name));
  out += values.flow ? fmt::format("\nIt read {}.\n", say_first_flow(values)) : "\nIts flow is not known.\n";
  return out +
         fmt::format(
             "Wrote river.json, tackle.json and settings.json in {0}.\n"
             "Now type what river.json marks with TYPE: where the gauge and two accesses are, and one note of depth\n"
             "and speed. Then: floatwright check --config {0}\n",
             options.config);
}

int run_start(const StartOptions& options) {
  if (const auto wrong = wrong_station(options.station))
    return tell({fmt::format("found \"{}\"; allowed: {}. {} The services are {}.", printable(options.station),
                             wrong->allowed, wrong->mend, fmt::join(station_prefixes(), ", ")),
                 kExitUsage});
  const fs::path directory{options.config};
  std::vector<NewFile> files{
      {directory / "river.json", {}}, {directory / "tackle.json", {}}, {directory / "settings.json", {}}};
  std::error_code error;
  for (const NewFile& file : files)
    if (fs::exists(fs::symlink_status(file.path, error)))
      return tell({fmt::format("{}: there is such a file already, and it stays as it is; name another --dir",
                               file.path.string()),
                   kExitCantCreate});
  const auto now = instant_now(options);
  if (!now) return tell(now.error());

  const auto look = looked(options, *now);
  if (!look) return tell(look.error());
  for (const auto& trouble : look->troubles) say_beside(trouble);
  const bool recorded = !options.payload.empty() && options.now.empty();
  const FirstValues values = first_values(*look, recorded ? newest_in(look->series, *now) : *now, options.payload);
  files[0].text = first_river(values);
  files[1].text = first_tackle();
  files[2].text = first_settings(values);
  const auto done = written(directory, files).and_then([&](Written) { return print_out(say_start(values, options)); });
  return done ? kExitFresh : tell(done.error());
}

}  // namespace

void add_start_command(CLI::App& program, RunCommand& run) {
  auto options = std::make_shared<StartOptions>();
  CLI::App* command =
      program.add_subcommand("start", "a first configuration from a gauge's number; what to type in it is marked");
  command->add_option("STATION", options->station, "the gauge, such as usgs:00000001")->required()->type_name("");
  command->add_option("--dir", options->config, "the new configuration's directory; no file in it is written over")
      ->required()
      ->type_name("DIR");
  command->add_option("--payload", options->payload, "a directory of recorded answers in place of the network")
      ->type_name("DIR");
  command->add_option("--now", options->now, "as if it were this instant, such as 2027-05-13T19:50:00-06:00")
      ->type_name("INSTANT");
  command->footer("Example: floatwright start usgs:00000001 --dir ~/lantern");
  command->callback([options, &run] { run = [options] { return run_start(*options); }; });
}

}  // namespace floatwright
