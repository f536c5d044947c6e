#include "tests/engine/trip/small_river.hpp"

#include <cmath>
#include <numbers>

namespace floatwright {

Instant local(int hour, int minute) {
  return Instant{std::chrono::sys_days{kDay}} + std::chrono::hours{hour + 6} + std::chrono::minutes{minute};
}

Water noted(WaterType type, double share, double depth_ft, double speed_ft_s, double at_cfs) {
  Water water;
  water.type = type;
  water.fishing_time = share;
  WaterNote note;
  note.at_flow = cubic_feet_per_second(at_cfs);
  note.depth = feet(depth_ft);
  note.surface_speed = surface_feet_per_second(speed_ft_s);
  water.notes = {note};
  return water;
}

Access access(const std::string& id, double mile, double north) {
  Access made;
  made.id = id;
  made.name = id;
  made.place = river_mile(mile);
  made.at = GeoPoint{45.0 + north, -111.2};
  return made;
}

StretchNote note_between(const Access& from, const Access& to, double float_h) {
  StretchNote note;
  note.from = from.place;
  note.to = to.place;
  note.from_name = from.name;
  note.to_name = to.name;
  note.at_flow = cubic_feet_per_second(1800.0);
  note.float_time = hours(float_h);
  note.waters = {noted(WaterType::Run, 0.6, 4.5, 3.5), noted(WaterType::Bank, 0.4, 2.5, 2.0)};
  return note;
}

River small_river() {
  River river;
  river.name = "Thrush River";
  river.time_zone = "America/Denver";
  river.fish = {"rainbow"};
  river.rules_checked_on = std::chrono::year{2027} / 5 / 10;
  river.accesses = {access("upper", 12.0, 0.10), access("middle", 6.0, 0.05), access("lower", 0.5, 0.0)};
  river.notes = {note_between(river.accesses[0], river.accesses[1], 2.5),
                 note_between(river.accesses[1], river.accesses[2], 2.3)};
  GaugeSite gauge;
  gauge.id = "foot";
  gauge.name = "Thrush at the foot";
  gauge.station = "usgs:00000009";
  gauge.place = river_mile(0.5);
  gauge.drainage_area = square_miles(900.0);
  river.gauges = {gauge};
  return river;
}

GaugeRecord four_days(const Readings& readings) {
  GaugeRecord record;
  record.gauge = "foot";
  record.station = "usgs:00000009";
  for (int h = -96; h <= 0; ++h) {
    const Instant t = kNow + std::chrono::hours{h};
    const double hour = 20.0 + h;
    record.discharge.times.push_back(t);
    record.discharge.values.push_back(cubic_feet_per_second(readings.flow_cfs));
    record.temperature.times.push_back(t);
    const double wave = std::cos(2.0 * std::numbers::pi * (hour - 17.0) / 24.0);
    record.temperature.values.push_back(fahrenheit(readings.mean_f + readings.swing_f * wave));
  }
  NewestReading newest;
  newest.variable = Variable::Flow;
  newest.si = in_cubic_metres_per_second(record.discharge.values.back());
  newest.time = kNow;
  record.newest = {newest};
  return record;
}

Line line_on(const std::string& rod, const std::string& id, LineKind kind, int number) {
  Line made;
  made.id = id;
  made.on_rod = rod;
  made.kind = kind;
  made.line_number = number;
  return made;
}

FlyClass fly(const std::string& id, std::vector<Method> uses, double mass_g, double sink_in_s) {
  FlyClass made;
  made.id = id;
  made.name = id;
  made.uses = std::move(uses);
  made.mass = grams(mass_g);
  made.sink_rate = inches_per_second(sink_in_s);
  return made;
}

Tackle small_tackle() {
  Tackle tackle;
  tackle.rods = {{"six", "square", 6, feet(9.0)}, {"five", "triangle", 5, feet(9.0)}, {"dry", "circle", 5, feet(9.0)}};
  tackle.lines = {line_on("six", "six_tip", LineKind::SinkingTip, 6), line_on("five", "five_nymph", LineKind::NymphTaper, 5),
                  line_on("dry", "dry_taper", LineKind::DoubleTaper, 5)};
  tackle.lines[0].tip_length = feet(12.5);
  tackle.lines[0].sink_rate = inches_per_second(5.0);
  tackle.flies = {fly("weighted streamer", {Method::Swing, Method::Strip}, 0.55, 5.0),
                  fly("heavy nymph", {Method::Indicator}, 0.5, 9.0), fly("dry", {Method::Dry}, 0.04, 0.0)};
  tackle.shot = {grams(0.2)};
  return tackle;
}

DayInputs small_day(const River& river, const Readings& readings) {
  DayInputs in;
  in.river = river;
  in.tackle = small_tackle();
  in.settings.preferences.methods = {{Method::Swing, 1.0}, {Method::Strip, 1.0}, {Method::Indicator, 0.7}};
  in.settings.preferences.anglers = {{}};
  in.settings.earliest_launch = hours(7.5);
  in.records = {four_days(readings)};
  in.day = kDay;
  in.now = kNow;
  return in;
}

}  // namespace floatwright
