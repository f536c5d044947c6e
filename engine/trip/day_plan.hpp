#pragma once
// The finished plan: what every output prints and nothing else. Mirrors the JSON plan of docs (config/schemas/plan.json).
// Everything here is decided; wording turns it into sentences, json into keys.
#include <optional>
#include <string>
#include <vector>

#include "engine/choice/choose.hpp"
#include "engine/forecast/outlook.hpp"
#include "engine/routing/river_flows.hpp"
#include "engine/trip/settings.hpp"

namespace floatwright {

enum class Verdict { Recommended, Possible, RuledOut };

enum class CautionKind {
  OldReading, MissingGauge, GuessedDepth, UnknownFlow, Ice,
  HeatCaution, HeatStop, HeatUnknown, ColdWater, Wading, DamRise, DamDrop, FastRise,
  BoatLimit, Hazard, Portage, Closure, RulesOld, ForecastDoubt, Dark, NoLine
};

struct Caution {
  CautionKind kind = CautionKind::OldReading;
  int weight = 0;                 // heavier is printed first
  std::string where;              // place name, empty: the whole day
  std::optional<Instant> from, to;
  std::string text;               // the sentence, with its numbers in SI-neutral form filled in by wording
  std::string basis;              // where the limit comes from
  // Numbers behind the sentence, as far as its kind has them.
  std::optional<Temperature> temperature;
  std::optional<Discharge> flow, flow_after;
  std::optional<Length> depth;
  std::optional<Speed> speed;
};

struct PlannedWater {
  WaterType type = WaterType::Run;
  Bed bed = Bed::Unknown;
  double fishing_time = 0.0;
  Measured<Band<Length>> depth;
  Measured<Band<SurfaceSpeed>> surface_speed;
  Measured<Band<MeanSpeed>> mean_speed;
  DepthSource source = DepthSource::Noted;
  bool far_from_note = false;
  Measured<Discharge> noted_at;
  WaterChoice choice;             // best is the rig to use with the rods aboard
};

struct PlannedReach {
  std::string id, name;
  RiverPlace from, to;
  Instant arrive{}, leave{};
  Measured<Band<Discharge>> discharge;
  Measured<Band<Temperature>> temperature;
  std::string flow_source, temperature_source;
  std::vector<PlannedWater> waters;
  bool portage_at_end = false;
  std::string stop_sentence;      // "THE LEDGE: STOP ABOVE. PORTAGE RIGHT." when a hazard ends it
  std::optional<Duration> stop_time;
};

struct PlannedStretch {
  std::string from, to;           // access ids
  std::string from_name, to_name;
  RiverPlace from_place, to_place;
  Verdict verdict = Verdict::Possible;
  std::string why;                // the limit broken, or what it has over the others
  Instant launch{}, off_by{};
  Length length;
  Duration on_water, shuttle;
  double worth = 0.0;             // minutes x W in fishable hours; never printed
  RodPlan rods;
  std::vector<Rig> rigged;        // by rods.rods: what each carries at launch
  std::vector<PlannedReach> reaches;
  std::vector<Caution> cautions;  // on this stretch
};

struct HourRow {                  // the hours table, at the recommended stretch's put-in
  Instant at{};
  Measured<Band<Discharge>> flow;
  Measured<Band<Temperature>> temperature;
};

struct DayPlan {
  Instant made_at{};
  std::chrono::year_month_day day{};
  std::string time_zone;
  Instant sunrise{}, sunset{};
  bool sun_known = false;
  std::string main_gauge;                 // id of the gauge whose state is the river's
  std::vector<GaugeOutlook> outlooks;
  std::vector<PlannedStretch> stretches;  // best first; ruled out ones last
  std::vector<HourRow> hours;
  std::vector<NewestReading> readings;    // parallel to reading_gauges
  std::vector<std::string> reading_gauges;
  std::vector<std::string> missing_gauges;
  std::vector<std::string> notes;         // sentences of provenance: sensor choices, rows left out
  std::vector<DamFront> fronts;
  std::vector<Caution> cautions;          // of the day as a whole
  bool stale = false;                     // exit code 75: readings older than 6 h or a gauge missing
  bool nothing = false;                   // exit code 69: no reading at all
};

}  // namespace floatwright
