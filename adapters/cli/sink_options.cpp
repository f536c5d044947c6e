#include "adapters/cli/sink_options.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>

#include "adapters/cli/sink_water.hpp"
#include "adapters/in/files/nearest.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/words/amounts.hpp"
#include "adapters/in/words/written_fly.hpp"
#include "adapters/in/words/written_line.hpp"

namespace floatwright {
namespace {

constexpr const char* kRodInHand = "the rod in hand";

Failure usage(const std::string& what) { return {what, kExitUsage}; }

// The configuration named, or the one at its usual place where there is one; none: the words alone must do.
Result<std::optional<Configuration>> tackle_at_hand(const SinkOptions& options) {
  const bool named = !options.config.empty() || std::getenv("FLOATWRIGHT_CONFIG") != nullptr;
  const auto directory = configuration_directory(options);
  std::error_code error;
  if (!named && (!directory || !std::filesystem::is_directory(*directory, error))) return std::nullopt;
  return configuration_or_told(options).map([](Configuration loaded) { return std::optional{std::move(loaded)}; });
}

template <class T>
std::optional<std::size_t> with_id(const std::vector<T>& things, const std::string& id) {
  const auto at = std::ranges::find(things, id, &T::id);
  return at == things.end() ? std::nullopt : std::optional(static_cast<std::size_t>(at - things.begin()));
}

template <class T>
std::string ids(const std::vector<T>& things) {
  std::vector<std::string> all;
  for (const T& thing : things) all.push_back(printable(thing.id));
  return fmt::format("{}", fmt::join(all, ", "));
}

// Drawn in through the guides and counted down: no looped head, whose joint stays outside them, and nothing that floats.
bool counts_down(LineKind kind) {
  return kind == LineKind::FullSinking || kind == LineKind::SinkingTip || kind == LineKind::ClearTip ||
         kind == LineKind::FloatingWithSinkingLeader;
}

class RigMaker {
 public:
  RigMaker(const SinkOptions& options, SinkScene& scene, bool has_file)
      : options_(options), scene_(scene), has_file_(has_file) {}

  std::optional<Failure> make() {
    if (auto failed = find_lines()) return failed;
    const auto thin = [this](std::size_t line) { return is_thin(tackle().lines[line].kind); };
    if (options_.method.empty() && !options_.still && std::ranges::all_of(lines_, thin)) scene_.technique.method = Method::TightLine;
    if (auto failed = find_flies()) return failed;
    if (auto failed = put_on_leader_and_rod()) return failed;
    if (auto failed = find_shot()) return failed;
    for (const std::size_t line : lines_) {
      const auto tips = tips_on(line);
      if (!tips) return tips.error();
      for (const auto& tip : *tips)
        for (const std::size_t fly : flies_) scene_.rigs.push_back({line, tip, fly, shot_});
    }
    return std::nullopt;
  }

 private:
  Tackle& tackle() { return scene_.tackle; }

  std::optional<Failure> find_lines() {
    if (options_.lines.empty() && !((options_.compare || options_.still) && has_file_))
      return usage(
          "which line? Give --line, such as --line \"sinking tip 12.5 ft 5 in/s\", or the id of one in your tackle "
          "file");
    if (options_.lines.empty()) {
      for (std::size_t i = 0; i < tackle().lines.size(); ++i)
        if (!tackle().lines[i].on_rod.empty() && (options_.compare || counts_down(tackle().lines[i].kind))) lines_.push_back(i);
      if (lines_.empty()) return usage("no line of your tackle file sinks on a retrieve: name one with --line");
      return std::nullopt;
    }
    for (const std::string& typed : options_.lines) {
      if (const auto known = with_id(tackle().lines, typed)) {
        lines_.push_back(*known);
        continue;
      }
      auto written = line_in("--line", typed);
      if (!written) return as_an_id("--line", typed, ids(tackle().lines), written.error());
      add(*std::move(written));
    }
    return std::nullopt;
  }

  // A word with no blank in it was an id that is not in the file.
  [[nodiscard]] Failure as_an_id(const char* option, const std::string& typed, const std::string& known,
                                 const Failure& otherwise) const {
    if (!has_file_ || typed.find(' ') != std::string::npos) return otherwise;
    return usage(
        fmt::format("{}: \"{}\" is not in your tackle file ({}); {}", option, printable(typed), known, otherwise.what));
  }

  void add(WrittenLine written) {
    const std::string rod = fmt::format("{} {}", kRodInHand, tackle().lines.size());
    tackle().rods.push_back({rod, "", written.line.line_number, feet(9.0)});
    written.line.on_rod = rod;
    lines_.push_back(tackle().lines.size());
    if (written.tip) {
      own_tips_.emplace_back(tackle().lines.size(), tackle().tips.size());
      tackle().tips.push_back(*written.tip);
    }
    tackle().lines.push_back(std::move(written.line));
  }

  std::optional<Failure> find_flies() {
    if (options_.flies.empty() && !((options_.compare || options_.still) && has_file_))
      return usage(
          "which fly? Give --fly, such as --fly \"weighted streamer\" or --fly \"0.6 g 4 in/s\", or one of your tackle "
          "file");
    if (options_.flies.empty()) {
      for (std::size_t i = 0; i < tackle().flies.size(); ++i)
        if (std::ranges::count(tackle().flies[i].uses, scene_.technique.method) > 0) flies_.push_back(i);
      if (options_.still && !flies_.empty()) flies_.resize(1);  // a table a line: the fly alters a count little
      return flies_.empty()
                 ? std::optional(usage("no fly of your tackle file is listed for this method: name one with --fly"))
                 : std::nullopt;
    }
    for (const std::string& typed : options_.flies) {
      auto known = with_id(tackle().flies, typed);
      const auto by_name = std::ranges::find(tackle().flies, typed, &FlyClass::name);
      if (!known && by_name != tackle().flies.end()) known = static_cast<std::size_t>(by_name - tackle().flies.begin());
      if (!known) {
        auto written = fly_in("--fly", typed);
        if (!written) return as_an_id("--fly", typed, ids(tackle().flies), written.error());
        known = tackle().flies.size();
        tackle().flies.push_back(*std::move(written));
      }
      flies_.push_back(*known);
    }
    return std::nullopt;
  }

  std::optional<Failure> put_on_leader_and_rod() {
    std::optional<Length> leader, rod;
    if (!options_.leader.empty()) {
      const auto typed = length_in({"--leader", "3.5 ft"}, options_.leader, {metres(0.2), metres(15.0)});
      if (!typed) return typed.error();
      leader = *typed;
    }
    if (!options_.rod.empty()) {
      const auto typed = length_in({"--rod", "9 ft"}, options_.rod, {metres(1.0), metres(6.0)});
      if (!typed) return typed.error();
      rod = *typed;
    }
    for (const std::size_t line : lines_) {
      if (leader) tackle().lines[line].leader = leader;
      const auto at = with_id(tackle().rods, tackle().lines[line].on_rod);
      if (rod && at) tackle().rods[*at].length = *rod;
    }
    return std::nullopt;
  }

  std::optional<Failure> find_shot() {
    if (options_.shot.empty()) return std::nullopt;
    const auto typed = mass_in({"--shot", "0.4 g"}, options_.shot, {Mass{}, grams(20.0)});
    if (!typed) return typed.error();
    shot_ = *typed;
    return std::nullopt;
  }

  Result<std::vector<std::optional<std::size_t>>> tips_on(std::size_t line) {
    if (tackle().lines[line].kind != LineKind::LoopedHead) return std::vector<std::optional<std::size_t>>{std::nullopt};
    for (const auto& [of, tip] : own_tips_)
      if (of == line) return std::vector<std::optional<std::size_t>>{tip};
    if (!options_.tip.empty()) {
      if (const auto tip = with_id(tackle().tips, options_.tip)) return std::vector<std::optional<std::size_t>>{tip};
      return tl::unexpected(
          usage(fmt::format("--tip: \"{}\" is none of your tips: {}", printable(options_.tip), ids(tackle().tips))));
    }
    std::vector<std::optional<std::size_t>> all;
    for (std::size_t i = 0; i < tackle().tips.size(); ++i) all.emplace_back(i);
    if (options_.compare && !all.empty()) return all;
    return tl::unexpected(
        usage(fmt::format("{} needs a tip on its loop: name it with --tip{}", printable(tackle().lines[line].id),
                          all.empty() ? "" : ", one of " + ids(tackle().tips))));
  }

  const SinkOptions& options_;
  SinkScene& scene_;
  bool has_file_;
  std::vector<std::size_t> lines_, flies_;
  std::vector<std::pair<std::size_t, std::size_t>> own_tips_;  // line, tip
  Mass shot_;
};

// Without --depth: its shoals, where boats lie, unless the layer is under them; else as deep as its profile goes.
std::optional<Length> depth_of(const Lake& lake, const Measured<Layer>& layer) {
  if (lake.shoal_depth && (!layer || layer->to <= *lake.shoal_depth)) return lake.shoal_depth;
  return lake.profile.empty() ? std::nullopt : std::optional(lake.profile.back().depth);
}

// The lake's layer, and its depth where none was asked for.
std::optional<Failure> find_lake(const SinkOptions& options, const std::optional<Configuration>& at_hand,
                                 SinkScene& scene) {
  if (options.lake.empty()) return std::nullopt;
  if (!at_hand) return usage("--lake is the id of a lake in river.json: name the configuration with --config");
  const auto& lakes = at_hand->river.lakes;
  const auto found = with_id(lakes, options.lake);
  if (!found)
    return usage(fmt::format("--lake: \"{}\" is not in river.json{}", printable(options.lake),
                             lakes.empty() ? ", which has no lake" : "; its lakes are " + ids(lakes)));
  const Lake& lake = lakes[*found];
  scene.lake = LakeAsked{lake, layer_to_fish(lake), heat_limits(at_hand->river, at_hand->settings)};
  if (!options.depth.empty()) return std::nullopt;
  const auto depth = depth_of(lake, scene.lake->layer);
  if (!depth) return usage("how deep is the lake? Give --depth, or write its shoal_depth_ft or a profile into river.json");
  scene.water.depth = *depth;
  return std::nullopt;
}

// Without --layer the middle of the lake's is what is counted down to, where the water is that deep.
void aim_at_the_middle(SinkScene& scene) {
  if (scene.layer || !scene.lake || !scene.lake->layer) return;
  const Length middle = 0.5 * (scene.lake->layer->from + scene.lake->layer->to);
  if (middle <= scene.water.depth) scene.layer = middle;
}

std::optional<Failure> read_cast_and_layer(const SinkOptions& options, SinkScene& scene) {
  if (!options.cast.empty()) {
    const auto cast = length_in({"--cast", "40 ft"}, options.cast, {metres(3.0), metres(35.0)});
    if (!cast) return cast.error();
    scene.cast = *cast;
  }
  if (!options.lake.empty() && !options.still) return usage("--lake: its layer is asked for with --still");
  if (options.layer.empty()) return std::nullopt;
  if (!options.still) return usage("--layer is the depth to count down to in a lake: it goes with --still");
  const auto layer = length_in({"--layer", "10 ft"}, options.layer, {metres(0.1), metres(30.0)});
  if (!layer) return layer.error();
  scene.layer = *layer;
  if (*layer > scene.water.depth) return usage("--layer: deeper than the water (--depth)");
  return std::nullopt;
}

}  // namespace

Result<SinkScene> sink_scene(const SinkOptions& options) {
  SinkScene scene;
  const auto water = water_asked_for(options);
  if (!water) return tl::unexpected(water.error());
  scene.water = *water;
  const auto technique = technique_asked_for(options);
  if (!technique) return tl::unexpected(technique.error());
  scene.technique = *technique;
  if (options.still) scene.technique.method = Method::Strip;
  auto at_hand = tackle_at_hand(options);
  if (!at_hand) return tl::unexpected(at_hand.error());
  scene.cast = Angler{}.cast;
  if (*at_hand) {
    scene.tackle = std::move((*at_hand)->tackle);
    scene.judgement = (*at_hand)->judgement;
    scene.units = (*at_hand)->settings.units;
    for (const Angler& angler : (*at_hand)->settings.preferences.anglers)
      scene.cast = std::min(scene.cast, angler.cast);
  }
  if (!options.units.empty()) scene.units = options.units == "us" ? UnitSystem::Us : UnitSystem::Metric;
  if (auto failed = find_lake(options, *at_hand, scene)) return tl::unexpected(*failed);
  if (auto failed = read_cast_and_layer(options, scene)) return tl::unexpected(*failed);
  aim_at_the_middle(scene);
  if (auto failed = RigMaker(options, scene, at_hand->has_value()).make()) return tl::unexpected(*failed);
  return scene;
}

}  // namespace floatwright
