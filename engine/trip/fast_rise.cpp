#include "engine/trip/fast_rise.hpp"

#include <algorithm>
#include <cmath>

#include "engine/trip/cautions.hpp"
#include "engine/trip/met_water.hpp"
#include "engine/trip/weights.hpp"
#include "engine/water/surface_rise.hpp"

namespace floatwright {
namespace {

const char* const kBasisRise = "judgement: no public agency's figure for a rate of rise is known";

// judgement
constexpr double kFastRise = 1.25;
constexpr Period kFastRiseTime = std::chrono::hours{3};
constexpr Length kFastRiseHeight = feet(0.5);
constexpr Period kFastRiseHeightTime = std::chrono::hours{1};
constexpr Period kLook = std::chrono::minutes{15};
constexpr Period kRisesFastTime = std::chrono::hours{6};

std::optional<Caution> rise_by(const RiverDay& day, const TimedPassage& row, Instant t, bool high) {
  const auto then = known_flow(day, row.passage.reach, t - kFastRiseTime);
  const auto hour_ago = known_flow(day, row.passage.reach, t - kFastRiseHeightTime);
  const auto now = known_flow(day, row.passage.reach, t);
  if (!then.has_value() || !hour_ago.has_value() || !now.has_value()) return std::nullopt;
  const auto of = [high](const PerCase<Discharge>& flow) { return high ? flow.high : flow.middle; };
  const Reach& reach = day.graph.reaches[row.passage.reach];
  const Channel channel = channel_of(day.river, reach, now->middle);
  const Length rise = surface_rise(surface_law_of(day.river, reach), channel, of(*hour_ago), of(*now));
  if (of(*now) < kFastRise * of(*then) && rise < kFastRiseHeight) return std::nullopt;
  Caution caution{.kind = CautionKind::FastRise, .weight = weight_of(CautionKind::FastRise), .where = row.passage.name};
  caution.from = t - kFastRiseTime;
  caution.to = t;
  caution.basis = kBasisRise;
  caution.our_judgement = true;
  caution.flow = of(*then);
  caution.flow_after = of(*now);
  caution.rise = std::max(rise, Length{});
  return caution;
}

}  // namespace

bool comes_up_fast(const GaugeOutlook& outlook) {
  return outlook.state == FlowState::Rising && outlook.now.has_value() && outlook.change_6h > kRisesFast;
}

std::optional<Caution> fast_rise(const RiverDay& day, const TimedPassage& row) {
  for (Instant t = row.arrive;; t = std::min(t + kLook, row.leave)) {
    for (const bool high : {false, true}) {
      if (auto rise = rise_by(day, row, t, high)) return rise;
    }
    if (t >= row.leave) return std::nullopt;
  }
}

void add_fast_rise(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions) {
  for (const TimedPassage& row : times.rows) {
    if (const auto rise = fast_rise(day, row)) cautions.push_back(*rise);
  }
}

void add_rising_now(const std::vector<GaugeOutlook>& outlooks, const River& river, std::vector<Caution>& cautions) {
  for (const GaugeOutlook& outlook : outlooks) {
    if (!comes_up_fast(outlook)) continue;
    Caution caution{.kind = CautionKind::FastRise, .weight = weight_of(CautionKind::FastRise)};
    const auto site = std::find_if(river.gauges.begin(), river.gauges.end(),
                                   [&](const GaugeSite& gauge) { return gauge.id == outlook.gauge; });
    caution.about = site == river.gauges.end() || site->name.empty() ? outlook.gauge : site->name;
    caution.from = outlook.now_at - kRisesFastTime;
    caution.to = outlook.now_at;
    caution.flow_after = *outlook.now;
    caution.flow = std::exp(-outlook.change_6h) * *outlook.now;
    caution.basis = kBasisRise;
    caution.our_judgement = true;
    cautions.push_back(caution);
  }
}

}  // namespace floatwright
