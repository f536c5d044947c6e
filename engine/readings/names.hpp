#pragma once
// The words of the JSON plan and of printed readings for quantities and marks, and each quantity's SI unit.
#include "engine/readings/reading.hpp"
#include "engine/units/words.hpp"

namespace floatwright {

inline constexpr WordTable<Variable, 7> kVariableWords{{{Variable::Flow, "discharge"},
                                                        {Variable::GaugeHeight, "stage"},
                                                        {Variable::WaterTemperature, "water_temperature"},
                                                        {Variable::Clarity, "turbidity"},
                                                        {Variable::AirTemperature, "air_temperature"},
                                                        {Variable::Rain, "rain"},
                                                        {Variable::Wind, "wind"}}};
inline constexpr WordTable<Variable, 7> kSiUnits{{{Variable::Flow, "m3/s"},
                                                  {Variable::GaugeHeight, "m"},
                                                  {Variable::WaterTemperature, "degC"},
                                                  {Variable::Clarity, "FNU"},
                                                  {Variable::AirTemperature, "degC"},
                                                  {Variable::Rain, "mm/h"},
                                                  {Variable::Wind, "m/s"}}};
inline constexpr WordTable<Mark, 12> kMarkWords{{{Mark::Provisional, "provisional"},
                                                 {Mark::Approved, "approved"},
                                                 {Mark::Revised, "revised"},
                                                 {Mark::Estimated, "estimated"},
                                                 {Mark::Ice, "ice"},
                                                 {Mark::Equipment, "equipment"},
                                                 {Mark::Backwater, "backwater"},
                                                 {Mark::Discontinued, "discontinued"},
                                                 {Mark::Unavailable, "unavailable"},
                                                 {Mark::Stale, "stale"},
                                                 {Mark::SuspectSpike, "suspect_spike"},
                                                 {Mark::Unknown, "unknown"}}};

[[nodiscard]] constexpr std::string_view word_for(Variable value) { return word_in(kVariableWords, value); }
[[nodiscard]] constexpr std::string_view si_unit_of(Variable value) { return word_in(kSiUnits, value); }
[[nodiscard]] constexpr std::string_view word_for(Mark value) { return word_in(kMarkWords, value); }

}  // namespace floatwright
