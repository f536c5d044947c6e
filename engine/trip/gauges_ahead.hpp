#pragma once
// The hours looked at, and tomorrow at each gauge: which ramping dam it stands below and whether the dam's schedule is its
// own flow. Which gauge's state is the river's.
#include <vector>

#include "engine/readings/weather.hpp"
#include "engine/trip/day_plan.hpp"
#include "engine/trip/tuned.hpp"

namespace floatwright {

inline constexpr std::chrono::days kOwnDaysAhead{2};       // that a gauge's own readings say something of
inline constexpr std::chrono::days kFarthestOfficial{15};  // a forecast's row dated later is taken for an error

// The last day, on the river's calendar, of which something is known: two days ahead from the gauges' own readings, or
// as far as an agency's forecast for one of them reaches to 20:00.
[[nodiscard]] std::chrono::year_month_day last_day_known(const River& river, const std::vector<GaugeRecord>& records,
                                                         Instant now);

// From 96 h before `now` (on the hour) to 6 h after the day planned; a quarter of an hour where a dam ramps, else hourly.
// A day that cannot be planned is taken for the nearest that can.
[[nodiscard]] TimeGrid hours_looked_at(const River& river, const std::vector<GaugeRecord>& records,
                                       std::chrono::year_month_day day, Instant now);

// Why no plan can be made of that day: it is past, or after last_day_known, which is named. Empty when one can.
[[nodiscard]] std::string why_no_day(const River& river, const std::vector<GaugeRecord>& records,
                                     std::chrono::year_month_day day, Instant now);

// What speaks for tomorrow beside the river itself.
struct KnownOfGauges {
  const std::vector<GaugeRecord>& records;  // by River::gauges index
  const Tuned& tuned;
  const Weather* weather = nullptr;  // none: not known
};

// By River::gauges index. `grid` is that of hours_looked_at. Of a day more than two ahead only gauges with an agency's
// forecast that reaches it have a flow.
[[nodiscard]] std::vector<GaugeOutlook> outlooks_of(const River& river, const RiverGraph& graph,
                                                    const KnownOfGauges& known, const TimeGrid& grid, Instant now);

// The upmost gauge with a known flow within the stretch, else the nearest to it; any with a flow where there is no
// stretch; empty where none knows.
[[nodiscard]] std::string main_gauge(const River& river, const std::vector<GaugeOutlook>& outlooks,
                                     const PlannedStretch* stretch);

}  // namespace floatwright
