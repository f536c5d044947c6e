#include "engine/wording/say_rig.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

std::string kind_words(LineKind kind) {
  switch (kind) {
    case LineKind::Floating:
      return "floating";
    case LineKind::NymphTaper:
      return "floating nymph taper";
    case LineKind::DoubleTaper:
      return "floating double taper";
    case LineKind::ShootingHead:
      return "floating shooting head";
    case LineKind::FloatingWithSinkingLeader:
      return "floating, sinking leader";
    case LineKind::SinkingTip:
      return "sinking tip";
    case LineKind::LoopedHead:
      return "looped head";
    case LineKind::ClearTip:
      return "clear tip";
    case LineKind::FullSinking:
      return "full sinking line";
    case LineKind::ThinNymphLine:
      return "thin nymph line";
    case LineKind::MonoRig:
      return "mono rig";
  }
  return "line";
}

// "5 in/s"; a density compensated part has a rate at either end: "5 1/2 to 6 1/2 in/s".
std::string rate_words(const Line& line, UnitSystem units) {
  if (line.sink_rate_butt && line.sink_rate_end) {
    const std::string butt = sink_rate_figure(*line.sink_rate_butt, units);
    const std::string end = say_sink_rate(*line.sink_rate_end, units);
    return butt == sink_rate_figure(*line.sink_rate_end, units) ? end : butt + " to " + end;
  }
  return line.sink_rate ? say_sink_rate(*line.sink_rate, units) : "";
}

std::string sinking_words(const Line& line, UnitSystem units) {
  std::string words;
  if (line.tip_length) words += " " + say_length(*line.tip_length, units);
  if (const std::string rate = rate_words(line, units); !rate.empty()) words += " " + rate;
  return words;
}

// Of a line that is named by its sinking part.
std::string brief_kind(LineKind kind) {
  switch (kind) {
    case LineKind::SinkingTip:
      return "tip";
    case LineKind::ClearTip:
      return "clear tip";
    case LineKind::FloatingWithSinkingLeader:
      return "sinking leader";
    default:
      return "";
  }
}

std::string name_of(const FlyClass& fly) { return typed(fly.name.empty() ? fly.id : fly.name); }

}  // namespace

std::string say_line(const Tackle& tackle, const Rig& rig, UnitSystem units) {
  const Line& line = tackle.lines.at(rig.line);
  if (!rig.tip) return kind_words(line.kind) + sinking_words(line, units);
  const LoopedTip& tip = tackle.tips.at(*rig.tip);
  return fmt::format("{}, tip {} {}", kind_words(line.kind), say_length(tip.length, units),
                     say_sink_rate(tip.sink_rate, units));
}

std::string say_line_briefly(const Tackle& tackle, const Rig& rig, UnitSystem units) {
  if (rig.tip) {
    const LoopedTip& tip = tackle.tips.at(*rig.tip);
    return say_length(tip.length, units) + " tip " + say_sink_rate(tip.sink_rate, units);
  }
  const Line& line = tackle.lines.at(rig.line);
  const std::string name = brief_kind(line.kind), rate = rate_words(line, units);
  if (name.empty() || !line.tip_length) return say_line(tackle, rig, units);
  return say_length(*line.tip_length, units) + " " + name + (rate.empty() ? "" : " " + rate);
}

std::string say_leader(const Tackle& tackle, const ScoredRig& scored, UnitSystem units) {
  if (scored.technique.method != Method::Indicator) return "leader " + say_length(scored.leader, units);
  const auto& fly = tackle.flies.at(scored.rig.fly);
  const Mass in_all = fly.mass.value_or(Mass{}) + scored.rig.shot;
  return fmt::format("indicator: {} to fly, {} in all", say_length(scored.indicator_to_fly, units), say_mass(in_all));
}

std::string say_fly(const Tackle& tackle, const Rig& rig) {
  const FlyClass& fly = tackle.flies.at(rig.fly);
  std::string words = name_of(fly);
  if (!fly.size.empty()) words += " size " + typed(fly.size);
  if (in_grams(rig.shot) > 0.0) words += ", " + say_mass(rig.shot) + " shot";
  return words;
}

std::string say(const Tackle& tackle, const ScoredRig& scored, UnitSystem units) {
  return fmt::format("{}, {}, {}", say_line(tackle, scored.rig, units), say_leader(tackle, scored, units),
                     name_of(tackle.flies.at(scored.rig.fly)));
}

std::string say(const Rod& rod, UnitSystem units) {
  if (units == UnitSystem::Metric) return fmt::format("{} {}-wt", say_length(rod.length, units), rod.line_number);
  const auto whole_inches = static_cast<long>(in_inches(rod.length) + 0.5);  // rods are named to the inch
  const std::string over = whole_inches % 12 == 0 ? "" : fmt::format(" {} in", whole_inches % 12);
  return fmt::format("{} ft{} {}-wt", whole_inches / 12, over, rod.line_number);
}

std::size_t rod_of(const Tackle& tackle, const Rig& rig) {
  const std::string& id = tackle.lines.at(rig.line).on_rod;
  const auto found = std::find_if(tackle.rods.begin(), tackle.rods.end(), [&](const Rod& rod) { return rod.id == id; });
  return static_cast<std::size_t>(found - tackle.rods.begin());
}

}  // namespace floatwright
