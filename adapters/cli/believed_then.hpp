#pragma once
// What was believed where and when something was met: the flow by the readings of that day, and how deep the fly of a
// rod would have gone with no bed below it.
#include <map>
#include <memory>

#include "adapters/cli/common_options.hpp"
#include "engine/learning/log_entry.hpp"
#include "engine/plan_day.hpp"

namespace floatwright {

class BelievedThen {
 public:
  // Readings are those on disk from the day of `earliest` on.
  BelievedThen(const CommonOptions& options, const Configuration& configuration, Instant earliest, Instant now);

  // Fills in flow, the fly of a rod whose touch is told, the stops of a float that nobody noted; what is known stays.
  void complete(LogEntry& entry);

 private:
  struct DayThen {
    DayInputs in;
    WaterOfDay water;
    bool has_tables = false;
  };
  DayThen& day_of(Instant t);
  void complete_float(LogEntry& entry, DayThen& then);
  void complete_water(LogEntry& entry, DayThen& then);

  CommonOptions options_;
  Configuration configuration_;
  Instant now_;
  std::vector<GaugeSeries> series_;
  std::map<std::chrono::sys_days, std::unique_ptr<DayThen>> days_;
};

}  // namespace floatwright
