#include "engine/wording/sink_doubts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/sinking/section.hpp"
#include "engine/water/bed_profile.hpp"
#include "engine/wording/say_slowing.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr double kNearTheBed = 0.9;       // of the depth
constexpr double kTurbulenceTold = 0.15;  // bound from which it is told
constexpr double kSnagTold = 0.005;       // a cast

bool is_led_or_dry(Method method) { return method == Method::TightLine || method == Method::Dry; }

std::string snags(const SinkAsked& asked, double per_cast) {
  const bool unknown = asked.water.bed == Bed::Unknown;
  const std::string over = unknown ? "the bed (not named, taken for cobble)" : "this bed";
  if (per_cast < kSnagTold) return fmt::format("Hardly a cast snags on {}.", over);
  if (per_cast > 0.5) return fmt::format("More than every other cast snags on {}.", over);
  return fmt::format("About one cast in {:.0f} snags on {}.", std::max(2.0, std::round(1.0 / per_cast)), over);
}

std::string slowing(const KnownWater& water) {
  const double mean = mean_over_surface(water.profile, water.depth);
  if (water.profile == bed_profile(water.bed, water.depth)) return say_slowing(water.bed, mean, mean);
  return fmt::format("Speed over depth as typed: {:.2f} of the surface's in the mean.", mean);
}

std::string band_words(const Technique& technique, const BandsJudgement& bands) {
  const bool slack =
      technique.method == Method::Strip ? technique.count > Duration{} : technique.mending != Mending::Tight;
  if (is_led_or_dry(technique.method)) return "";
  if (technique.method == Method::Indicator) return "The band is judgement.";
  const double below = slack ? bands.mended_below : bands.tight_below,
               above = slack ? bands.mended_above : bands.tight_above;
  return fmt::format("The band, -{:.0f}/+{:.0f} % {}, is judgement.", 100.0 * below, 100.0 * above,
                     slack ? "with slack in the line" : "on a tight line");
}

}  // namespace

std::vector<std::string> say_bed(const SinkAsked& asked, const RigInWater& fished) {
  const Technique& technique = fished.scored.technique;
  if (technique.method == Method::Dry) return {};
  const Length bed = asked.water.depth, near = kNearTheBed * bed;
  std::vector<std::string> said{slowing(asked.water), snags(asked, fished.scored.snag_per_cast)};
  if (fished.deepest_tip >= bed) {
    said.push_back("The lower end of the sinking part comes to the bed: nothing is reckoned below it.");
  } else if (fished.deepest_tip > near) {
    said.push_back("The lower end of the sinking part comes within a tenth of the depth of the bed.");
  } else if (fished.scored.fly_depth.high > near && technique.method != Method::Indicator) {
    said.push_back("The deep edge of the band is within a tenth of the depth of the bed: feel for it.");
  }
  return said;
}

std::string say_optimistic(const Line& line, UnitSystem units) {
  if (!line.sinking_weight || !line.sink_rate) return "";
  const auto section = section_for(*line.sinking_weight, *line.sink_rate, water_at(celsius(10.0)));
  const std::string rate = say_sink_rate(*line.sink_rate, units);
  const std::string weight = units == UnitSystem::Us
                                 ? fmt::format("{:.3g} gr/ft", in_grains_per_foot(*line.sinking_weight))
                                 : fmt::format("{:.2g} g/m", in_kilograms_per_metre(*line.sinking_weight) * 1000.0);
  if (!section)
    return fmt::format("No line of {} sinks at {}: the usual thickness for that rate was taken.", weight, rate);
  if (!section->optimistic) return "";
  return fmt::format(
      "To sink at {} a line of {} would have to be {:.1f} times as dense as water, over what coatings reach: the rate "
      "is optimistic, reckon with less.",
      rate, weight, in_kilograms_per_cubic_metre(section->density) / 1000.0);
}

namespace {

// A cast that is shorter than leader and sinking part leaves some of the part inside the rod.
std::string say_short_cast(const SinkAsked& asked, const RigInWater& fished) {
  const ScoredRig& scored = fished.scored;
  const SinkingPart part = sinking_part(asked.tackle, scored.rig);
  if (part.whole_line || !(part.length > Length{}) || scored.leader + part.length <= asked.cast) return "";
  const Length out = asked.cast - std::min(asked.cast, scored.leader);
  return fmt::format(
      "Leader and sinking part together are longer than the cast: {} of the part is out, and no more was reckoned.",
      say_length(out, asked.units));
}

}  // namespace

std::vector<std::string> say_doubts(const SinkAsked& asked, const RigInWater& fished) {
  const Technique& technique = fished.scored.technique;
  std::string first = kNeverCompared;
  if (const std::string band = band_words(technique, asked.judgement.bands); !band.empty()) first += " " + band;
  std::vector<std::string> said{first + " Which rig is deeper is surer than how deep."};
  const bool pulled = technique.method == Method::Swing || technique.method == Method::Strip;
  if (pulled && fished.turbulence >= kTurbulenceTold)
    said.push_back(fmt::format(
        "Turbulence is not reckoned: a line this slow in water this fast may fish up to {:.0f} % shallower.",
        100.0 * fished.turbulence));
  if (std::string words = say_short_cast(asked, fished); !words.empty()) said.push_back(std::move(words));
  const Line& line = asked.tackle.lines[fished.scored.rig.line];
  if (std::string words = say_optimistic(line, asked.units); !words.empty()) said.push_back(std::move(words));
  return said;
}

}  // namespace floatwright
