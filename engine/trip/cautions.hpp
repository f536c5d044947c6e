#pragma once
// What is always said: each function adds the cautions of one kind of danger to a list; sorted() puts the heaviest first.
// Settings can only make the limits stricter. Where a limit is ours alone its basis says "judgement".
#include <vector>

#include "engine/trip/heat.hpp"
#include "engine/trip/stretches.hpp"
#include "engine/trip/wading.hpp"

namespace floatwright {

// Water cold enough to kill a swimmer, by the LOW case of the trip.
void add_cold_water(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions);
// Its numbers and the limits they are held against, without place and hour.
[[nodiscard]] Caution wading_caution(const WadedLane& met, const WadingLimits& limits);
// Lanes too deep or fast to wade, where the settings have somebody wade, and the most of those that may be waded.
void add_wading(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions);
// A dam's changes by place and hour, and any fast rise.
void add_dam_fronts(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions);
void add_fast_rise(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions);
// A gauge that comes up fast as the plan is made, where neither a dam nor its daily wave explains it: how far is not known.
void add_rising_now(const std::vector<GaugeOutlook>& outlooks, const River& river, std::vector<Caution>& cautions);
// Hazards and portages on the way; the boat's limits where they are broken; off the water after sunset; new wood.
void add_hazards(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions);
void add_boat_limits(const std::vector<BrokenLimit>& broken, std::vector<Caution>& cautions);
void add_dark(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions);
void add_wood(const RiverDay& day, std::vector<Caution>& cautions);
// Wind that spoils casting, or sets the boat's course; rain that may raise the river. Where the weather is known.
void add_wind(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions);
void add_rain(const RiverDay& day, std::vector<Caution>& cautions);
// Closures as typed; how long ago the rules were looked up; closures that warm water makes likely.
void add_closures(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions);
void add_rules_old(const RiverDay& day, std::vector<Caution>& cautions);
void add_closure_likely(const RiverDay& day, std::vector<Caution>& cautions);
// What the plan does not know: gauges silent, old or iced; flow unknown; depths guessed; rain.
void add_gauge_cautions(const RiverDay& day, std::vector<Caution>& cautions);
void add_unknown_water(const std::vector<PlannedReach>& reaches, std::vector<Caution>& cautions);
void add_forecast_doubt(const RiverDay& day, std::vector<Caution>& cautions);

[[nodiscard]] std::vector<Caution> sorted(std::vector<Caution> cautions);

// All that holds on one stretch, and all that holds for the day.
[[nodiscard]] std::vector<Caution> stretch_cautions(const RiverDay& day, const Stretch& stretch, const PlannedStretch& planned);
// At a spot: what is met there in all hours looked at, those that are ruled out too. Where people wade, how deep and fast
// the water is that they wade is always told.
[[nodiscard]] std::vector<Caution> spot_cautions(const RiverDay& day, const Stretch& stretch, const PlannedStretch& planned);
[[nodiscard]] std::vector<Caution> day_cautions(const RiverDay& day, const std::vector<GaugeOutlook>& outlooks = {});

}  // namespace floatwright
