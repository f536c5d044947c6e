#pragma once
// The finished plan: what every output prints and nothing else. Mirrors the JSON plan of docs (config/schemas/plan.json).
// Everything here is decided; wording turns it into sentences, json into keys.
#include <optional>
#include <string>
#include <vector>

#include "engine/choice/line_over_bed.hpp"
#include "engine/forecast/outlook.hpp"
#include "engine/learning/learned.hpp"
#include "engine/routing/river_flows.hpp"
#include "engine/temperature/river_temperatures.hpp"
#include "engine/trip/caution.hpp"
#include "engine/trip/settings.hpp"

namespace floatwright {

enum class Verdict { Recommended, Possible, RuledOut };

// The hard limit that a stretch breaks; PlannedStretch::why says it without numbers, these are the numbers.
enum class LimitKind {
  AccessClosed, NoTrailer, TooShort, TooLong, ClosedWater, FlowBelowBoat, FlowAboveBoat, HazardFlow, OffTooLate, AfterDark,
  TooWarm, NoHours
};
struct BrokenLimit {
  LimitKind kind = LimitKind::TooLong;
  std::string where{};                    // reach, access or hazard; of AfterDark "sunset" or "dusk"
  std::optional<Discharge> flow{}, flow_limit{};
  std::optional<Length> length{}, length_limit{};
  std::optional<Instant> at{}, at_limit{};  // when off the water, and the latest allowed
  std::optional<Temperature> temperature{}, temperature_limit{};
};

struct PlannedWater {
  WaterType type = WaterType::Run;
  Bed bed = Bed::Unknown;
  double fishing_time = 0.0;
  Duration fishing{};               // of this water on this trip
  bool hatch = false;             // a listed hatch in its hours
  std::string hatch_name{};
  Measured<Band<Length>> depth{};
  Measured<Band<SurfaceSpeed>> surface_speed{};
  Measured<Band<MeanSpeed>> mean_speed{};
  DepthSource source = DepthSource::Noted;
  bool far_from_note = false;
  std::optional<KnownFlows> beyond{};  // what is known, where the flow is beyond it
  Measured<Discharge> noted_at{};
  Correction depth_met{}, speed_met{};  // what is in depth and speed of what was logged since the note
  WaterChoice choice{};             // best is the rig to use with the rods aboard
};

struct PlannedReach {
  std::string id, name;
  RiverPlace from, to;
  Instant arrive{}, leave{};
  Instant read_at{};              // the instant whose flow and temperature stand here: the middle of the time in it
  Duration float_time, stops;     // moving; stopped to fish, lunch left out
  bool lunch = false;             // lunch is eaten here
  Measured<Band<Discharge>> discharge;
  Measured<Band<Temperature>> temperature;
  bool named = true;              // else `name` only says below what it lies: "below Old Ferry"
  Measured<Discharge> whole_flow; // best, with what runs beside it in side channels: what notes and line changes are told at
  FlowSource flow_source;
  TemperatureSource temperature_source;
  bool described = true;          // else nobody noted a water: `waters` holds the one its channel makes likely, or none
  std::vector<PlannedWater> waters;
  bool names_water = false;       // on a sheet: the one water told here is not the one fished most
  std::string closed_why;         // as typed; not empty: not fished
  std::string kept_out;           // at a spot: why not fished in these hours, without numbers
  bool portage_at_end = false;
  std::string stop_sentence;      // "The Ledge: STOP ABOVE. PORTAGE RIGHT." when a hazard ends it
  std::optional<Duration> stop_time;
};

struct LineOfTheDay {             // what a picture of the line over the bed is drawn of
  std::size_t reach = 0, water = 0;  // where it is fished
  LineOverBed line;
};

struct PlannedStretch {
  std::string from, to;           // access ids; at a spot both are its id
  std::optional<Platform> spot;   // the day at one place, fished so, instead of a float: its `reaches` are hours there
  std::string from_name, to_name;
  RiverPlace from_place, to_place;
  Verdict verdict = Verdict::Possible;
  std::string why;                // the limit broken, or what it has over the others: no number with a unit in it
  std::optional<BrokenLimit> limit;
  Instant launch{}, off_by{};     // off_by is the end plus slack, up to ten minutes
  Instant end{};                  // off the water if all goes as reckoned
  Length length;
  Duration on_water, shuttle;     // shuttle 0: not typed
  Duration fishing, fished;       // minutes to fish; those in which a line aboard fishes
  std::optional<Instant> stop_by; // heat: no fishing after this
  Measured<Band<Discharge>> flow_at_launch;
  Measured<Band<Temperature>> water_at_launch, water_at_end;
  double worth = 0.0;             // what the rods aboard bring in its fishable hours (RodPlan::worth, min); never printed
  RodPlan rods;
  std::vector<Rig> rigged;        // by rods.rods: what each carries at launch
  std::vector<PlannedReach> reaches;
  std::vector<Caution> cautions;  // on this stretch, heaviest first
  std::optional<LineOfTheDay> line;  // of the stretch recommended, where a shape can be solved
  std::vector<std::string> notes; // sentences: a side channel not floated, a lake rowed across
};

[[nodiscard]] inline bool is_fished(const PlannedReach& reach) { return reach.closed_why.empty() && reach.kept_out.empty(); }
[[nodiscard]] inline bool is_wading(const PlannedStretch& stretch) { return stretch.spot == Platform::Wading; }

struct HourRow {                  // the hours table, at the recommended stretch's put-in
  Instant at{};
  Measured<Band<Discharge>> flow;
  Measured<Band<Temperature>> temperature;
};

struct FlowRow {                  // the course of the flow at one place
  Instant at{};
  Measured<Band<Discharge>> flow;
};

struct DayPlan {
  Instant made_at{};
  std::chrono::year_month_day day{};
  std::string time_zone;
  Instant sunrise{}, sunset{};
  Instant civil_dawn{}, civil_dusk{};
  bool sun_known = false;
  std::string sun_why;                    // why not: no place known, the sun does not rise
  std::string main_gauge;                 // id of the gauge whose state is the river's
  std::vector<GaugeOutlook> outlooks;
  std::vector<std::optional<std::size_t>> follows_dam;  // by outlooks: see RiverFlows
  std::vector<PlannedStretch> stretches;  // best first; ruled out ones last
  std::string why_no_stretch;             // when none could be looked at
  std::vector<HourRow> hours;
  std::vector<FlowRow> course;            // where the hours are, from 36 h before the plan is made to the day's end
  std::string course_at;                  // name of that place
  std::vector<NewestReading> readings;    // parallel to reading_gauges
  std::vector<std::string> reading_gauges;
  std::vector<std::string> missing_gauges;
  std::vector<std::string> notes;         // sentences of provenance: sensor choices, rows left out
  std::vector<DamFront> fronts;
  std::vector<Caution> cautions;          // of the day as a whole, heaviest first
  bool stale = false;                     // exit code 75: readings older than 6 h or a gauge missing
  bool nothing = false;                   // exit code 69: no reading at all
};

}  // namespace floatwright
