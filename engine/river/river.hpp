#pragma once
// The river as a person wrote it down in river.json: places by river mile, as read in the file's order, so that index i
// of a list is JSON pointer "/list/i" (later in the order in which it is told: told_order.hpp). What the reader could not
// take is a Problem, not a value here.
// Places count up from the mouth; a file with `mile_zero: "source"` is turned by the reader (place = -typed).
#include <chrono>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "engine/readings/rating.hpp"
#include "engine/units/instant.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

enum class WaterType { Riffle, Run, Pool, Tailout, Bank, Eddy, Pocket };
enum class Bed { Unknown, Sand, Gravel, Cobble, Boulder, Wood };
enum class DepthSource { Noted, Surveyed, Guessed };
enum class Platform { Drifting, Held, Anchored, Wading };

struct GeoPoint {
  double latitude_deg = 0.0, longitude_deg = 0.0;  // WGS 84
};

struct MonthDay {
  int month = 1, day = 1;
};
struct Season {  // both ends included; may run over the new year
  MonthDay from, to;
};
struct HoursOfDay {
  Duration from, to;  // since local midnight
};

struct GaugeSite {
  std::string id, name, station;
  std::optional<RiverPlace> place;  // none: not on the stem, used by a tributary or a dam
  std::optional<Area> drainage_area;
  std::string forecast = {};  // station of its official forecast, may be empty
  std::optional<Rating> rating = {};  // which discharge a stage means
  std::string rating_file = {};
};

struct Access {
  std::string id, name, kind;
  RiverPlace place;
  std::optional<GeoPoint> at;
  std::map<std::string, Duration> to_take_out;  // shuttle drive, by access id
  bool closed = false;
  bool trailer = true;
};

// Depth and speed of one water as seen on one day. Surface speed is what a person sees.
struct WaterNote {
  Discharge at_flow;
  Length depth;
  SurfaceSpeed surface_speed;
  DepthSource source = DepthSource::Noted;
  std::optional<std::chrono::year_month_day> seen_on;
};
struct Water {
  WaterType type = WaterType::Run;
  double fishing_time = 0.0;     // share of the fishing time of its reach, 0 to 1
  std::vector<WaterNote> notes;  // empty: nobody described it
};

struct StretchNote {
  RiverPlace from, to;  // from is upstream
  std::string from_name, to_name;
  Discharge at_flow;
  std::optional<Duration> float_time;
  std::vector<Water> waters;
};

struct ChannelMeasurement {
  Discharge discharge;
  Length width, mean_depth;
  MeanSpeed mean_speed;
};

// One point of a cross-section; heights count from any datum of the section's own.
struct SectionPoint {
  Length across, height;
};
struct SurveyedSection {
  std::vector<SectionPoint> points;  // ascending across
  std::optional<double> slope;       // m per m; none: the reach's
  std::optional<double> roughness;   // Manning's n, s/m^(1/3); none: Jarrett's by slope and hydraulic radius
};

struct NamedReach {
  std::string id, name;
  RiverPlace from, to;
  Bed bed = Bed::Unknown;
  std::optional<double> slope;  // m per m
  std::vector<ChannelMeasurement> channel;  // at one flow or several
  std::vector<Water> waters;
  std::string in_side_channel;  // id of the side channel it lies in; empty: the stem
  std::vector<SurveyedSection> sections = {};
};

struct Release {
  Instant time{};
  Discharge flow;
};
struct Dam {
  std::string id, name;
  RiverPlace place;
  std::vector<Release> schedule;  // sorted; empty: none known
  std::string schedule_file;
  std::optional<Discharge> minimum;
  bool ramping = false;
  std::optional<Length> release_depth;
};

struct Tributary {
  std::string id, name;
  RiverPlace joins_at;
  std::optional<Area> drainage_area;
  std::string gauge;  // id, may be empty
};

struct FlowShare {
  Discharge at_flow;
  double share = 0.0;  // of the whole flow that takes the side channel, 0 to 1
};
struct SideChannel {
  std::string id, name;
  RiverPlace leaves, returns;
  std::vector<FlowShare> share_by_flow;  // ascending in flow, linear between, flat beyond
};

struct Diversion {
  std::string id, name;
  RiverPlace place;
  Discharge flow;
  std::optional<Season> season;
};

struct WaveTime {
  RiverPlace from, to;
  Discharge at_flow;
  Duration time;
};

// Power laws w = a Q^b, d = c Q^f, v = k Q^m (SI) fitted to the field measurements at a gauge: what `tune geometry` found.
struct FittedChannel {
  std::string gauge;  // id
  double a = 1.0, b = 0.26, c = 1.0, f = 0.40, k = 1.0, m = 0.34;
  Discharge least, most;  // of the measurements fitted
  double sd_ln_depth = 0.15, sd_ln_speed = 0.15;
  int visits = 0;
};
// How long a change of flow takes from one gauge to another, t(Q) = time (at_flow/Q)^exponent: what `tune routing` found.
struct FittedLag {
  std::string from, to;  // ids of gauges; from is upstream
  Discharge at_flow;
  Duration time;
  double exponent = 0.34;
  double spread = 1.0;  // multiplier of the channel's own diffusion
  int fronts = 0;       // rises and falls that it was fitted to
};

struct Hazard {
  std::string what;
  RiverPlace place;
  std::string how;  // "STOP ABOVE. PORTAGE RIGHT." as typed
  std::optional<Discharge> above_flow, least_flow;
  bool must_portage = false;
  std::optional<Duration> portage_time;
};

struct Closure {
  RiverPlace from, to;
  std::optional<std::chrono::year_month_day> first_day, last_day;
  std::optional<HoursOfDay> hours;
  std::string why, source;
};

struct Spot {
  std::string id, name;
  RiverPlace place;
  Platform platform = Platform::Wading;
  Bed bed = Bed::Unknown;
  std::vector<Water> waters;
};

struct Hatch {
  std::string name;
  Season season;
  HoursOfDay hours;
  std::optional<Temperature> least_temperature;
};

struct ProfilePoint {
  Length depth;
  Temperature temperature;
};
struct Lake {
  std::string id, name;
  std::optional<RiverPlace> from, to;  // set where the stem runs through it
  std::vector<ProfilePoint> profile;   // ascending depth
  std::optional<std::chrono::year_month_day> profile_on;
  std::optional<Length> shoal_depth, weed_top;
};

struct BoatLimits {
  std::optional<Discharge> least_flow, most_flow;
};

struct River {
  std::string name, time_zone;
  bool miles_from_source = false;  // how places are printed back
  bool kilometres = false;
  std::optional<Length> altitude;
  std::optional<GeoPoint> weather_at;
  std::vector<std::string> fish;  // "rainbow", "brown", "brook", "cutthroat", "bull_trout", ...
  bool snow_fed = false;
  std::optional<std::chrono::year_month_day> rules_checked_on;
  double area_exponent = 1.0;  // drainage-area ratio
  BoatLimits boat_limits;
  std::vector<GaugeSite> gauges;
  std::vector<Access> accesses;
  std::vector<StretchNote> notes;
  std::vector<NamedReach> reaches;
  std::vector<Dam> dams;
  std::vector<Tributary> tributaries;
  std::vector<SideChannel> side_channels;
  std::vector<Diversion> diversions;
  std::vector<WaveTime> wave_times;
  std::vector<Hazard> hazards;
  std::vector<Closure> closures;
  std::vector<Spot> spots;
  std::vector<Hatch> hatches;
  std::vector<Lake> lakes;
  std::vector<FittedChannel> fitted_channels;
  std::vector<FittedLag> fitted_lags;
};

}  // namespace floatwright
