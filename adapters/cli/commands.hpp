#pragma once
// One function per command: adds its options to the parser and, when it is the one asked for, leaves what to run in
// `run`. To add a command: one file with such a function, and its line in command_line.cpp.
#include <functional>

namespace CLI {
class App;
}

namespace floatwright {

using RunCommand = std::function<int()>;  // answers with the exit code

void add_start_command(CLI::App& program, RunCommand& run);
void add_plan_command(CLI::App& program, RunCommand& run);
void add_check_command(CLI::App& program, RunCommand& run);
void add_fetch_command(CLI::App& program, RunCommand& run);
void add_sink_command(CLI::App& program, RunCommand& run);
void add_show_command(CLI::App& program, RunCommand& run);
void add_show_river(CLI::App& show, RunCommand& run);
void add_show_skill(CLI::App& show, RunCommand& run);
void add_log_command(CLI::App& program, RunCommand& run);
void add_season_command(CLI::App& program, RunCommand& run);
void add_tune_command(CLI::App& program, RunCommand& run);

}  // namespace floatwright
