#include "engine/wording/sink_page.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/choice/techniques.hpp"
#include "engine/trip/wading.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/say_technique.hpp"
#include "engine/wording/sink_doubts.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr const char* kLawFirst =
    "The law, the agency and a licensed guide on the water come before anything printed here.";

constexpr Temperature kColdWater = fahrenheit(60.0);

Speed plain(SurfaceSpeed speed) { return Speed::from_si(speed.si()); }

std::string platform_words(Platform platform) {
  switch (platform) {
    case Platform::Drifting:
      return "drifting";
    case Platform::Held:
      return "held in the current";
    case Platform::Anchored:
      return "anchored";
    case Platform::Wading:
      return "wading";
  }
  return "";
}

std::string water_words(const SinkAsked& asked) {
  const KnownWater& water = asked.water;
  std::string words = fmt::format("Water {}, {} at the surface", say_length(water.depth, asked.units),
                                  say_speed(plain(water.surface_speed), asked.units));
  if (water.temperature) words += ", " + say_temperature(*water.temperature, asked.units);
  return words;
}

std::string how_words(const SinkAsked& asked, const RigInWater& fished) {
  const Technique& technique = fished.scored.technique;
  const LineKind kind = asked.tackle.lines[fished.scored.rig.line].kind;
  const Length cast = cast_length(kind, asked.cast, asked.judgement.techniques);
  std::string words = capitalised(platform_words(technique.platform)) + ", ";
  if (technique.method != Method::TightLine) words += say_length(cast, asked.units) + " cast, ";
  words += say_technique(technique);
  if (technique.method == Method::Strip) words += fmt::format(" ({})", say_speed(technique.strip, asked.units));
  return words;
}

// "3 ft (2 1/2-4)"
std::string depth_words(const Band<Length>& depth, UnitSystem units) {
  return fmt::format("{} ({})", say_length(depth.best, units), length_range_figure(depth.low, depth.high, units));
}

std::string deep(const SinkAsked& asked, const RigInWater& fished) {
  const ScoredRig& scored = fished.scored;
  if (scored.technique.method == Method::Dry) return "The fly stays on the surface.";
  return fmt::format("The fly is {} down while it fishes.", depth_words(scored.fly_depth, asked.units));
}

std::string zone_words(const SinkAsked& asked, const RigInWater& fished) {
  const Method method = fished.scored.technique.method;
  const std::string cast =
      fmt::format("a drift of {:.0f} s", fished.path.samples.empty() ? 0.0 : fished.path.samples.back().t.si());
  const std::string since = method == Method::Strip ? "the first pull" : "it lands";
  if (method == Method::Dry)
    return fmt::format("It floats free of drag for {:.0f} s.", fished.path.time_to_hang_down.si());
  std::string words = fmt::format("Fish take from about {} down. ", say_length(fished.zone_top, asked.units));
  if (!fished.in_zone)
    return words + (fished.scored.seconds >= 1.0 ? "The fly gets there only at the deep edge of its band."
                                                 : "The fly is never there.");
  const TimeInZone& in = *fished.in_zone;
  return words + fmt::format("The fly is there {:.0f} to {:.0f} s after {}: {:.0f} s of {}.", in.from.si(), in.to.si(),
                             since, in.in_all.si(),
                             method == Method::Strip
                                 ? fmt::format("a retrieve of {:.0f} s", fished.path.time_to_hang_down.si())
                                 : cast);
}

std::string seconds_words(const RigInWater& fished) {
  return fmt::format(
      "{:.0f} seconds of each minute fish: there, at a pace that a fish takes, less what casting and snags cost.",
      fished.scored.seconds);
}

std::string finding_words(Finding finding, Method method) {
  if (method == Method::Dry && finding != Finding::Fishes)
    return "Few fish come up through this much water for a fly, unless a hatch is on.";
  switch (finding) {
    case Finding::Fishes:
      return "";
    case Finding::TooHigh:
      return "This rig does not reach the fish here. A longer or faster-sinking line, a mend and more drift, or a "
             "heavier fly goes deeper; or fish the softer edge.";
    case Finding::OnTheBed:
      return "This rig drags the bed. A shorter or slower-sinking line, a lighter fly or a tighter line keeps it off.";
    case Finding::TooFast:
      return "This rig passes the fish too fast, or is soon past them: a mend, a longer drift or the softer edge gives "
             "them time.";
    case Finding::NoFish:
      return "Water this fast holds no fish near the bed: fish the softer edge.";
  }
  return "";
}

std::string rig_words(const SinkAsked& asked, const RigInWater& fished) {
  return fmt::format("{}, {}, {}", say_line(asked.tackle, fished.scored.rig, asked.units),
                     say_leader(asked.tackle, fished.scored, asked.units), say_fly(asked.tackle, fished.scored.rig));
}

void add(Page& page, const char* label, std::vector<std::string> sentences) {
  if (!sentences.empty()) page.blocks.emplace_back(Lines{std::move(sentences), label});
}

std::string fly_and_shot(const Tackle& tackle, const Rig& rig) {
  const FlyClass& fly = tackle.flies.at(rig.fly);
  std::string words = typed(fly.name.empty() ? fly.id : fly.name);
  if (in_grams(rig.shot) > 0.0) words += " + " + say_mass(rig.shot);
  return words;
}

std::vector<std::string> first_of(const std::vector<std::string>& sentences) {
  constexpr std::size_t kTold = 3;
  if (sentences.size() <= kTold + 1) return sentences;
  std::vector<std::string> told(sentences.begin(), sentences.begin() + kTold);
  told.push_back(fmt::format("And {} more like these.", sentences.size() - kTold));
  return told;
}

// How they are fished, and those that are fished otherwise.
std::string how_of_all(const SinkAsked& asked, const std::vector<RigInWater>& fished) {
  std::string words, others;
  bool mended = false;
  for (const RigInWater& one : fished) {
    const Technique& technique = one.scored.technique;
    if (words.empty() || (technique.mending != Mending::Tight && !mended)) words = how_words(asked, one);
    mended = mended || technique.mending != Mending::Tight;
    if (asked.tackle.lines[one.scored.rig.line].kind == LineKind::FullSinking)
      others = "; a full sinking line can't be mended and swings tight";
  }
  if (!mended) others.clear();
  return words.empty() ? words : words + others + ".";
}

// Cautions that the water typed calls for, then what comes before all of it.
std::vector<std::string> care(const SinkAsked& asked, Platform platform) {
  std::vector<std::string> said;
  const KnownWater& water = asked.water;
  const Speed mean = Speed::from_si(mean_speed(water.surface_speed, water.profile, water.depth).si());
  const WadedLane lane{water.depth, mean};
  const WadingLimits limits;
  if (platform == Platform::Wading && (lane.depth > limits.depth || lane.product() > limits.product))
    said.push_back(fmt::format("Too deep or too fast to wade: {}, depth times speed {}: stay out of it. Less may be too much for you.",
                               say_length(lane.depth, asked.units),
                               say_depth_times_speed(lane.product(), asked.units)));
  if (water.temperature && *water.temperature < kColdWater)
    said.push_back(fmt::format("Water under {}: life jackets ON, everyone.", say_temperature(kColdWater, asked.units)));
  said.emplace_back(kLawFirst);
  return said;
}

std::string share_words(const Measured<double>& share, Method method) {
  if (method == Method::Dry) return "100";
  return share ? fmt::format("{:.0f}", 100.0 * *share) : "-";
}

}  // namespace

std::vector<std::string> sink_picture_heading(const SinkAsked& asked, const RigInWater& fished) {
  return {capitalised(say_line(asked.tackle, fished.scored.rig, asked.units)),
          fmt::format("{}, {}. {}. {}.", capitalised(say_leader(asked.tackle, fished.scored, asked.units)),
                      say_fly(asked.tackle, fished.scored.rig), water_words(asked), how_words(asked, fished)),
          sink_picture_legend()};
}

std::string sink_picture_legend() { return "True slope. Hatched: where fish take."; }

std::string sink_picture_alt(const SinkAsked& asked, const RigInWater& fished) {
  return fmt::format("The line over the bed at true slope: water {}, fly at {}.",
                     say_length(asked.water.depth, asked.units), say_length(fished.scored.fly_depth.best, asked.units));
}

Page sink_page(const SinkAsked& asked, const RigInWater& fished) {
  Page page;
  page.title = capitalised(rig_words(asked, fished));
  page.blocks.emplace_back(Heading{page.title, "", 1});
  page.blocks.emplace_back(Lines{{water_words(asked) + ". " + how_words(asked, fished) + "."}, ""});
  add(page, "DEEP", {deep(asked, fished)});
  std::vector<std::string> zone{zone_words(asked, fished), seconds_words(fished)};
  if (std::string words = finding_words(fished.finding, fished.scored.technique.method); !words.empty())
    zone.insert(zone.begin(), std::move(words));
  add(page, "ZONE", std::move(zone));
  add(page, "BED", say_bed(asked, fished));
  if (fished.drawn) page.blocks.emplace_back(Figure{"line", sink_picture_alt(asked, fished)});
  if (fished.surface_hold)
    add(page, "TOP",
        {fmt::format("Laid across the stream, {:.0f} % of this line's drag is in the fast upper fifth of the water.",
                     100.0 * *fished.surface_hold)});
  add(page, "SURE", say_doubts(asked, fished));
  add(page, "CARE", care(asked, fished.scored.technique.platform));
  return page;
}

Page rigs_page(const SinkAsked& asked, const std::vector<RigInWater>& fished,
               const std::vector<std::string>& left_out) {
  Page page;
  page.title = "Rigs side by side";
  page.blocks.emplace_back(Heading{water_words(asked) + ".", "", 1});
  PageTable table{{"LINE", "FLY", "FLY AT", "BAND", "FISHES", "TOP"},
                  {"", "", length_unit(asked.units), length_unit(asked.units), "s/min", "%"},
                  {}};
  for (const RigInWater& one : fished) {
    const ScoredRig& scored = one.scored;
    table.rows.push_back({say_line_briefly(asked.tackle, scored.rig, asked.units),
                          fly_and_shot(asked.tackle, scored.rig), length_figure(scored.fly_depth.best, asked.units),
                          length_range_figure(scored.fly_depth.low, scored.fly_depth.high, asked.units),
                          fmt::format("{:.0f}", scored.seconds),
                          share_words(one.surface_hold, scored.technique.method)});
  }
  if (!table.rows.empty()) page.blocks.emplace_back(std::move(table));
  add(page, "",
      {how_of_all(asked, fished),
       "FISHES: seconds of a minute in the zone at a pace a fish takes. TOP: share of a line's drag, laid across the "
       "stream, in the fast upper fifth of the water."});
  bool any = false;
  for (const RigInWater& one : fished) any = any || one.finding == Finding::Fishes;
  if (!any && !fished.empty())
    add(page, "NONE",
        {"No rig here reaches the fish: a longer tip, more drift or a heavier fly, or fish the softer edge."});
  add(page, "NOT", first_of(left_out));
  add(page, "SURE", {std::string(kNeverCompared) + " Which rig is deeper is surer than how deep."});
  add(page, "CARE", care(asked, fished.empty() ? Platform::Anchored : fished.front().scored.technique.platform));
  return page;
}

}  // namespace floatwright
