// floatwright check: every problem of every file at once, else a short picture of the river.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "adapters/cli/commands.hpp"
#include "adapters/cli/common_options.hpp"
#include "adapters/cli/gather_order.hpp"
#include "adapters/cli/message.hpp"
#include "adapters/cli/send.hpp"
#include "adapters/in/files/log_file.hpp"
#include "adapters/in/gauges/rating_files.hpp"
#include "engine/river/graph.hpp"
#include "engine/river/picture.hpp"

namespace floatwright {
namespace {

void print_picture(const Configuration& configuration) {
  const auto& river = configuration.river;
  for (const auto& line : river_picture(river, river_graph(river))) fmt::print("{}\n", line);
  fmt::print("\n{} reaches named, {} gauges, {} accesses; {} rods, {} lines, {} fly classes.\n", river.reaches.size(),
             river.gauges.size(), river.accesses.size(), configuration.tackle.rods.size(), configuration.tackle.lines.size(),
             configuration.tackle.flies.size());
}

// Reads the whole archive; 0 where it is sound, not there yet, or not used.
int check_archive(const Configuration& configuration) {
  const auto file = archive_file(configuration);
  if (configuration.readings.payloads || !file || !std::filesystem::exists(*file)) return kExitFresh;
  const auto archive = Archive::open_to_read(*file);
  if (!archive) return tell(archive.error());
  const auto doubts = archive->integrity();
  if (!doubts) return tell(doubts.error());
  for (const auto& doubt : *doubts) fmt::print("{}\n", doubt);
  if (doubts->empty()) fmt::print("Archive {}: sound.\n", file->string());
  return doubts->empty() ? kExitFresh : kExitBadData;
}

struct CheckOptions : CommonOptions {
  bool mail = false;
};

int run_check(const CheckOptions& options) {
  const auto directory = configuration_directory(options);
  if (!directory) return tell(directory.error());
  const auto loaded = with_ratings(load_configuration(*directory));
  Problems problems = loaded.problems;
  std::ranges::move(read_log(*directory).problems, std::back_inserter(problems));
  for (const auto& problem : problems) fmt::print("{}\n", say(problem));
  if (!loaded.configuration) {
    const auto errors = std::ranges::count_if(loaded.problems, [](const Problem& p) { return !p.warning; });
    return tell({fmt::format("{}: {} to mend", directory->string(), errors == 1 ? "1 problem" : fmt::format("{} problems", errors)),
                 loaded.exit_code == 0 ? kExitConfiguration : loaded.exit_code});
  }
  if (!problems.empty()) fmt::print("\n");
  print_picture(*loaded.configuration);
  if (const int archive = check_archive(*loaded.configuration); archive != kExitFresh || !options.mail) return archive;
  const auto now = instant_now(options);
  return now ? send_test_letter(*loaded.configuration, *now) : tell(now.error());
}

}  // namespace

void add_check_command(CLI::App& program, RunCommand& run) {
  auto options = std::make_shared<CheckOptions>();
  CLI::App* command = program.add_subcommand("check", "read every file, report all problems at once, show the river");
  add_config_option(*command, *options);
  command->add_flag("--mail", options->mail, "send a test letter to whom settings.json says");
  command->footer("Example: floatwright check --config ~/lantern");
  command->callback([options, &run] { run = [options] { return run_check(*options); }; });
}

}  // namespace floatwright
