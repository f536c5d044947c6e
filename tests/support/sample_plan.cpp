#include "tests/support/sample_plan.hpp"

#include "tests/support/sample_tackle.hpp"

namespace floatwright::testing {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::sys_days;

constexpr std::chrono::year_month_day kDay{std::chrono::year{2027}, std::chrono::May, std::chrono::day{14}};
constexpr Period kBehindGreenwich = hours{6};  // Denver in summer

Band<Discharge> cfs(double low, double best, double high) {
  return {cubic_feet_per_second(low), cubic_feet_per_second(best), cubic_feet_per_second(high)};
}
Band<Length> ft(double low, double best, double high) { return {feet(low), feet(best), feet(high)}; }
Band<Temperature> fahrenheits(double low, double best, double high) {
  return {fahrenheit(low), fahrenheit(best), fahrenheit(high)};
}

ScoredRig rig(std::size_t line, std::size_t fly, Technique technique, Length leader, double seconds,
              Band<Length> depth) {
  ScoredRig made;
  made.rig = {line, std::nullopt, fly, Mass{}};
  made.technique = technique;
  made.leader = leader;
  made.seconds = seconds;
  made.efficiency = seconds / 30.0;
  made.snag_per_cast = 0.04;
  made.fly_depth = depth;
  return made;
}

Technique swing(Mending mending) { return {Method::Swing, mending, Duration{}, Speed{}, Platform::Anchored}; }
Technique strip(double count, Platform platform) {
  return {Method::Strip, Mending::Tight, floatwright::seconds(count), metres_per_second(0.3), platform};
}

ScoredRig streamer_tip(Technique technique, double seconds, Band<Length> depth) {
  return rig(0, 0, technique, feet(3.5), seconds, depth);
}
ScoredRig shorter_tip(double seconds) {
  return rig(1, 0, swing(Mending::OneMend), feet(3.5), seconds, ft(1.0, 2.0, 2.5));
}
ScoredRig nymph(double seconds) {
  ScoredRig made = rig(2, 2, {Method::Indicator, Mending::Tight, Duration{}, Speed{}, Platform::Drifting}, feet(7.5),
                       seconds, ft(6.0, 7.0, 7.5));
  made.rig.shot = grams(0.4);
  made.indicator_to_fly = feet(7.5);
  return made;
}
ScoredRig dry(double seconds) {
  return rig(3, 3, {Method::Dry, Mending::Tight, Duration{}, Speed{}, Platform::Drifting}, feet(10.0), seconds,
             ft(0, 0, 0));
}

PlannedWater water(WaterType type, double share, double depth, double speed, std::optional<ScoredRig> best) {
  PlannedWater made;
  made.type = type;
  made.bed = Bed::Cobble;
  made.fishing_time = share;
  made.fishing = floatwright::minutes(60.0 * share);
  made.depth = ft(depth * 0.8, depth, depth * 1.2);
  made.surface_speed = Band<SurfaceSpeed>{surface_feet_per_second(speed * 0.8), surface_feet_per_second(speed),
                                          surface_feet_per_second(speed * 1.2)};
  made.mean_speed = Band<MeanSpeed>{mean_feet_per_second(speed * 0.7), mean_feet_per_second(speed * 0.85),
                                    mean_feet_per_second(speed)};
  made.noted_at = cubic_feet_per_second(1800);
  if (best) made.choice.by_method = {*best};
  made.choice.best = std::move(best);
  if (!made.choice.best) made.choice.why_none = "no line aboard reaches the fish here; fish the softer edge";
  return made;
}

PlannedReach reach(std::string id, std::string name, double from, double to, Instant arrive, Instant leave) {
  PlannedReach made;
  made.id = std::move(id);
  made.name = std::move(name);
  made.from = river_mile(from);
  made.to = river_mile(to);
  made.arrive = arrive;
  made.leave = leave;
  made.read_at = arrive + (leave - arrive) / 2;
  made.discharge = cfs(1700, 1850, 2050);
  made.temperature = fahrenheits(47, 49, 51);
  made.whole_flow = cubic_feet_per_second(1850);
  made.flow_source = {.origin = FlowOrigin::Between, .from = {0, std::nullopt}, .to = {1, std::nullopt}};
  made.temperature_source = {.gauge = 0, .away = miles(5.2)};
  return made;
}

std::vector<PlannedReach> upper_reaches() {
  PlannedReach mill = reach("mill_run", "Mill run", 40.2, 38.6, on_the_day(7, 30), on_the_day(9, 10));
  PlannedWater run =
      water(WaterType::Run, 0.5, 4.5, 3.5, streamer_tip(swing(Mending::OneMend), 14.2, ft(1.5, 2.5, 3.5)));
  run.choice.runner_up = shorter_tip(11.3);
  run.choice.as_good = {shorter_tip(13.0)};
  run.choice.by_method.push_back(nymph(12.0));
  run.choice.changes_below = LineChange{cubic_feet_per_second(1480), shorter_tip(13.0)};
  run.choice.holds = {cubic_feet_per_second(1480), cubic_feet_per_second(2900)};
  mill.waters = {
      run, water(WaterType::Bank, 0.5, 3.0, 2.0, streamer_tip(strip(3.0, Platform::Drifting), 9.0, ft(1.0, 1.5, 2.0)))};

  PlannedReach bend = reach("cottonwood", "Cottonwood bend", 38.6, 37.4, on_the_day(9, 10), on_the_day(10, 40));
  bend.waters = {
      water(WaterType::Run, 0.6, 4.0, 3.0, streamer_tip(swing(Mending::OneMend), 13.0, ft(1.5, 2.5, 3.0))),
      water(WaterType::Tailout, 0.4, 3.0, 2.4, streamer_tip(swing(Mending::OneMend), 12.0, ft(1.5, 2.0, 2.5)))};

  PlannedReach closed = reach("closed", "Alder shallows", 35.3, 35.0, on_the_day(11, 30), on_the_day(11, 40));
  closed.closed_why = "spawning fish off the mouth of Alder Creek";
  return {mill, bend, closed};
}

std::vector<PlannedReach> lower_reaches() {
  PlannedReach alder = reach("alder_mouth", "Alder mouth", 35.0, 34.4, on_the_day(11, 40), on_the_day(12, 50));
  alder.lunch = true;
  alder.waters = {water(WaterType::Run, 1.0, 3.5, 2.5, dry(16.0))};
  alder.waters[0].hatch = true;
  alder.waters[0].hatch_name = "olive mayflies";

  PlannedReach pool = reach("long_pool", "Long pool", 33.8, 32.4, on_the_day(13, 0), on_the_day(13, 50));
  pool.waters = {water(WaterType::Pool, 0.7, 8.0, 1.4, nymph(18.0)),
                 water(WaterType::Eddy, 0.3, 6.0, 0.7, std::nullopt)};
  pool.waters[1].depth = Absent{"over the bank, where nothing was noted"};
  pool.waters[1].surface_speed =
      pool.waters[1].depth.has_value() ? pool.waters[1].surface_speed : Absent{"over the bank"};
  pool.waters[1].mean_speed = Absent{"over the bank"};

  PlannedReach garden = reach("boulder_garden", "Boulder garden", 32.4, 30.4, on_the_day(13, 50), on_the_day(14, 30));
  ScoredRig large = streamer_tip(strip(0.0, Platform::Held), 8.0, ft(1.0, 1.5, 2.5));
  large.rig.fly = 1;
  garden.waters = {water(WaterType::Pocket, 1.0, 3.0, 3.4, large)};
  garden.waters[0].source = DepthSource::Guessed;
  garden.portage_at_end = true;
  garden.stop_sentence = "The Ledge: STOP ABOVE. PORTAGE RIGHT.";
  garden.stop_time = floatwright::minutes(40);
  return {alder, pool, garden};
}

std::vector<Caution> stretch_cautions() {
  Caution portage{CautionKind::Portage, 95, "Boulder garden", "The Ledge", {}, {}, {}, "STOP ABOVE. PORTAGE RIGHT.",
                  "typed in river.json"};
  Caution front;
  front.kind = CautionKind::DamRise;
  front.weight = 90;
  front.where = "Alder Bar";
  front.about = "Heron Dam";
  front.from = on_the_day(12, 4);
  front.at = on_the_day(12, 40);
  front.to = on_the_day(13, 27);
  front.flow = cubic_feet_per_second(1350);
  front.flow_after = cubic_feet_per_second(1750);
  Caution wading;
  wading.kind = CautionKind::Wading;
  wading.weight = 40;
  wading.where = "Mill run";
  wading.depth = feet(3.0);
  wading.speed = feet_per_second(2.5);
  wading.product = DepthTimesSpeed::from_si(0.70);
  wading.product_limit = DepthTimesSpeed::from_si(0.56);
  wading.basis = "your own limit";
  wading.typed_limit = true;
  Caution guess;
  guess.kind = CautionKind::GuessedDepth;
  guess.weight = 30;
  guess.where = "Boulder garden";
  return {portage, front, wading, guess};
}

std::vector<Caution> day_cautions() {
  Caution cold;
  cold.kind = CautionKind::ColdWater;
  cold.weight = 80;
  cold.temperature = fahrenheit(47);
  cold.emergency = true;
  cold.published = "NWS; 33 CFR 175.15";
  Caution rules;
  rules.kind = CautionKind::RulesOld;
  rules.weight = 20;
  rules.date = std::chrono::year_month_day{std::chrono::year{2027}, std::chrono::May, std::chrono::day{2}};
  return {cold, rules};
}

PlannedStretch stretch(std::string from, std::string from_name, double from_mile, std::string to, std::string to_name,
                       double to_mile) {
  PlannedStretch made;
  made.from = std::move(from);
  made.from_name = std::move(from_name);
  made.to = std::move(to);
  made.to_name = std::move(to_name);
  made.from_place = river_mile(from_mile);
  made.to_place = river_mile(to_mile);
  made.length = made.from_place - made.to_place;
  made.launch = on_the_day(7, 30);
  made.off_by = on_the_day(16, 0);
  made.end = on_the_day(15, 40);
  made.on_water = floatwright::minutes(490);
  made.flow_at_launch = cfs(1700, 1850, 2050);
  made.water_at_launch = fahrenheits(46, 47, 48);
  made.water_at_end = fahrenheits(50, 52, 54);
  return made;
}

// Down at 45 degrees from the surface, then flatter to the fly at 2 1/2 ft in 4 ft of water.
LineOfTheDay line_of(const PlannedStretch& stretch, const std::string& reach_id) {
  LineOfTheDay drawn;
  while (stretch.reaches.at(drawn.reach).id != reach_id) ++drawn.reach;
  drawn.line.rig = *stretch.reaches[drawn.reach].waters[0].choice.best;
  drawn.line.water = feet(4.0);
  drawn.line.zone_depth = feet(2.0);
  drawn.line.shape.points = {{feet(0.0), feet(0.0)}, {feet(1.5), feet(1.5)}, {feet(8.0), feet(2.5)}};
  drawn.line.shape.on_top = feet(24.0);
  return drawn;
}

PlannedStretch recommended() {
  PlannedStretch made = stretch("mill", "Mill Bridge", 40.2, "ferry", "Old Ferry", 28.6);
  made.verdict = Verdict::Recommended;
  made.why = "its fishing hours are worth 3 % more than those of Mill Bridge to Alder Bar";
  made.shuttle = floatwright::minutes(35);
  made.fishing = floatwright::minutes(300);
  made.fished = floatwright::minutes(280);
  made.reaches = upper_reaches();
  for (PlannedReach& r : lower_reaches()) made.reaches.push_back(std::move(r));
  made.rods.rods = {0, 1, 2};
  made.rods.spares = {1};
  made.rods.changes = 1;
  made.rods.lost = floatwright::minutes(2);
  made.rigged = {made.reaches[0].waters[0].choice.best->rig, nymph(1).rig, dry(1).rig};
  made.cautions = stretch_cautions();
  made.notes = {"Cottonwood Channel is not floated."};
  made.line = line_of(made, "cottonwood");
  return made;
}

PlannedStretch too_long() {
  PlannedStretch made = stretch("dam", "Heron Ramp", 45.6, "ferry", "Old Ferry", 28.6);
  made.verdict = Verdict::RuledOut;
  made.why = "longer than the longest you row";
  BrokenLimit limit;
  limit.kind = LimitKind::TooLong;
  limit.length = made.length;
  limit.length_limit = miles(14.0);
  made.limit = limit;
  return made;
}

NewestReading newest(Variable variable, double si, Instant at) {
  NewestReading made;
  made.variable = variable;
  made.si = si;
  made.time = at;
  made.marks = {Mark::Provisional};
  made.series_id = "1";
  made.source = "fixtures";
  return made;
}

std::vector<HourRow> hour_rows() {
  std::vector<HourRow> rows;
  for (int hour = 7; hour <= 16; ++hour) {
    const double up = hour >= 12 ? 60.0 : 0.0;
    rows.push_back({on_the_day(hour), cfs(1700 + up, 1850 + up, 2050 + up),
                    fahrenheits(46 + hour - 7.0, 47 + hour - 7.0, 48 + hour - 7.0)});
  }
  return rows;
}

std::vector<FlowRow> course() {
  std::vector<FlowRow> rows;
  for (Instant t = sample_now() - hours{36}; t <= on_the_day(24); t += hours{1}) {
    const double wide = t > sample_now() ? 0.1 : 0.0;
    rows.push_back({t, cfs(1850 * (1 - wide), 1850, 1850 * (1 + wide))});
  }
  return rows;
}

GaugeOutlook falling() {
  GaugeOutlook made;
  made.gauge = "heron";
  made.state = FlowState::Falling;
  made.method = FlowMethod::FadingFall;
  made.why = "down 3 % in 6 h";
  made.now = cubic_feet_per_second(1850);
  made.now_at = on_the_day(0) - minutes{255};
  made.change_6h = -0.03;
  return made;
}

}  // namespace

Instant on_the_day(int hour, int minute) { return sys_days{kDay} + kBehindGreenwich + hours{hour} + minutes{minute}; }

Instant sample_now() { return on_the_day(0) - minutes{220}; }

DayInputs sample_inputs() {
  DayInputs in;
  in.river.name = "Lantern River";
  in.river.time_zone = "America/Denver";
  in.river.snow_fed = true;
  in.river.gauges = {{"heron", "Lantern below Heron Dam", "usgs:00000001", river_mile(45.2), std::nullopt},
                     {"ferry", "Lantern at Old Ferry", "usgs:00000003", river_mile(28.9), std::nullopt}};
  NamedReach mill;
  mill.id = "mill_run";
  mill.from = river_mile(40.2);
  mill.to = river_mile(38.6);
  Water run;
  run.notes = {{cubic_feet_per_second(1800), feet(4.5), surface_feet_per_second(3.5), DepthSource::Noted,
                std::chrono::year_month_day{std::chrono::year{2026}, std::chrono::May, std::chrono::day{20}}}};
  mill.waters = {run};
  in.river.reaches = {mill};
  in.tackle = sample_tackle();
  in.settings.who = "Wren";
  in.settings.emergency = "Call 112 or 911. No signal between mile 37 and mile 31.";
  in.settings.preferences.anglers = {{"guest", metres(12.0), false}};
  in.day = kDay;
  in.now = sample_now();
  return in;
}

DayPlan sample_plan() {
  DayPlan plan;
  plan.made_at = sample_now();
  plan.day = kDay;
  plan.time_zone = "America/Denver";
  plan.sunrise = on_the_day(5, 52);
  plan.sunset = on_the_day(20, 41);
  plan.sun_known = true;
  plan.main_gauge = "heron";
  plan.outlooks = {falling()};
  PlannedStretch next = stretch("mill", "Mill Bridge", 40.2, "bar", "Alder Bar", 34.4);
  next.why = "its fishing hours are worth 3 % less";
  plan.stretches = {recommended(), next, too_long()};
  plan.hours = hour_rows();
  plan.course = course();
  plan.course_at = "Mill Bridge";
  const Instant read = on_the_day(0) - minutes{255};  // 19:45
  plan.readings = {newest(Variable::Flow, in_cubic_metres_per_second(cubic_feet_per_second(1850)), read),
                   newest(Variable::WaterTemperature, in_celsius(fahrenheit(47)), read),
                   newest(Variable::Flow, in_cubic_metres_per_second(cubic_feet_per_second(2100)), read - minutes{15})};
  plan.reading_gauges = {"heron", "heron", "ferry"};
  plan.fronts = {{0, river_mile(34.4), "Alder Bar", cubic_feet_per_second(1350), cubic_feet_per_second(1750),
                  on_the_day(9), on_the_day(12, 4), on_the_day(12, 40), on_the_day(13, 27)}};
  plan.cautions = day_cautions();
  return plan;
}

}  // namespace floatwright::testing
