#pragma once
// Files in which every list has an item, so that a reader is asked for every key it knows.
#include <string>

namespace floatwright {

// Read against a river with the accesses "mill" and "end".
inline const std::string kBoatsWithEverything = R"({ "schema_version": 1, "date": "2027-05-14", "boats": [
  { "name": "Green", "guide": "Wren", "phone": "555-0142", "from": "mill", "to": "end", "launch": "08:00",
    "anglers": [ { "name": "guest", "cast_ft": 40, "wades": false }, { "cast_m": 9 } ],
    "methods": { "swing": 1, "strip": 1, "indicator": 1, "tight_line": 1, "dry": 1 }, "rods_aboard": 2 } ] })";

inline const std::string kCaseWithEverything = R"({ "schema_version": 1,
  "water": { "depth_m": 1.5, "surface_speed_m_s": 1, "profile": { "power": 0.1667 }, "temperature_c": 10 },
  "parts": [ { "kind": "floating", "length_m": 20, "diameter_mm": 1.3, "density_kg_m3": 870 } ],
  "fly": { "weight_in_water_n": 0.003, "sink_rate_m_s": 0.1, "towed_drag_area_m2": 1e-4 }, "tangential_drag_coefficient": 0.012,
  "platform": "held", "cast": { "bearing_deg": 60, "slack": 0.1, "feed_s": 3, "count_s": 2, "strip_m_s": 0.3, "line_out_m": 9,
    "least_out_m": 2 } })";

inline const std::string kRiverWithEverything = R"({
  "schema_version": 1, "river": "Lantern River", "time_zone": "America/Denver", "mile_zero": "mouth", "altitude_ft": 4900,
  "fish": ["rainbow"], "snow_fed": true, "rules_checked_on": "2027-05-02", "area_exponent": 0.9,
  "boat_limits": { "least_flow_cfs": 600, "most_flow_m3_s": 150 }, "weather_at": { "lat": 45.1, "lon": -111.2 },
  "gauges": [ { "id": "ferry", "name": "Old Ferry", "station": "usgs:00000003", "forecast": "nwps:LNTM8", "rating": "ferry.rdb", "mile": 28.9, "drainage_area_mi2": 1290 } ],
  "accesses": [ { "id": "mill", "mile": 40.2, "lat": 45.1, "lon": -111.2, "kind": "ramp", "to_take_out": { "end": 20 },
                  "closed": false, "trailer": true }, { "id": "end", "km": 45 } ],
  "notes": [ { "from": "mill", "to": "end", "at_flow_cfs": 1800, "float_time_h": 5, "seen_on": "2026-05-20", "waters": [
    { "water": "run", "fishing_time": 0.5, "depth_ft": 4, "mean_speed_ft_s": 3, "source": "guessed", "at_flow_cfs": 1700,
      "seen_on": "2026-05-21", "notes": [ { "at_flow_cfs": 1000, "depth_m": 1, "surface_speed_km_h": 3 } ] } ] } ],
  "reaches": [ { "id": "r", "from_mile": 40, "to_mile": 39, "bed": "wood", "slope": 0.001, "in_side_channel": "s",
    "channel": { "at_flow_cfs": 1800, "width_ft": 150, "mean_depth_ft": 3.4, "mean_speed_ft_s": 3.5 }, "waters": [] },
    { "id": "q", "from_mile": 39, "to_mile": 38, "channel": {
      "measurements": [ { "at_flow_cfs": 1800, "width_ft": 150, "mean_depth_ft": 3.4, "mean_speed_ft_s": 3.5 } ],
      "sections": [ { "slope": 0.001, "roughness": 0.035, "points": [ { "across_ft": 0, "height_ft": 0 } ] } ] } } ],
  "dams": [ { "id": "d", "mile": 46, "releases": "r.csv", "minimum_cfs": 900, "ramping": true, "release_depth_ft": 60 } ],
  "tributaries": [ { "id": "t", "joins_at_mile": 35, "drainage_area_km2": 225, "gauge": "ferry" } ],
  "side_channels": [ { "id": "s", "leaves_at_mile": 40, "returns_at_km": 60, "share_by_flow": [ { "at_flow_cfs": 800, "share": 0.1 } ] } ],
  "diversions": [ { "id": "m", "mile": 41.5, "flow_cfs": 60, "from_date": "05-01", "to_date": "09-15" } ],
  "wave_times": [ { "from_mile": 46, "to": "end", "at_flow_cfs": 1800, "time_h": 5.2 } ],
  "hazards": [ { "what": "Ledge", "mile": 30.4, "how": "Stop.", "must_portage": true, "portage_min": 40, "above_flow_cfs": 1, "least_flow_cfs": 1 } ],
  "closures": [ { "from_mile": 35.3, "to_mile": 34.8, "from_date": "2027-03-01", "to_date": "2027-05-31", "from_hour": "00:00",
    "to_hour": "24:00", "why": "spawning", "source": "sign" } ],
  "spots": [ { "id": "b", "mile": 38, "platform": "wading", "bed": "gravel", "waters": [] } ],
  "hatches": [ { "name": "caddis", "from_date": "05-05", "to_date": "07-15", "from_hour": "16:00", "to_hour": "20:00", "least_temperature_c": 11 } ],
  "lakes": [ { "id": "l", "from_mile": 49, "to_mile": 46, "shoal_depth_ft": 12, "weed_top_ft": 9, "profile_on": "2027-05-09",
    "profile": [ { "depth_ft": 0, "temperature_f": 54 }, { "depth_ft": 10, "temperature_f": 52 } ] } ]
})";

inline const std::string kTackleWithEverything = R"({
  "schema_version": 1, "rods": [ { "id": "six", "mark": "square", "line_number": 6, "length_ft": 9 } ],
  "lines": [ { "id": "a", "on_rod": "six", "spool": "spare", "code": "WF-6-F/S", "kind": "sinking_tip", "tip_length_ft": 12,
    "sink_rate_butt_in_s": 5, "sink_rate_end_in_s": 6, "head_weight_gr": 240, "least_tip_gr": 60, "most_tip_gr": 110,
    "first_30_ft_gr": 160, "sinking_weight_gr_per_ft": 12, "leader_ft": 4 } ],
  "tips": [ { "id": "t", "length_ft": 10, "sink_rate_in_s": 3, "weight_gr": 70 } ],
  "flies": [ { "id": "f", "name": "streamer", "use": ["swing"], "mass_g": 0.5, "sink_rate_in_s": 5, "size": "6" } ], "shot_g": [0.2] })";

inline const std::string kSettingsWithEverything = R"({
  "schema_version": 1, "who": { "name": "Wren", "phone": "555-0142" }, "units": "metric", "day_turns_at": "10:00", "boat": "green",
  "people": [ { "name": "guest", "cast_ft": 40, "wades": true } ], "methods": { "swing": 1, "dry": 0.5 }, "platforms": ["wading"],
  "rods_aboard": 3, "hours": { "earliest_launch": "07:30", "latest_off": "19:00" }, "stops_min": 60, "lunch_h": 0.5,
  "stretch": { "least_mi": 8, "most_km": 20, "from": "mill", "to": "end" },
  "limits": { "heat_caution_f": 66, "heat_stop_c": 20, "wading_depth_times_speed_ft2_s": 6 }, "visibility_ft": 5,
  "emergency": "Call.", "ashore": { "contact": "Marten", "phone": "555-0199" }, "readings": "payloads", "archive": "archive",
  "contact": "wren@example.org", "api_key_file": "key",
  "services": [ { "name": "usgs-water-data", "address": "https://example.org/v0", "api_key_file": "key" } ],
  "csv_gauges": [ { "station": "csv:ford", "file": "ford.csv", "time_column": "Time", "time_format": "%d.%m.%Y %H:%M",
    "time_zone": "America/Denver", "separator": ";", "decimal_comma": true, "skip_lines": 2, "missing": [-9999, "n/a"], "daily": true,
    "columns": [ { "column": 2, "quantity": "stage", "unit": "ft" } ] } ],
  "mail": { "to": ["wren@example.org"], "from": "plan@example.org", "server": "smtp://127.0.0.1:25", "user": "plan", "password_file": "p",
            "ca_file": "ca.pem", "patience_s": 60, "unprotected": "I know that anybody on the way can read it" } })";

}  // namespace floatwright
