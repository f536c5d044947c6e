#include "engine/choice/suits.hpp"

#include <algorithm>

#include "engine/choice/by_kind.hpp"

namespace floatwright {
namespace {

const MethodSuits& row(Method method, const SuitsJudgement& judgement) {
  switch (method) {
    case Method::Swing:
      return judgement.swing;
    case Method::Strip:
      return judgement.strip;
    case Method::Indicator:
      return judgement.indicator;
    case Method::TightLine:
      return judgement.tight_line;
    case Method::Dry:
      return judgement.dry;
  }
  return judgement.swing;
}

// Cold fish leave the fast water. The same for every method: it serves the choice of stretch.
double cold_share(WaterType type, const Measured<Temperature>& temperature, const SuitsJudgement& judgement) {
  if (!temperature) return 1.0;
  const Table<2> cold{{{judgement.cold_full_c, by_water(judgement.cold, type)}, {judgement.cold_from_c, 1.0}}};
  return read(cold, in_celsius(*temperature));
}

}  // namespace

double suits(Method method, const Conditions& conditions, const SuitsJudgement& judgement) {
  const MethodSuits& of = row(method, judgement);
  const Temperature warmth = conditions.temperature ? *conditions.temperature : celsius(10.0);
  double share = by_water(of, conditions.type) * read(of.by_temperature, in_celsius(warmth));
  if (conditions.clarity) share *= read(of.by_clarity, in_fnu(*conditions.clarity));
  if (conditions.sun_elevation && in_degrees(*conditions.sun_elevation) < judgement.low_light_under_deg)
    share *= of.low_light;
  if (conditions.hatch) share *= method == Method::Dry ? judgement.hatch_dry : judgement.hatch_others;
  const bool windy = conditions.wind && in_metres_per_second(*conditions.wind) > judgement.windy_from_m_s;
  if (windy && method == Method::Dry) share *= judgement.windy_dry;
  return share * cold_share(conditions.type, conditions.temperature, judgement);
}

double worth(double preference, double suits, double efficiency, const ChoiceJudgement& judgement) {
  return std::clamp(preference * suits * std::min(1.0, efficiency / judgement.enough_efficiency), 0.0, 1.0);
}

}  // namespace floatwright
