#pragma once
// What is believed of the river on the day planned, before anyone fishes it: discharge, temperature, depth and speed for
// every hour of the day, reach by reach, each with what speaks for it; when a dam's change arrives. `show river` prints it.
#include <string>
#include <vector>

#include "engine/plan_day.hpp"

namespace floatwright {

struct BelievedWater {
  WaterType type = WaterType::Run;
  DepthSource source = DepthSource::Guessed;
  Measured<Discharge> noted_at{};  // the flow of the note used at noon
  bool far_from_note = false;      // at some hour
  Correction depth_met{}, speed_met{};  // logged since the note
};

struct WaterHour {
  Measured<Band<Length>> depth{};
  Measured<Band<SurfaceSpeed>> surface_speed{};
};

struct ReachHour {
  Instant at{};
  Measured<Band<Discharge>> flow{};
  Measured<Band<Temperature>> temperature{};
  Measured<Band<Length>> mean_depth{};     // of the whole channel
  Measured<Band<MeanSpeed>> mean_speed{};  // likewise
  std::vector<WaterHour> waters{};         // as BelievedReach::waters
};

struct BelievedReach {
  std::string id{}, name{};
  bool named = true;  // else `name` only says below what it lies
  RiverPlace from{}, to{};
  Bed bed = Bed::Unknown;
  std::string side_channel{};  // name of the side channel it is; empty: the stem
  bool lake = false;
  bool channel_guessed = false;
  FlowSource flow_source{};
  TemperatureSource temperature_source{};
  std::vector<BelievedWater> waters{};
  std::vector<ReachHour> hours{};  // every full hour of the river's local day
};

struct RiverOfDay {
  DayPlan facts;  // readings, outlooks, fronts and notes of the day, without a stretch
  std::vector<BelievedReach> reaches;  // the stem from the top down, then the side channels
};

[[nodiscard]] RiverOfDay river_of_day(const DayInputs& in);

}  // namespace floatwright
