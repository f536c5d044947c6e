#include "adapters/in/files/tackle_file.hpp"

#include "adapters/in/files/quantities.hpp"
#include "engine/tackle/line_code.hpp"
#include "engine/tackle/names.hpp"

namespace floatwright {
namespace {

// What can be at all, wide enough for any tackle; ours, no source.
constexpr Range<Length> kRodLengths{metres(1.0), metres(6.0)};
constexpr Range<Length> kTipLengths{metres(0.3), metres(30.0)};
constexpr Range<Length> kLeaders{metres(0.2), metres(15.0)};
constexpr Range<Speed> kLineSinkRates{metres_per_second(0.005), metres_per_second(0.5)};
constexpr Range<Speed> kFlySinkRates{metres_per_second(0.0), metres_per_second(1.0)};
constexpr Range<Mass> kHeadWeights{grams(1.0), grams(100.0)};
constexpr Range<Mass> kFlyWeights{grams(0.001), grams(20.0)};
constexpr Range<Mass> kShotWeights{grams(0.01), grams(10.0)};
constexpr Range<LinearDensity> kLineWeights{kilograms_per_metre(1e-4), kilograms_per_metre(0.02)};

Rod read_rod(TypedObject& in) {
  Rod rod;
  rod.id = in.text("id", Need::Required);
  rod.mark = in.text("mark", Need::Optional);
  rod.line_number = in.whole_number("line_number", 1, 15, Need::Required).value_or(0);
  rod.length = read_length(in, "length", kRodLengths, Need::Required).value_or(Length{});
  in.finish();
  return rod;
}

// One even rate, or the two ends of a density-compensated part, whose mean is then the rate.
void read_sink_rates(TypedObject& in, Line& line) {
  line.sink_rate = read_sink_rate(in, "sink_rate", kLineSinkRates, Need::Optional);
  line.sink_rate_butt = read_sink_rate(in, "sink_rate_butt", kLineSinkRates, Need::Optional);
  line.sink_rate_end = read_sink_rate(in, "sink_rate_end", kLineSinkRates, Need::Optional);
  const bool even = in.has_any_spelling("sink_rate");
  const bool butt = in.has_any_spelling("sink_rate_butt"), end = in.has_any_spelling("sink_rate_end");
  if (even && (butt || end)) {
    in.tell("", "an even sink rate and one for an end at once",
            "\"sink_rate_in_s\", or both of \"sink_rate_butt_in_s\" and \"sink_rate_end_in_s\"",
            "Keep the even rate, or the rates of both ends.");
  } else if (butt != end) {
    in.tell("",
            butt ? "a sink rate at the butt without one at the end" : "a sink rate at the end without one at the butt",
            "both", butt ? "Add \"sink_rate_end_in_s\"." : "Add \"sink_rate_butt_in_s\".");
  }
  if (line.sink_rate_butt && line.sink_rate_end) line.sink_rate = (*line.sink_rate_butt + *line.sink_rate_end) * 0.5;
}

// A code that does not read is told by tackle_problems(); its number stays 0.
Line read_line(TypedObject& in) {
  static constexpr WordTable<bool, 2> kSpools{{{false, "main"}, {true, "spare"}}};
  Line line;
  line.id = in.text("id", Need::Required);
  line.on_rod = in.text("on_rod", Need::Optional);
  line.spare_spool = meaning_of(in, "spool", in.text("spool", Need::Optional), kSpools).value_or(false);
  line.kind = meaning_of(in, "kind", in.text("kind", Need::Required), kLineKindWords).value_or(LineKind::Floating);
  line.code = in.text("code", Need::Required);
  if (const auto code = read_line_code(line.code)) line.line_number = code->number;
  line.tip_length = read_length(in, "tip_length", kTipLengths, Need::Optional);
  read_sink_rates(in, line);
  line.head_weight = read_mass(in, "head_weight", kHeadWeights, Need::Optional);
  line.least_tip = read_mass(in, "least_tip", kHeadWeights, Need::Optional);
  line.most_tip = read_mass(in, "most_tip", kHeadWeights, Need::Optional);
  line.first_30_ft = read_mass(in, "first_30_ft", kHeadWeights, Need::Optional);
  line.sinking_weight = read_linear_density(in, "sinking_weight", kLineWeights, Need::Optional);
  line.leader = read_length(in, "leader", kLeaders, Need::Optional);
  in.finish();
  return line;
}

LoopedTip read_tip(TypedObject& in) {
  LoopedTip tip;
  tip.id = in.text("id", Need::Required);
  tip.length = read_length(in, "length", kTipLengths, Need::Required).value_or(Length{});
  // A floating tip is a tip too: it sinks at 0.
  tip.sink_rate = read_sink_rate(in, "sink_rate", {Speed{}, kLineSinkRates.most}, Need::Required).value_or(Speed{});
  tip.weight = read_mass(in, "weight", kHeadWeights, Need::Optional);
  in.finish();
  return tip;
}

FlyClass read_fly(TypedObject& in) {
  FlyClass fly;
  fly.id = in.text("id", Need::Required);
  fly.name = in.text("name", Need::Optional);
  if (fly.name.empty()) fly.name = fly.id;
  for (const std::string& use : in.texts("use", Need::Required)) {
    if (const auto method = meaning_of(in, "use", use, kMethodWords)) fly.uses.push_back(*method);
  }
  fly.mass = read_mass(in, "mass", kFlyWeights, Need::Optional);
  fly.sink_rate = read_sink_rate(in, "sink_rate", kFlySinkRates, Need::Required).value_or(Speed{});
  fly.size = in.text("size", Need::Optional);
  in.finish();
  return fly;
}

}  // namespace

ListedTackle read_tackle(const LocatedJson& root, FileReading& reading) {
  ListedTackle listed;
  Tackle& tackle = listed.all;
  auto in = versioned_root(root, reading);
  if (!in) return listed;
  for (TypedObject& item : in->objects("rods", Need::Required)) {
    if (!item.truth("owned", true)) listed.rods_thought_of.insert(tackle.rods.size());
    tackle.rods.push_back(read_rod(item));
  }
  for (TypedObject& item : in->objects("lines", Need::Required)) {
    const bool owned = item.truth("owned", true);
    if (!owned) listed.lines_thought_of.insert(tackle.lines.size());
    tackle.lines.push_back(read_line(item));
    tackle.lines.back().spare_spool |= !owned;
  }
  for (TypedObject& item : in->objects("tips", Need::Optional)) {
    if (!item.truth("owned", true)) listed.tips_thought_of.insert(tackle.tips.size());
    tackle.tips.push_back(read_tip(item));
  }
  for (TypedObject& item : in->objects("flies", Need::Required)) tackle.flies.push_back(read_fly(item));
  tackle.shot = read_masses(*in, "shot", kShotWeights);
  in->finish();
  return listed;
}

}  // namespace floatwright
