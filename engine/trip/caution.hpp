#pragma once
// A caution as decided: its kind, where and when it holds, the numbers behind it and where its limit comes from.
// `text` is either empty (wording makes the sentence from kind and numbers) or printed as it stands: what a person typed
// (how to pass a hazard, why water is closed) or a sentence that has no unit in it. No unit is ever written in this room.
#include <chrono>
#include <optional>
#include <string>

#include "engine/units/instant.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

using DepthTimesSpeed = Quantity<2, 0, -1>;  // m2/s, the product that wading is judged by

enum class CautionKind {
  OldReading, MissingGauge, GuessedDepth, UnknownFlow, Ice,
  HeatCaution, HeatStop, HeatUnknown, ColdWater, Wading, DamRise, DamDrop, FastRise,
  BoatLimit, Hazard, Portage, Closure, RulesOld, ForecastDoubt, Dark,
  ClosureLikely,                  // 73 F daily maximum: look the closures up
  WoodAfterHighWater,
  Wind, Rain
};

struct Caution {
  CautionKind kind = CautionKind::OldReading;
  int weight = 0;                 // heavier is printed first
  std::string where{};              // place name, empty: the whole day
  std::string about{};              // the gauge, dam, hazard or fish it is about, by name; may be empty
  std::optional<Instant> from{}, to{};
  std::optional<Instant> at{};      // expected: a front between `from` (earliest) and `to` (latest); the newest reading
  std::string text{};               // see above
  std::string basis{};              // where the limit comes from
  std::string published{};          // the same in a word or two where it is published: "NWS; 33 CFR 175.15"
  bool our_judgement = false;       // no source stands behind the limit
  bool typed_limit = false;         // a person's own, stricter limit
  bool on_foot = false;             // told to people who wade, not to a boat
  // Numbers behind the sentence, as far as its kind has them.
  std::optional<Temperature> temperature{}, temperature_limit{};  // met, of the case judged; what it is held against
  std::optional<Discharge> flow{}, flow_after{}, flow_limit{};
  std::optional<Length> depth{}, depth_limit{}, rise{};           // of the water waded; rise of the surface in an hour
  std::optional<Speed> speed{}, speed_limit{};                  // of the water waded; of the wind
  std::optional<DepthTimesSpeed> product{}, product_limit{};      // wading
  std::optional<Duration> age{};                                // of a reading
  std::optional<Duration> time{};                               // a portage
  std::optional<std::chrono::year_month_day> date{};            // rules last looked up; none there: never
  bool emergency = false;                                     // cold water: a swim is an emergency
};

}  // namespace floatwright
