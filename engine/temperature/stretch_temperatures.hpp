#pragma once
// The water between two places of known temperature. Parcels are followed down; the equilibrium they exchange heat
// towards is fitted to what the lower gauge showed in the last 5 days; what is still missing there, hour by hour, is
// added in proportion to the travel down to it, so that both ends keep their own curves.
// The water's time: noted float times (-20 %, +25 %); else, where another pace of half to twice the channel's mean
// speed explains the lower gauge's readings clearly better (three tenths less error), that pace (the same); else the
// channel's speed with half and twice the time either way. Judgement throughout; the band also holds the fit's mean
// error, most half way between the gauges.
#include "engine/temperature/known_temperature.hpp"
#include "engine/temperature/parcels_down.hpp"

namespace floatwright {

struct StretchInputs {
  const WaterPath& path;
  const KnownTemperature& top;
  const KnownTemperature& bottom;  // with readings
  JoiningTemperature joining;
};
// By piece of the path, on the grid of the ends. Absent where the lower gauge's last 5 days can't be explained: under a
// day of hours at which both the upper water that came down and the lower gauge are known.
[[nodiscard]] Measured<std::vector<TemperatureCurve>> stretch_temperatures(const StretchInputs& in);

}  // namespace floatwright
