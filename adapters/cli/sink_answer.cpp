#include "adapters/cli/sink_answer.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "adapters/in/text/printable.hpp"
#include "adapters/out/figure/line_picture.hpp"
#include "adapters/out/json/sink_json.hpp"
#include "adapters/out/pdf/print_pdf.hpp"
#include "adapters/out/text/line_sketch.hpp"
#include "engine/choice/rigging.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

constexpr double kPictureWidth = 480.0;  // points
constexpr Duration kCounts[] = {seconds(0.0),  seconds(5.0),  seconds(10.0), seconds(15.0),
                                seconds(20.0), seconds(30.0), seconds(45.0), seconds(60.0)};

SinkAsked asked_of(const SinkScene& scene) {
  return {scene.tackle, scene.water, scene.judgement, scene.cast, scene.units};
}

std::string name_of(const SinkScene& scene, const Rig& rig) {
  return fmt::format("{} with {}", capitalised(say_line(scene.tackle, rig, scene.units)), say_fly(scene.tackle, rig));
}

Failure no_answer(const SinkScene& scene, const Rig& rig, const std::string& why) {
  return {fmt::format("no answer for {}: {}", name_of(scene, rig), why), kExitBadData};
}

// A line that allows no mend is swung tight beside those that do.
Technique as_it_can(const SinkScene& scene, const Rig& rig) {
  Technique technique = scene.technique;
  const bool mended = technique.method == Method::Swing && technique.mending != Mending::Tight;
  if (mended && scene.tackle.lines[rig.line].kind == LineKind::FullSinking) technique.mending = Mending::Tight;
  return technique;
}

bool more(const RigInWater& a, const RigInWater& b) { return a.scored.seconds > b.scored.seconds; }

// Of each line and tip the first, which is the best.
std::vector<RigInWater> best_of_each_line(std::vector<RigInWater> fished) {
  std::vector<RigInWater> kept;
  for (RigInWater& one : fished) {
    const auto of_its_line = [&](const RigInWater& k) { return same_line(k.scored.rig, one.scored.rig); };
    if (std::ranges::none_of(kept, of_its_line)) kept.push_back(std::move(one));
  }
  return kept;
}

}  // namespace

Result<SinkAnswer> rig_answer(const SinkScene& scene) {
  if (scene.rigs.size() != 1)
    return tl::unexpected(
        Failure{"several lines or flies were named: put them side by side with --compare", kExitUsage});
  const Rig& rig = scene.rigs.front();
  if (const auto why = way_ruled_out(scene.tackle, rig, scene.technique, scene.water, scene.judgement))
    return tl::unexpected(Failure{*why, kExitUsage});
  const auto fished = rig_in_water(scene.tackle, rig, scene.technique, scene.water, scene.cast, scene.judgement);
  if (!fished) return tl::unexpected(no_answer(scene, rig, fished.why_absent()));
  const SinkAsked asked = asked_of(scene);
  SinkAnswer answer{sink_page(asked, *fished), rigs_json(asked, {*fished}, {})};
  if (!fished->drawn) return answer;
  answer.sketches["line"] = line_sketch(*fished->drawn, scene.units);
  answer.picture = line_picture(*fished->drawn, sink_picture_heading(asked, *fished), scene.units, kPictureWidth);
  answer.page_picture =
      line_picture(*fished->drawn, {sink_picture_legend()}, scene.units, width_for_drawings(Paper::Letter));
  answer.picture_words = sink_picture_alt(asked, *fished);
  return answer;
}

Result<SinkAnswer> rigs_answer(const SinkScene& scene, bool flies_named) {
  std::vector<RigInWater> fished;
  std::vector<std::string> left_out;
  for (const Rig& rig : scene.rigs) {
    const Technique technique = as_it_can(scene, rig);
    auto why = way_ruled_out(scene.tackle, rig, technique, scene.water, scene.judgement);
    if (!why) {
      auto found = rig_in_water(scene.tackle, rig, technique, scene.water, scene.cast, scene.judgement);
      if (found)
        fished.push_back(std::move(found.value()));
      else
        why = found.why_absent();
    }
    if (why && std::ranges::find(left_out, *why) == left_out.end()) left_out.push_back(*why);
  }
  if (fished.empty() && left_out.size() == 1) return tl::unexpected(Failure{left_out.front(), kExitUsage});
  std::ranges::stable_sort(fished, more);
  if (!flies_named) fished = best_of_each_line(std::move(fished));
  const SinkAsked asked = asked_of(scene);
  return SinkAnswer{rigs_page(asked, fished, left_out), rigs_json(asked, fished, left_out)};
}

Result<SinkAnswer> still_answer(const SinkScene& scene) {
  const Temperature warmth = scene.water.temperature ? *scene.water.temperature : celsius(10.0);
  const StillAsked asked{scene.tackle, {scene.water.depth, warmth}, scene.technique.strip, scene.layer, scene.lake,
                         scene.units};
  std::vector<Duration> counts(std::begin(kCounts), std::end(kCounts));
  if (scene.technique.count > Duration{}) counts = {scene.technique.count};
  std::vector<CountedRig> rigs;
  for (const Rig& rig : scene.rigs) {
    const auto rod = std::ranges::find(scene.tackle.rods, scene.tackle.lines[rig.line].on_rod, &Rod::id);
    CountedRig one{rig,
                   still_counts(scene.tackle, rig, asked.water, counts, asked.strip, scene.cast,
                                rod == scene.tackle.rods.end() ? feet(9.0) : rod->length),
                   {}};
    if (scene.layer) one.to_layer = count_to(sinking_part(scene.tackle, rig), *scene.layer);
    rigs.push_back(std::move(one));
  }
  const bool none = std::ranges::none_of(rigs, [](const CountedRig& one) { return one.counts.has_value(); });
  if (none) return tl::unexpected(no_answer(scene, rigs.front().rig, rigs.front().counts.why_absent()));
  return SinkAnswer{still_page(asked, rigs), still_json(asked, rigs)};
}

}  // namespace floatwright
