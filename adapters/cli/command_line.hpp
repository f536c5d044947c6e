#pragma once
// The command line as a function of its words: parses, runs the one command asked for, answers with its exit code.
// Exit codes are sysexits (adapters/result.hpp). A mistyped command or option is named with the nearest known one.
#include <string>
#include <vector>

namespace floatwright {

[[nodiscard]] int run_command_line(const std::vector<std::string>& words);

}  // namespace floatwright
