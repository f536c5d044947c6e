#pragma once
// The lists of river.json, one function each; a list that is not there is empty. Item i of the answer is item i of the
// file, whatever was wrong with it. Used by river_file.cpp only.
#include <filesystem>

#include "adapters/in/files/river_places.hpp"

namespace floatwright {

[[nodiscard]] std::vector<GaugeSite> read_gauges(TypedObject& river, PlaceReader& places);
[[nodiscard]] std::vector<Access> read_accesses(TypedObject& river, PlaceReader& places);

// The schedule of a dam is read by load_configuration(): here only its file's name.
[[nodiscard]] std::vector<Dam> read_dams(TypedObject& river, PlaceReader& places);
[[nodiscard]] std::vector<Tributary> read_tributaries(TypedObject& river, PlaceReader& places);
[[nodiscard]] std::vector<SideChannel> read_side_channels(TypedObject& river, PlaceReader& places);
[[nodiscard]] std::vector<Diversion> read_diversions(TypedObject& river, PlaceReader& places);
[[nodiscard]] std::vector<Lake> read_lakes(TypedObject& river, PlaceReader& places);

[[nodiscard]] std::vector<StretchNote> read_stretch_notes(TypedObject& river, PlaceReader& places);
[[nodiscard]] std::vector<NamedReach> read_reaches(TypedObject& river, PlaceReader& places);
[[nodiscard]] std::vector<Spot> read_spots(TypedObject& river, PlaceReader& places);

[[nodiscard]] std::vector<WaveTime> read_wave_times(TypedObject& river, PlaceReader& places);
[[nodiscard]] std::vector<Hazard> read_hazards(TypedObject& river, PlaceReader& places);
[[nodiscard]] std::vector<Closure> read_closures(TypedObject& river, PlaceReader& places);
[[nodiscard]] std::vector<Hatch> read_hatches(TypedObject& river);

// What the depth and speed of a water inherit from what stands around it: a stretch's note, or the bed of a reach or spot.
struct SeenThen {
  std::optional<Discharge> at_flow;
  std::optional<std::chrono::year_month_day> seen_on;
  Bed bed = Bed::Unknown;
};
[[nodiscard]] std::vector<Water> read_waters(TypedObject& in, const SeenThen& around);

}  // namespace floatwright
