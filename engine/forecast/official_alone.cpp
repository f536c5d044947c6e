#include "engine/forecast/official_alone.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "engine/forecast/flow_band.hpp"
#include "engine/forecast/local_clock.hpp"
#include "engine/forecast/official.hpp"

namespace floatwright {
namespace {

constexpr Period kBeginsBy = std::chrono::hours{6};
constexpr Period kSilentAtLeast = std::chrono::hours{48};  // or its readings would be used

void tell_flows(const Series<Discharge>& flows, Instant now, Instant until, const std::string& zone,
                GaugeOutlook& outlook) {
  const std::string start = "At gauge " + outlook.gauge + " the agency's forecast ";
  for (const UntoldSpan& span : untold_spans(flows, now, until))
    outlook.notes.push_back(fmt::format("{}tells no flow from {} to {}; between them it is taken to change evenly.",
                                        start, hour_and_day(span.from, zone), hour_and_day(span.until, zone)));
  if (const Instant ends = flows.times.back(); ends < until)
    outlook.notes.push_back(
        fmt::format("{}ends at {}; after it its last flow is held.", start, hour_and_day(ends, zone)));
}

void tell(const OutlookInputs& in, const FlowHistory& history, GaugeOutlook& outlook) {
  const OfficialForecast& forecast = *in.record.official;
  const std::string issued = hour_and_day(forecast.issued, in.time_zone);
  outlook.method = FlowMethod::OfficialAlone;
  outlook.why =
      fmt::format("official forecast of {} alone; {}", issued,
                  history.rows.empty() ? "no flow read at the gauge"
                                       : "gauge silent since " + hour_and_day(history.newest(), in.time_zone));
  outlook.now = Absent{history.rows.empty() ? "no flow read"
                                            : "no reading since " + hour_and_day(history.newest(), in.time_zone)};
  outlook.source =
      fmt::format("the agency's forecast for {} of {} alone, not set to the gauge", forecast.station, issued);
}

}  // namespace

LnCases OfficialAlone::at(Instant t) const {
  const double middle = told.ln_flow_or_between(t);
  const LnBand band = held_band(duration(t - known_until));
  return {middle + band.low, middle, middle + band.high};
}

std::optional<OfficialAlone> official_alone(const OutlookInputs& in, const FlowHistory& history, Instant now,
                                            Instant until, GaugeOutlook& outlook) {
  if (!in.record.official) return std::nullopt;
  const Series<Discharge> flows = flows_of(*in.record.official);
  if (flows.empty() || flows.times.back() <= now || flows.times.front() > now + kBeginsBy) return std::nullopt;
  const Instant issued = in.record.official->issued;
  OfficialAlone way{.told = history, .known_until = issued - kSilentAtLeast};
  if (!history.rows.empty()) way.known_until = std::min(issued, history.newest());
  for (std::size_t i = 0; i < flows.size(); ++i) {
    if (!history.rows.empty() && flows.times[i] <= history.newest()) continue;
    way.told.rows.times.push_back(flows.times[i]);
    way.told.rows.values.push_back(flows.values[i]);
  }
  tell(in, history, outlook);
  tell_flows(flows, now, until, in.time_zone, outlook);
  return way;
}

}  // namespace floatwright
