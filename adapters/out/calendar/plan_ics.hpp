#pragma once
// The day as a calendar file (RFC 5545): one event from launch to off the water, instants in UTC, with its stops as
// reminders inside it. One event, so that a new plan put into the same calendar replaces the whole of the old one: the
// UID hangs on river, day, person and boat, never on the stretch, and SEQUENCE grows with the time of making.
// A day without a plan is an entry of the whole day that says so, under the same UID. Of several boats each has its event,
// whose UID hangs on river, day and the boat's name, so that another guide in it does not make a second event.
#include <string>
#include <vector>

#include "engine/plan_day.hpp"

namespace floatwright {

[[nodiscard]] std::string plan_ics(const DayPlan& plan, const DayInputs& in);
[[nodiscard]] std::string plan_ics(const std::vector<BoatDay>& boats);

}  // namespace floatwright
