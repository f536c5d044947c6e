#include "adapters/in/gauges/csv_gauge/zone_clock.hpp"

#include <date/tz.h>

#include <stdexcept>

namespace floatwright {

std::optional<ZoneClock> ZoneClock::of(const std::string& zone) {
  try {
    return ZoneClock(date::locate_zone(zone));
  } catch (const std::runtime_error&) {  // how the library says that there is none
    return std::nullopt;
  }
}

ZoneClock::Shown ZoneClock::instant_of(Instant local) {
  const date::local_info info = zone_->get_info(date::local_seconds{local.time_since_epoch()});
  if (info.result == date::local_info::nonexistent) return {};
  Shown out{.instant = local - info.first.offset, .twice = info.result == date::local_info::ambiguous};
  if (out.twice && before_ && *out.instant <= *before_) out.instant = local - info.second.offset;
  before_ = out.instant;
  return out;
}

}  // namespace floatwright
