// floatwright show readings --payload FILE: what a recorded answer of a service holds.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <fstream>
#include <memory>
#include <sstream>

#include "adapters/cli/commands.hpp"
#include "adapters/cli/common_options.hpp"
#include "adapters/in/gauges/payload.hpp"
#include "adapters/out/readings/print_readings.hpp"

namespace floatwright {
namespace {

struct ReadingsOptions {
  std::string payload, service, as = "csv";
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

int run_show_readings(const ReadingsOptions& options) {
  const auto bytes = bytes_of(options.payload);
  if (!bytes) return tell(bytes.error());
  const auto service = options.service.empty() ? std::nullopt : std::optional{options.service};
  const auto answer = read_payload(*bytes, options.payload, service);
  if (!answer) return tell(answer.error());
  for (const auto& note : answer->notes) fmt::print(stderr, "{}: {}\n", options.payload, note);
  fmt::print("{}", options.as == "json" ? readings_json(*answer) : readings_csv(*answer));
  return kExitFresh;
}

}  // namespace

void add_show_command(CLI::App& program, RunCommand& run) {
  auto options = std::make_shared<ReadingsOptions>();
  CLI::App* show = program.add_subcommand("show", "look at what it believes");
  show->require_subcommand(1);
  show->footer("Example: floatwright show readings --payload answer.json");
  CLI::App* readings = show->add_subcommand("readings", "what a recorded answer of a gauge service holds, in SI and UTC");
  readings->add_option("--payload", options->payload, "a file with the answer's bytes")->required()->type_name("FILE");
  readings->add_option("--service", options->service, "whose answer it is; without it the bytes decide")->type_name("NAME");
  readings->add_option("--as", options->as, "json or csv")->check(CLI::IsMember({"json", "csv"}).description(""))->type_name("json|csv");
  readings->footer("Example: floatwright show readings --payload answer.json --as csv");
  readings->callback([options, &run] { run = [options] { return run_show_readings(*options); }; });
}

}  // namespace floatwright
