#pragma once
// The invented Lantern River, typed by hand: a lake and its dam, three gauges (one on a tributary), accesses, a side
// channel, a ditch, hazards and two kinds of description.
#include "engine/river/river.hpp"

namespace floatwright {

inline Water water(WaterType type, double fishing_time, double depth_ft, double surface_speed_ft_s,
                   double at_flow_cfs) {
  return {type,
          fishing_time,
          {{cubic_feet_per_second(at_flow_cfs),
            feet(depth_ft),
            surface_feet_per_second(surface_speed_ft_s),
            DepthSource::Noted,
            {}}}};
}

inline Access access(const std::string& id, const std::string& name, double mile) {
  Access a;
  a.id = id;
  a.name = name;
  a.place = river_mile(mile);
  return a;
}

inline GaugeSite gauge(const std::string& id, const std::string& name, std::optional<double> mile, double area_mi2) {
  GaugeSite g;
  g.id = id;
  g.name = name;
  g.station = "usgs:" + id;
  if (mile) g.place = river_mile(*mile);
  g.drainage_area = square_miles(area_mi2);
  return g;
}

inline NamedReach named(const std::string& id, const std::string& name, double from, double to, Water only) {
  NamedReach r;
  r.id = id;
  r.name = name;
  r.from = river_mile(from);
  r.to = river_mile(to);
  r.waters = {std::move(only)};
  return r;
}

inline StretchNote note(const Access& from, const Access& to, double float_time_h, std::vector<Water> waters) {
  StretchNote n;
  n.from = from.place;
  n.to = to.place;
  n.from_name = from.name;
  n.to_name = to.name;
  n.at_flow = cubic_feet_per_second(1800);
  n.float_time = hours(float_time_h);
  n.waters = std::move(waters);
  return n;
}

inline void add_structures(River& river) {
  Dam dam;
  dam.id = "heron_dam";
  dam.name = "Heron Dam";
  dam.place = river_mile(46.0);
  dam.ramping = true;
  river.dams = {dam};
  Lake lake;
  lake.id = "heron_lake";
  lake.name = "Heron Lake";
  lake.from = river_mile(49.0);
  lake.to = river_mile(46.0);
  river.lakes = {lake};
  river.tributaries = {{"alder_creek", "Alder Creek", river_mile(35.0), square_miles(225), "alder"}};
  river.side_channels = {{"cottonwood_channel",
                          "Cottonwood Channel",
                          river_mile(38.6),
                          river_mile(37.4),
                          {{cubic_feet_per_second(800), 0.05}, {cubic_feet_per_second(4000), 0.25}}}};
  river.diversions = {{"mill_ditch", "Mill ditch", river_mile(41.5), cubic_feet_per_second(60), {}}};
  Hazard ledge;
  ledge.what = "The Ledge";
  ledge.place = river_mile(30.4);
  ledge.how = "STOP ABOVE. PORTAGE RIGHT.";
  ledge.must_portage = true;
  ledge.portage_time = minutes(40);
  river.hazards = {ledge};
  Spot bend;
  bend.id = "bend";
  bend.name = "Cottonwood Bend";
  bend.place = river_mile(38.0);
  bend.waters = {water(WaterType::Run, 1.0, 3.0, 2.6, 1800)};
  river.spots = {bend};
}

inline River lantern_river() {
  River river;
  river.name = "Lantern River";
  river.boat_limits = {cubic_feet_per_second(600), cubic_feet_per_second(5200)};
  river.time_zone = "America/Denver";
  river.gauges = {gauge("heron", "Lantern below Heron Dam", 45.2, 980),
                  gauge("alder", "Alder Creek at the forks", {}, 210),
                  gauge("ferry", "Lantern at Old Ferry", 28.9, 1290)};
  river.accesses = {access("dam", "Heron Ramp", 45.6), access("mill", "Mill Bridge", 40.2),
                    access("bar", "Alder Bar", 34.4), access("ferry", "Old Ferry", 28.6),
                    access("quarry", "Quarry Landing", 22.4)};
  river.accesses[0].to_take_out = {{"mill", minutes(20)}};
  add_structures(river);
  river.notes = {note(river.accesses[0], river.accesses[1], 2.4,
                      {water(WaterType::Run, 0.5, 4.0, 3.2, 1800), water(WaterType::Bank, 0.3, 2.5, 2.0, 1800),
                       water(WaterType::Pool, 0.2, 8.0, 1.5, 1800)}),
                 note(river.accesses[1], river.accesses[2], 2.6, {water(WaterType::Run, 1.0, 4.5, 3.5, 1800)}),
                 note(river.accesses[2], river.accesses[3], 2.7, {water(WaterType::Run, 1.0, 5.0, 3.4, 1900)}),
                 note(river.accesses[3], river.accesses[4], 2.9, {water(WaterType::Run, 1.0, 5.0, 3.0, 2000)})};
  river.reaches = {named("tailrace", "Tailrace", 45.6, 44.1, water(WaterType::Riffle, 1.0, 2.0, 3.8, 1800)),
                   named("cottonwood", "Cottonwood bend", 38.6, 37.4, water(WaterType::Run, 1.0, 4.0, 3.0, 1800)),
                   named("side", "Cottonwood Channel", 38.6, 37.4, water(WaterType::Riffle, 1.0, 1.6, 2.2, 1800))};
  river.reaches[0].bed = Bed::Cobble;
  river.reaches[0].channel = {{cubic_feet_per_second(1800), feet(150), feet(3.4), mean_feet_per_second(3.5)}};
  river.reaches[2].in_side_channel = "cottonwood_channel";
  return river;
}

}  // namespace floatwright
