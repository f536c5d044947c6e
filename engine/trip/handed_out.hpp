#pragma once
// What of a plan somebody may hold in his hand already, so that the next plan for the same day can say what changed.
#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "engine/trip/day_plan.hpp"

namespace floatwright {

// Ids as typed in tackle.json; empty where the rig has no such part.
struct RodHandedOut {
  std::string rod, line, tip, fly;
  Mass shot;
};
struct CautionHandedOut {
  CautionKind kind = CautionKind::OldReading;
  std::string where, about;
  std::optional<Instant> at;
};
struct StretchHandedOut {
  std::string from, to, from_name, to_name;
  Instant launch{}, off_by{};
  std::optional<Instant> stop_by;      // heat
  std::optional<Discharge> flow;       // at launch, best
  std::optional<Temperature> water;    // likewise
  std::vector<RodHandedOut> rods;      // what each carries at launch
};
struct HandedOut {
  Instant made_at{};
  std::chrono::year_month_day day{};
  std::string whose;                        // the boat, or "at" and the spot: what tells plans of one day apart
  std::optional<StretchHandedOut> stretch;  // none: there was none to float
  std::vector<CautionHandedOut> cautions;   // of the day and of the stretch
};

[[nodiscard]] HandedOut handed_out(const DayPlan& plan, const Tackle& tackle, const std::string& whose);

}  // namespace floatwright
