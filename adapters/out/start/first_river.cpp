#include <date/date.h>
#include <fmt/format.h>

#include <cctype>

#include "adapters/out/start/first_files.hpp"
#include "adapters/out/start/quoted.hpp"
#include "engine/readings/names.hpp"
#include "engine/readings/usable.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

std::string three_figures(double value) { return fmt::format("{}", std::stod(fmt::format("{:.3g}", value))); }

// The keys and examples of one unit system.
struct Keys {
  const char *along, *depth, *speed, *flow, *flow_unit, *area, *altitude;
  const char *gauge, *put_in, *take_out, *deep, *fast;  // examples, of an invented river
};

const Keys& keys(UnitSystem units) {
  static constexpr Keys kUs{"mile",        "depth_ft", "surface_speed_ft_s",
                            "at_flow_cfs", "cfs",      "drainage_area_mi2",
                            "altitude_ft", "41.0",     "40.2",
                            "28.6",        "4.5",      "3.5"};
  static constexpr Keys kMetric{"km",           "depth_m", "surface_speed_m_s",
                                "at_flow_m3_s", "m3/s",    "drainage_area_km2",
                                "altitude_m",   "66.0",    "64.7",
                                "46.0",         "1.4",     "1.1"};
  return units == UnitSystem::Us ? kUs : kMetric;
}

std::string flow_number(const FirstValues& values) {
  const auto flow = Discharge::from_si(*values.flow->si);
  return three_figures(values.units == UnitSystem::Us ? in_cubic_feet_per_second(flow) : flow.si());
}

std::string day(Instant t) { return date::format("%F", std::chrono::floor<std::chrono::days>(t)); }

// "flow from 1988-10-01 to 2027-05-13"; a quantity's several series, of instants and of days, as one.
std::string say_series(const StationAbout& about) {
  std::string out;
  for (const Variable variable :
       {Variable::Flow, Variable::GaugeHeight, Variable::WaterTemperature, Variable::Clarity}) {
    std::optional<Instant> begin, end;
    bool kept = false;
    for (const SeriesAbout& series : about.series) {
      if (series.variable != variable) continue;
      kept = true;
      if (series.begin && (!begin || *series.begin < *begin)) begin = series.begin;
      if (series.end && (!end || *series.end > *end)) end = series.end;
    }
    if (!kept) continue;
    out += (out.empty() ? "" : "; ") + name_of(variable);
    if (begin) out += " from " + day(*begin);
    if (end) out += " to " + day(*end);
  }
  return out.empty() ? "none that is read here" : out;
}

std::string say_gauge(const FirstValues& values) {
  const StationAbout& about = values.about;
  std::string out = fmt::format("  // {}", about.station);
  if (!about.name.empty()) out += ": " + on_one_line(about.name);
  if (!about.site_type.empty()) out += ", " + on_one_line(about.site_type);
  if (!about.state.empty()) out += ", " + on_one_line(about.state);
  if (about.latitude_deg && about.longitude_deg)
    out += fmt::format(", latitude {:.4f}, longitude {:.4f}", *about.latitude_deg, *about.longitude_deg);
  out += "\n";
  if (values.described)
    out += fmt::format("  // Its series: {}.\n", say_series(about));
  else
    out += fmt::format("  // Its service said nothing of what it is: add \"{}\" here if you know it.\n",
                       keys(values.units).area);
  if (values.flow) out += fmt::format("  // It read {}.\n", say_first_flow(values));
  return out;
}

// By its river, "lantern_river".
std::string id_of(const StationAbout& about) {
  std::string id;
  for (const char c : river_in(about.name)) {
    const auto sign = static_cast<unsigned char>(c);
    if (std::isalnum(sign) != 0)
      id += static_cast<char>(std::tolower(sign));
    else if (c == ' ')
      id += '_';
  }
  return id.empty() ? "gauge" : id;
}

std::string head(const FirstValues& values) {
  const std::string river = river_in(on_one_line(values.about.name));
  std::string out =
      "// A first river, from what the gauge's service said. What only you know is null, behind a comment TYPE:\n"
      "// write it there, then `floatwright check --config DIR` says what is still to be typed.\n"
      "// floatwright-river(5) has all that may be added.\n"
      "// The law, the agency and a licensed guide on the water come before any plan.\n"
      "{\n  \"schema_version\": 1,\n";
  out += river.empty()
             ? "  \"river\": null,  // TYPE: its name, such as \"Lantern River\"\n"
             : fmt::format("  \"river\": {},  // from the gauge's name; write what people call it\n", quoted(river));
  out += values.time_zone.empty()
             ? "  \"time_zone\": null,  // TYPE: the river's clock by its IANA name, such as \"America/Denver\"\n"
             : fmt::format("  \"time_zone\": {},  // {}\n", quoted(values.time_zone), on_one_line(values.zone_from));
  out += fmt::format("  \"mile_zero\": \"mouth\",  // {} count up from the mouth; or \"source\"\n",
                     values.units == UnitSystem::Us ? "miles" : "kilometres");
  if (values.about.altitude) {
    const double altitude =
        values.units == UnitSystem::Us ? in_feet(*values.about.altitude) : values.about.altitude->si();
    out += fmt::format("  \"{}\": {:.0f},  // of the gauge\n", keys(values.units).altitude, altitude);
  }
  return out + "  // \"rules_checked_on\": \"2027-05-02\",  // the day on which you last looked up the local rules\n\n";
}

std::string gauge(const FirstValues& values) {
  const Keys& key = keys(values.units);
  std::string out = say_gauge(values) + fmt::format("  \"gauges\": [\n    {{ \"id\": {}, \"station\": {},",
                                                    quoted(id_of(values.about)), quoted(values.about.station));
  if (!values.about.name.empty()) out += fmt::format(" \"name\": {},", quoted(on_one_line(values.about.name)));
  if (const auto area = values.about.drainage_area; area && *area > Area{})
    out +=
        fmt::format(" \"{}\": {:.6g},", key.area,
                    values.units == UnitSystem::Us ? in_square_miles(*area) : area->si() / square_kilometres(1.0).si());
  return out + fmt::format("\n      \"{}\": null }}  // TYPE: the gauge's river {}, such as {}\n  ],\n\n", key.along,
                           key.along, key.gauge);
}

std::string accesses(const Keys& key) {
  return fmt::format(
      "  // Where you put in and where you take out. With \"lat\": 45.01, \"lon\": -111.20 (yours) beside each\n"
      "  // the plan knows sunrise and sunset and has a map.\n"
      "  \"accesses\": [\n"
      "    {{ \"id\": \"put_in\",\n"
      "      \"name\": null,   // TYPE: its name, such as \"Mill Bridge\"\n"
      "      \"{0}\": null }}, // TYPE: its river {0}, such as {1}\n"
      "    {{ \"id\": \"take_out\",\n"
      "      \"name\": null,   // TYPE: such as \"Old Ferry\"\n"
      "      \"{0}\": null }}  // TYPE: such as {2}\n"
      "  ],\n\n",
      key.along, key.put_in, key.take_out);
}

std::string at_flow(const FirstValues& values) {
  const Keys& key = keys(values.units);
  if (!values.flow)
    return fmt::format("      \"{}\": null,  // TYPE: the gauge's flow on the day you looked, in {}\n", key.flow,
                       key.flow_unit);
  return fmt::format(
      "      \"{}\": {},  // what the gauge read last; write its flow on the day you looked, if another\n", key.flow,
      flow_number(values));
}

std::string note(const FirstValues& values) {
  const Keys& key = keys(values.units);
  return "  // One note: how deep and how fast the water is that you fish most between the two.\n"
         "  \"notes\": [\n    { \"from\": \"put_in\", \"to\": \"take_out\",\n" +
         at_flow(values) +
         "      // \"float_time_h\": 5.5,  // add it when you know it\n"
         "      \"waters\": [\n"
         "        { \"water\": \"run\",  // or riffle, pool, tailout, bank, eddy, pocket; or several\n"
         "          \"fishing_time\": 1.0,\n" +
         fmt::format(
             "          \"{}\": null,  // TYPE: where you fish it, such as {}\n"
             "          \"{}\": null  // TYPE: how fast a leaf drifts on it, such as {}\n",
             key.depth, key.deep, key.speed, key.fast) +
         "        } ] } ]\n}\n";
}

std::string on_the_clock(Instant t, const std::string& zone) {
  if (zone.empty()) return date::format("%F at %H:%M UTC", t);
  const std::chrono::sys_days there = local_date(t, zone);
  const auto minutes = std::chrono::floor<std::chrono::minutes>(period(time_of_day(t, zone)));
  return date::format("%F at %H:%M", there + minutes);
}

}  // namespace

std::string say_first_flow(const FirstValues& values) {
  std::string marks;
  for (const Mark mark : values.flow->marks) marks += (marks.empty() ? "" : ", ") + std::string{word_for(mark)};
  return fmt::format("{} {} on {}{}", flow_number(values), keys(values.units).flow_unit,
                     on_the_clock(values.flow->time, values.time_zone), marks.empty() ? "" : " (" + marks + ")");
}

std::string first_river(const FirstValues& values) {
  return head(values) + gauge(values) + accesses(keys(values.units)) + note(values);
}

}  // namespace floatwright
