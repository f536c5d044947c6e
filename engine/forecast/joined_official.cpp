#include "engine/forecast/joined_official.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "engine/forecast/local_clock.hpp"

namespace floatwright {
namespace {

constexpr Period kOldForecast = std::chrono::hours{24};
constexpr double kFarOff = 1.25;  // ratio of gauge to an agency's forecast, either way, that is worth a sentence

void tell(const OutlookInputs& in, const OfficialAhead& official, Instant until, GaugeOutlook& outlook) {
  const std::string at = "At gauge " + outlook.gauge + " ";
  const Instant issued = in.record.official->issued;
  outlook.source =
      "the agency's forecast for " + in.record.official->station + " of " + hour_and_day(issued, in.time_zone);
  if (outlook.now_at - issued > kOldForecast)
    outlook.notes.push_back(at + "the agency's newest forecast is of " + hour_and_day(issued, in.time_zone) + ".");
  if (official.change_only)
    outlook.notes.push_back(
        at + "the agency's forecast is too coarse for so little water: its change is taken from the level read.");
  else if (const double ratio = official.ratio(); std::max(ratio, 1.0 / ratio) > kFarOff)
    outlook.notes.push_back(
        fmt::format("{}the flow read is {:.2f} times what the agency had forecast for that hour.", at, ratio));
  for (const UntoldSpan& span : untold_spans(official.flow, outlook.now_at, until))
    outlook.notes.push_back(
        fmt::format("{}the agency's forecast tells no flow from {} to {}; between them it goes on as the "
                    "gauge's own record says.",
                    at, hour_and_day(span.from, in.time_zone), hour_and_day(span.until, in.time_zone)));
  if (official.until() < until)
    outlook.notes.push_back(at + "the agency's forecast ends at " + hour_and_day(official.until(), in.time_zone) +
                            "; after it the flow goes on as the gauge's own record says.");
}

}  // namespace

std::optional<OfficialAhead> joined_official(const OutlookInputs& in, Instant until, GaugeOutlook& outlook) {
  if (!in.record.official || in.record.official->flow.empty()) return std::nullopt;
  auto official = official_ahead(*in.record.official, outlook.now_at, std::log(outlook.now->si()));
  if (official)
    tell(in, *official, until, outlook);
  else
    outlook.notes.push_back(
        fmt::format("At gauge {} the agency's forecast of {} does not meet the newest reading and is not used.",
                    outlook.gauge, hour_and_day(in.record.official->issued, in.time_zone)));
  return official;
}

}  // namespace floatwright
