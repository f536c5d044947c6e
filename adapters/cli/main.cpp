// The composition root: commands are registered, one is run, its exit code is ours.
#include "adapters/cli/command_line.hpp"

int main(int argc, char** argv) { return floatwright::run_command_line({argv, argv + argc}); }
