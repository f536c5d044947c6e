#include "adapters/cli/hand_out.hpp"

#include <date/date.h>
#include <fmt/format.h>

#include <cstdio>
#include <filesystem>

namespace floatwright {
namespace {

Result<Written> write_files(const std::vector<Kind>& kinds, const Printed& printed, const std::string& out) {
  const std::chrono::sys_days planned = printed.boats.front().in.day;
  const auto day = date::format("%F", date::sys_days{planned.time_since_epoch()});
  for (const Kind& kind : kinds) {
    const auto text = kind.print(printed);
    if (!text) return tl::unexpected(text.error());
    if (auto written = write_whole_file(std::filesystem::path{out} / (day + kind.ending), *text); !written) return written;
  }
  return Written{};
}

}  // namespace

Result<Written> print_out(const std::string& text) {
  if (std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0) return Written{};
  return tl::unexpected(Failure{"standard output could not be written", kExitWriteFailed});
}

Result<Written> prepare_out(const std::string& out) {
  if (out.empty()) return Written{};
  std::error_code error;
  std::filesystem::create_directories(out, error);
  if (error) {
    return tl::unexpected(Failure{fmt::format("--out {}: the directory can't be made ({})", out, error.message()),
                                  kExitCantCreate});
  }
  return Written{};
}

Result<Written> hand_out(const std::vector<std::string>& kinds, const Printed& printed, const std::string& out) {
  for (const auto& name : kinds) {
    const auto rows = kinds_named(name);
    auto done = out.empty() ? rows.front().print(printed).and_then(print_out) : write_files(rows, printed, out);
    if (!done) return done;
  }
  return Written{};
}

}  // namespace floatwright
