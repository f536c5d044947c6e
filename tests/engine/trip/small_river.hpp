#pragma once
// An invented river of twelve miles for the tests of a trip: three accesses, one gauge at its foot, four days of hourly
// readings that end at `kNow`, three rods. Steady flow and a temperature that swings through the day unless changed.
#include "engine/plan_day.hpp"

namespace floatwright {

inline constexpr std::chrono::year_month_day kDay{std::chrono::year{2027} / 5 / 14};
// 20:00 the evening before on the river, six hours behind UTC.
inline constexpr Instant kNow{std::chrono::sys_days{std::chrono::year{2027} / 5 / 14} + std::chrono::hours{2}};

Instant local(int hour, int minute = 0);
Water noted(WaterType type, double share, double depth_ft, double speed_ft_s, double at_cfs = 1800.0);
Access access(const std::string& id, double mile, double north);
StretchNote note_between(const Access& from, const Access& to, double float_h);
River small_river();

struct Readings {
  double flow_cfs = 1800.0;
  double mean_f = 50.0, swing_f = 3.0;  // warmest at 17:00
};
GaugeRecord four_days(const Readings& readings);
Line line_on(const std::string& rod, const std::string& id, LineKind kind, int number);
FlyClass fly(const std::string& id, std::vector<Method> uses, double mass_g, double sink_in_s);
Tackle small_tackle();
DayInputs small_day(const River& river = small_river(), const Readings& readings = {});

}  // namespace floatwright
