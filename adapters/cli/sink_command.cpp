// floatwright sink: how deep one rig fishes in one water, rigs side by side, counts in still water, and exact cases.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "adapters/cli/commands.hpp"
#include "adapters/cli/hand_out.hpp"
#include "adapters/cli/sink_answer.hpp"
#include "adapters/out/figure/png.hpp"
#include "adapters/out/figure/svg.hpp"

namespace floatwright {
namespace {

constexpr double kPixelsPerPoint = 2.0;

Failure no_picture(const std::string& kind) {
  return {
      fmt::format(
          "--as {}: there is no picture of this: one rig that is swung, stripped or hung under an indicator has one",
          kind),
      kExitUsage};
}

Result<std::string> pdf_of(const SinkAnswer& answer, const SinkOptions& options) {
  const auto now = instant_now(options);
  if (!now) return tl::unexpected(now.error());
  PdfOptions pdf;
  pdf.paper = options.paper == "a4" ? Paper::A4 : Paper::Letter;
  pdf.made_at = *now;
  pdf.drawings.emplace_back();
  if (answer.page_picture) pdf.drawings.front()["line"] = *answer.page_picture;
  return as_pdf({answer.page}, pdf);
}

Result<std::string> printed(const SinkAnswer& answer, const std::string& kind, const SinkOptions& options) {
  if (kind == "text") return as_text(answer.page, answer.sketches);
  if (kind == "json") return answer.json;
  if (kind == "pdf") return pdf_of(answer, options);
  if (!answer.picture) return tl::unexpected(no_picture(kind));
  if (kind == "svg") return as_svg(*answer.picture, answer.picture_words);
  return as_png(*answer.picture, kPixelsPerPoint);
}

Result<Written> hand_out(const SinkAnswer& answer, const SinkOptions& options) {
  if (auto ready = prepare_out(options.out); !ready) return ready;
  for (const std::string& kind : options.kinds) {
    const auto text = printed(answer, kind, options);
    if (!text) return tl::unexpected(text.error());
    const std::string file = fmt::format("sink.{}", kind == "text" ? "txt" : kind);
    auto done =
        options.out.empty() ? print_out(*text) : write_whole_file(std::filesystem::path{options.out} / file, *text);
    if (!done) return done;
  }
  return Written{};
}

bool names_a_rig(const SinkOptions& o) {
  const std::string* const texts[] = {&o.tip,    &o.leader,  &o.shot,     &o.rod,         &o.cast,  &o.technique,
                                      &o.count,  &o.strip,   &o.platform, &o.depth,       &o.speed, &o.mean,
                                      &o.thread, &o.profile, &o.bed,      &o.temperature, &o.layer, &o.lake};
  return !o.lines.empty() || !o.flies.empty() ||
         std::ranges::any_of(texts, [](const std::string* text) { return !text->empty(); });
}

Result<SinkAnswer> answer_to(const SinkOptions& options) {
  if (options.kinds.size() > 1 && options.out.empty())
    return tl::unexpected(Failure{"--as: several kinds go into files; name a directory with --out", kExitUsage});
  if (!options.sink_case.empty() && names_a_rig(options))
    return tl::unexpected(
        Failure{"--case holds rig, water and cast itself: leave the options that name them out", kExitUsage});
  if (!options.sink_case.empty()) return case_answer(options.sink_case);
  const auto scene = sink_scene(options);
  if (!scene) return tl::unexpected(scene.error());
  if (options.still) return still_answer(*scene);
  return options.compare ? rigs_answer(*scene, !options.flies.empty()) : rig_answer(*scene);
}

int run_sink(const SinkOptions& options) {
  const auto answer = answer_to(options);
  if (!answer) return tell(answer.error());
  const auto done = hand_out(*answer, options);
  return done ? kExitFresh : tell(done.error());
}

// Each value stands alone: a second word is an option of its own.
template <class T>
CLI::Option* words(CLI::App& command, const char* name, T& value, const char* help, const char* type) {
  return command.add_option(name, value, help)->type_name(type);
}

void add_rig_options(CLI::App& command, SinkOptions& o) {
  words(command, "--line", o.lines,
        "such as \"sinking tip 12.5 ft 5 in/s\", or one of the tackle file; several with --compare", "LINE")
      ->expected(1)
      ->take_all();
  words(command, "--tip", o.tip, "of a looped head of the tackle file", "ID");
  words(command, "--leader", o.leader, "its length, such as \"3.5 ft\"", "LENGTH");
  words(command, "--fly", o.flies,
        "such as \"weighted streamer\" or \"0.6 g 4 in/s\", or one of the tackle file; several with --compare", "FLY")
      ->expected(1)
      ->take_all();
  words(command, "--shot", o.shot, "on the leader, such as \"0.4 g\"", "MASS");
  words(command, "--rod", o.rod, "its length (9 ft)", "LENGTH");
}

void add_water_options(CLI::App& command, SinkOptions& o) {
  words(command, "--depth", o.depth, "of the water, such as \"5 ft\" or \"1.5 m\"", "LENGTH");
  words(command, "--speed", o.speed, "of the water as seen at the surface, such as \"3 ft/s\"", "SPEED");
  words(command, "--mean", o.mean, "of the water in the mean of its depth, instead of --speed", "SPEED");
  words(command, "--thread", o.thread, "surface speed where the boat is, if not that of the water fished", "SPEED");
  words(command, "--profile", o.profile,
        "speed over depth, if not by --bed: \"power 1/6\", \"log 5 cm\" (its roughness) or uniform", "LAW");
  words(command, "--bed", o.bed, "sand, gravel, cobble, boulder or wood", "BED");
  words(command, "--temperature", o.temperature, "of the water, such as \"50 F\"", "DEGREES");
}

void add_way_options(CLI::App& command, SinkOptions& o) {
  words(command, "--method", o.method, "swing, strip, indicator, tight_line or dry; without it swing, of a thin line tight_line", "METHOD");
  words(command, "--platform", o.platform, "drifting, held, anchored or wading", "PLATFORM");
  words(command, "--technique", o.technique, "of a swing: tight, \"one mend\" or \"mend and feed\"", "HOW");
  words(command, "--cast", o.cast, "rod tip to fly, such as \"40 ft\"", "LENGTH");
  words(command, "--count", o.count, "before the first pull, such as \"6 s\"", "TIME");
  words(command, "--strip", o.strip, "speed of the retrieve, such as \"1 ft/s\"", "SPEED");
}

}  // namespace

void add_sink_command(CLI::App& program, RunCommand& run) {
  auto o = std::make_shared<SinkOptions>();
  CLI::App* command = program.add_subcommand("sink", "how deep a rig fishes in a water, and how surely");
  add_rig_options(*command, *o);
  add_water_options(*command, *o);
  add_way_options(*command, *o);
  command->add_flag("--compare", o->compare, "rigs side by side: those named, else all of the tackle file");
  auto* still = command->add_flag("--still", o->still, "a lake: how long to count, and whether the fly keeps its level")
                    ->excludes("--compare");
  words(*command, "--lake", o->lake, "with --still: a lake of river.json, whose temperature profile gives the layer",
        "ID");
  words(*command, "--layer", o->layer, "with --still: the depth to count down to, such as \"10 ft\"", "LENGTH");
  words(*command, "--case", o->sink_case, "an exact case in SI, solved as it stands (for engineers)", "FILE")
      ->excludes("--compare")
      ->excludes(still);
  command->add_option("--as", o->kinds, "text, json, pdf, or the picture as svg or png (several with commas and --out)")
      ->delimiter(',')
      ->check(CLI::IsMember({"text", "json", "pdf", "svg", "png"}).description(""))
      ->type_name("KIND[,KIND]");
  words(*command, "--paper", o->paper, "size of the PDF: letter (8 1/2 by 11 in) or a4", "letter|a4")
      ->check(CLI::IsMember({"letter", "a4"}).description(""));
  add_config_option(*command, *o);
  add_output_options(*command, *o);
  command->footer(
      "Example: floatwright sink --line \"sinking tip 12.5 ft 5 in/s\" --fly \"weighted streamer\" --depth \"5 ft\" "
      "--speed \"3 ft/s\"\n"
      "No depth printed here was compared with a fly line in a real river; the bands say how far to trust it.");
  command->callback([o, &run] { run = [o] { return run_sink(*o); }; });
}

}  // namespace floatwright
