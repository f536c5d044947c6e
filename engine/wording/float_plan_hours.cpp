#include <fmt/format.h>

#include <algorithm>

#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostRows = 12;  // a day every two hours

std::string temperature_cell(const Measured<Band<Temperature>>& temperature, UnitSystem units) {
  if (!temperature) return "?";
  const std::string best = temperature_figure(temperature->best, units),
                    low = temperature_figure(temperature->low, units),
                    high = temperature_figure(temperature->high, units);
  return low == high ? best : fmt::format("{} ({}-{})", best, low, high);
}

std::vector<std::string> cells(const Told& told, const HourRow& hour) {
  const std::string time = told.clock.minute(hour.at);
  const std::string water = temperature_cell(hour.temperature, told.units);
  if (!hour.flow) return {time, "?", "?", "?", water};
  return {time, flow_figure(hour.flow->low, told.units), flow_figure(hour.flow->best, told.units),
          flow_figure(hour.flow->high, told.units), water};
}

template <class T>
std::string first_reason(const std::vector<HourRow>& hours, Measured<T> HourRow::*member) {
  const auto found =
      std::find_if(hours.begin(), hours.end(), [&](const HourRow& h) { return !(h.*member).has_value(); });
  return found == hours.end() ? "" : without_stop(typed(((*found).*member).why_absent()));
}

void add_unknowns(Page& page, const Told& told) {
  std::vector<std::string> lines;
  if (const std::string why = first_reason(told.plan.hours, &HourRow::flow); !why.empty())
    lines.push_back("? flow not known: " + why + ".");
  if (const std::string why = first_reason(told.plan.hours, &HourRow::temperature); !why.empty())
    lines.push_back("? water temperature not known: " + why + ". Measure " + (at_spot(told) ? "when you come" : "at the put-in") +
                    " and at noon.");
  if (!lines.empty()) page.blocks.push_back(Lines{lines, ""});
}

}  // namespace

void add_hours(Page& page, const Told& told) {
  const std::vector<HourRow>& hours = told.plan.hours;
  if (hours.empty()) return;
  const std::string flow = flow_unit(told.units);
  PageTable table{
      {"HOUR", "FLOW LOW", "BEST", "HIGH", "WATER"}, {"", flow, flow, flow, temperature_unit(told.units)}, {}};
  const std::size_t step = (hours.size() + kMostRows - 1) / kMostRows;
  for (std::size_t i = 0; i < hours.size(); i += step) table.rows.push_back(cells(told, hours[i]));
  const PlannedStretch* at = told.floated != nullptr || !at_spot(told) ? told.floated : &told.plan.stretches.front();
  const std::string where = at != nullptr ? "HOURS AT " + typed(at->from_name) : std::string("HOURS");
  page.blocks.push_back(Heading{where, "", 2});
  page.blocks.push_back(std::move(table));
  add_unknowns(page, told);
}

}  // namespace floatwright
