#include "adapters/cli/command_line.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>

#include "adapters/cli/commands.hpp"
#include "adapters/in/files/nearest.hpp"
#include "adapters/result.hpp"

namespace floatwright {
namespace {

std::vector<std::string> command_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const auto* command : app.get_subcommands({})) names.push_back(command->get_name());
  return names;
}

std::vector<std::string> option_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const auto* option : app.get_options()) {
    for (const auto& name : option->get_lnames()) names.push_back("--" + name);
  }
  return names;
}

// The command that the words lead to: `show readings` rather than `show`.
const CLI::App& innermost(const CLI::App& program) {
  const CLI::App* app = &program;
  while (!app->get_subcommands().empty()) app = app->get_subcommands().front();
  return *app;
}

std::string with_nearest(const std::string& what, const std::string& found, const std::vector<std::string>& known) {
  const auto near = nearest_word(found, known);
  const bool plausible = !near.empty() && edit_distance(found, near) <= near.size() / 2;
  return plausible ? fmt::format("{} \"{}\" is not known; did you mean {}?", what, found, near)
                   : fmt::format("{} \"{}\" is not known; see floatwright --help", what, found);
}

std::string usage_sentence(const CLI::App& program, const std::vector<std::string>& words, const CLI::ParseError& error) {
  const CLI::App& asked = innermost(program);
  const auto known = option_names(asked);
  for (std::size_t i = 1; i < words.size(); ++i) {
    const auto name = words[i].substr(0, words[i].find('='));
    if (name.starts_with("--") && std::ranges::find(known, name) == known.end()) return with_nearest("the option", name, known);
  }
  const auto commands = command_names(asked);
  const bool needs_command = !commands.empty();
  for (std::size_t i = 1; needs_command && i < words.size(); ++i) {
    if (!words[i].starts_with("-") && words[i] != asked.get_name()) return with_nearest("the command", words[i], commands);
  }
  if (needs_command) return fmt::format("a command is missing: {}", fmt::join(commands, ", "));
  return error.what();
}

}  // namespace

int run_command_line(const std::vector<std::string>& words) {
  CLI::App program{"floatwright: float plans and rig sheets for drift boats, from river gauge readings", "floatwright"};
  program.set_help_flag("-h,--help", "how it is used");
  program.set_version_flag("--version", "floatwright " FLOATWRIGHT_VERSION, "which version this is");
  program.require_subcommand(1);
  program.footer("Example: floatwright plan --config ~/lantern\nThe law, the agency and a licensed guide on the water come before anything printed here.");
  RunCommand run;
  add_start_command(program, run);
  add_plan_command(program, run);
  add_check_command(program, run);
  add_fetch_command(program, run);
  add_sink_command(program, run);
  add_show_command(program, run);
  add_log_command(program, run);
  add_season_command(program, run);
  add_tune_command(program, run);

  try {
    std::vector<std::string> reversed{words.begin() + (words.empty() ? 0 : 1), words.end()};
    std::ranges::reverse(reversed);  // as CLI11 takes them
    program.parse(reversed);
  } catch (const CLI::Success& asked_for_text) {
    return program.exit(asked_for_text);  // --help and --version print to standard output
  } catch (const CLI::ParseError& error) {
    fmt::print(stderr, "floatwright: {}\n", usage_sentence(program, words, error));
    return kExitUsage;
  }
  return run();
}

}  // namespace floatwright
