#pragma once
// The words of river.json and the JSON plan for waters, beds and platforms.
#include "engine/river/river.hpp"
#include "engine/units/words.hpp"

namespace floatwright {

inline constexpr WordTable<WaterType, 7> kWaterWords{{{WaterType::Riffle, "riffle"},
                                                      {WaterType::Run, "run"},
                                                      {WaterType::Pool, "pool"},
                                                      {WaterType::Tailout, "tailout"},
                                                      {WaterType::Bank, "bank"},
                                                      {WaterType::Eddy, "eddy"},
                                                      {WaterType::Pocket, "pocket"}}};
inline constexpr WordTable<Bed, 6> kBedWords{{{Bed::Unknown, "unknown"},
                                              {Bed::Sand, "sand"},
                                              {Bed::Gravel, "gravel"},
                                              {Bed::Cobble, "cobble"},
                                              {Bed::Boulder, "boulder"},
                                              {Bed::Wood, "wood"}}};
inline constexpr WordTable<Platform, 4> kPlatformWords{{{Platform::Drifting, "drifting"},
                                                        {Platform::Held, "held"},
                                                        {Platform::Anchored, "anchored"},
                                                        {Platform::Wading, "wading"}}};
inline constexpr WordTable<DepthSource, 3> kDepthSourceWords{
    {{DepthSource::Noted, "noted"}, {DepthSource::Surveyed, "surveyed"}, {DepthSource::Guessed, "guessed"}}};

[[nodiscard]] constexpr std::string_view word_for(WaterType value) { return word_in(kWaterWords, value); }
[[nodiscard]] constexpr std::string_view word_for(Bed value) { return word_in(kBedWords, value); }
[[nodiscard]] constexpr std::string_view word_for(Platform value) { return word_in(kPlatformWords, value); }
[[nodiscard]] constexpr std::string_view word_for(DepthSource value) { return word_in(kDepthSourceWords, value); }

}  // namespace floatwright
