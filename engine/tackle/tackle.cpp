#include "engine/tackle/tackle.hpp"

#include <algorithm>

namespace floatwright {
namespace {

constexpr Length kWholeLine = feet(90.0);  // common practice, no source: longer than any cast, so that it ranks longest

// Nominal mean, and both ends where the owner gives them.
SinkingPart rated(Length length, const Line& line) {
  SinkingPart part{length, {}, {}, {}, false};
  const Speed any = line.sink_rate ? *line.sink_rate : Speed{};
  part.butt = line.sink_rate_butt ? *line.sink_rate_butt : any;
  part.end = line.sink_rate_end ? *line.sink_rate_end : any;
  part.sink_rate = line.sink_rate ? any : (part.butt + part.end) / 2.0;
  return part;
}

}  // namespace

SinkingPart sinking_part(const Tackle& tackle, const Rig& rig) {
  const Line& line = tackle.lines[rig.line];
  switch (line.kind) {
    case LineKind::SinkingTip:
    case LineKind::ClearTip:
    case LineKind::FloatingWithSinkingLeader:
      return line.tip_length ? rated(*line.tip_length, line) : SinkingPart{};
    case LineKind::FullSinking: {
      SinkingPart whole = rated(kWholeLine, line);
      whole.whole_line = true;
      return whole;
    }
    case LineKind::LoopedHead: {
      if (!rig.tip) return {};
      const LoopedTip& tip = tackle.tips[*rig.tip];
      return {tip.length, tip.sink_rate, tip.sink_rate, tip.sink_rate, false};
    }
    case LineKind::Floating:
    case LineKind::NymphTaper:
    case LineKind::DoubleTaper:
    case LineKind::ShootingHead:
    case LineKind::ThinNymphLine:
    case LineKind::MonoRig:
      return {};
  }
  return {};
}

Length default_diameter(Speed sink_rate) {
  const double rate = in_inches_per_second(sink_rate);
  if (rate < 3.5) return millimetres(1.2);
  return rate < 6.5 ? millimetres(1.0) : millimetres(0.9);
}

Length rod_length(const Tackle& tackle, const Rig& rig) {
  const auto rod = std::ranges::find(tackle.rods, tackle.lines[rig.line].on_rod, &Rod::id);
  return rod == tackle.rods.end() ? feet(9.0) : rod->length;
}

}  // namespace floatwright
