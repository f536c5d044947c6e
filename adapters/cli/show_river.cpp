// floatwright show river: what is believed of every reach and hour of the day.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <memory>

#include "adapters/cli/commands.hpp"
#include "adapters/cli/common_options.hpp"
#include "adapters/cli/day_inputs.hpp"
#include "adapters/cli/gather_order.hpp"
#include "adapters/cli/hand_out.hpp"
#include "adapters/cli/lock.hpp"
#include "adapters/out/figure/river_line.hpp"
#include "adapters/out/figure/svg.hpp"
#include "adapters/out/json/river_json.hpp"
#include "adapters/out/map/river_geojson.hpp"
#include "adapters/out/text/print_text.hpp"
#include "engine/river/picture.hpp"
#include "engine/wording/river_page.hpp"

namespace floatwright {
namespace {

struct RiverOptions : CommonOptions {
  std::string as = "text";
};

std::string river_text(const RiverOfDay& river, const DayInputs& in) {
  std::string text;
  for (const std::string& line : river_picture(in.river, river_graph(in.river))) text += line + "\n";
  return text + "\n" + as_text(river_page(river, in));
}

std::string printed(const std::string& as, const RiverOfDay& river, const DayInputs& in) {
  if (as == "json") return river_json(river, in);
  if (as == "geojson") return river_geojson(river, in);
  if (as == "svg") return as_svg(river_line(river, in), river_line_alt(river, in)) + "\n";
  return river_text(river, in);
}

Result<Written> hand_out_river(const RiverOptions& options, const std::string& text) {
  if (options.out.empty()) return print_out(text);
  if (const auto ready = prepare_out(options.out); !ready) return ready;
  const std::string name = "river." + (options.as == "text" ? std::string{"txt"} : options.as);
  return write_whole_file(std::filesystem::path{options.out} / name, text);
}

int run_show_river(const RiverOptions& options) {
  const auto now = instant_now(options);
  if (!now) return tell(now.error());
  auto configuration = configuration_or_told(options);
  if (!configuration) return tell(configuration.error());
  const auto day = day_planned(options, *configuration, *now);
  if (!day) return tell(day.error());
  const auto lock = options.offline ? RunLock{} : lock_run(configuration->directory);
  if (!lock) return tell(lock.error());
  auto gathered = gather_readings(*configuration, gather_order(options, *configuration, *now, kAskAgainAfter));
  for (const auto& trouble : gathered.troubles) say_beside(trouble);
  const DayInputs in = day_inputs(options, std::move(*configuration), *now, *day, std::move(gathered));
  if (const auto no_day = day_out_of_reach(in)) return tell(*no_day);
  const RiverOfDay river = river_of_day(in);
  if (const auto done = hand_out_river(options, printed(options.as, river, in)); !done) return tell(done.error());
  return told_how_fresh(river.facts, "river", kExitFresh);
}

}  // namespace

void add_show_river(CLI::App& show, RunCommand& run) {
  auto options = std::make_shared<RiverOptions>();
  CLI::App* command = show.add_subcommand("river", "flow, depth, speed and temperature of every reach through the day, and from what");
  add_config_option(*command, *options);
  add_day_options(*command, *options);
  command->add_option("--as", options->as, "text, json (SI and UTC), geojson (a map) or svg (a picture)")
      ->check(CLI::IsMember({"text", "json", "geojson", "svg"}).description(""))
      ->type_name("text|json|geojson|svg");
  add_output_options(*command, *options);
  command->footer("Example: floatwright show river --config ~/lantern\n"
                  "         floatwright show river --as svg --out ~/plans");
  command->callback([options, &run] { run = [options] { return run_show_river(*options); }; });
}

}  // namespace floatwright
