#include "engine/river/station_labels.hpp"

#include <algorithm>
#include "engine/river/names.hpp"
#include "engine/river/place_text.hpp"
#include "engine/river/problem_groups.hpp"
#include "engine/river/stations.hpp"

namespace floatwright {
namespace {

std::string name_or_id(const std::string& name, const std::string& id) { return name.empty() ? id : name; }

std::string flow_text(const River& river, Discharge q) {
  return river.kilometres ? short_number(in_cubic_metres_per_second(q)) + " m3/s"
                          : short_number(in_cubic_feet_per_second(q)) + " cfs";
}

std::string area_text(const River& river, Area area) {
  return river.kilometres ? short_number(in_square_metres(area) / 1e6) + " km2"
                          : short_number(in_square_miles(area)) + " mi2";
}

std::string percent(double share) { return std::to_string(static_cast<int>(share * 100.0 + 0.5)); }

std::string share_text(const SideChannel& side) {
  if (side.share_by_flow.empty()) return "";
  const auto [least, most] = std::ranges::minmax(side.share_by_flow, {}, &FlowShare::share);
  const std::string low = percent(least.share), high = percent(most.share);
  return ", " + (low == high ? low : low + " to " + high) + " % of the flow";
}

std::string waters_text(const std::vector<Water>& waters) {
  std::string text;
  for (const auto& water : waters) text += (text.empty() ? ": " : ", ") + std::string{word_for(water.type)};
  return text.empty() ? ": nobody described it" : text;
}

std::string waters_of_side_channel(const River& river, const SideChannel& side) {
  for (const auto& reach : river.reaches) {
    if (!side.id.empty() && reach.in_side_channel == side.id) return waters_text(reach.waters);
  }
  return "";
}

void lake_rows(const River& river, RiverPlace place, std::vector<StationRow>& rows) {
  for (const auto& lake : river.lakes) {
    if (!lake.from || !lake.to) continue;
    if (same_place(*lake.to, place))
      rows.push_back({RowShape::Plain, "lake", name_or_id(lake.name, lake.id) + " ends", {}});
    if (same_place(*lake.from, place))
      rows.push_back({RowShape::Plain, "lake", name_or_id(lake.name, lake.id) + " begins", {}});
  }
}

void standing_rows(const River& river, RiverPlace place, std::vector<StationRow>& rows) {
  for (const auto& dam : river.dams) {
    if (!same_place(dam.place, place)) continue;
    rows.push_back({RowShape::Dam, "dam", name_or_id(dam.name, dam.id) + (dam.ramping ? ", ramping" : ""), {}});
  }
  for (const auto& access : river.accesses) {
    if (!same_place(access.place, place)) continue;
    rows.push_back(
        {RowShape::Access, "access", name_or_id(access.name, access.id) + (access.closed ? ", closed" : ""), {}});
  }
  for (const auto& gauge : river.gauges) {
    if (!gauge.place || !same_place(*gauge.place, place)) continue;
    const std::string area = gauge.drainage_area ? ", " + area_text(river, *gauge.drainage_area) : "";
    rows.push_back({RowShape::Plain, "gauge", name_or_id(gauge.name, gauge.id) + area, {}});
  }
}

void side_rows(const River& river, RiverPlace place, std::vector<StationRow>& rows) {
  for (std::size_t i = 0; i < river.side_channels.size(); ++i) {
    const auto& side = river.side_channels[i];
    if (same_place(side.returns, place))
      rows.push_back({RowShape::Returns, "returns", name_or_id(side.name, side.id), i});
  }
  for (std::size_t i = 0; i < river.side_channels.size(); ++i) {
    const auto& side = river.side_channels[i];
    if (!same_place(side.leaves, place)) continue;
    rows.push_back({RowShape::Leaves, "leaves",
                    name_or_id(side.name, side.id) + share_text(side) + waters_of_side_channel(river, side), i});
  }
}

void passing_rows(const River& river, RiverPlace place, std::vector<StationRow>& rows) {
  for (const auto& t : river.tributaries) {
    if (!same_place(t.joins_at, place)) continue;
    const std::string area = t.drainage_area ? ", " + area_text(river, *t.drainage_area) : "";
    rows.push_back({RowShape::Joins,
                    "joins",
                    name_or_id(t.name, t.id) + area + (t.gauge.empty() ? "" : ", gauge " + t.gauge),
                    {}});
  }
  for (const auto& d : river.diversions) {
    if (!same_place(d.place, place)) continue;
    rows.push_back({RowShape::Taken, "taken", name_or_id(d.name, d.id) + ", " + flow_text(river, d.flow), {}});
  }
  for (const auto& h : river.hazards) {
    if (!same_place(h.place, place)) continue;
    rows.push_back({RowShape::Plain, "HAZARD", h.what + (h.how.empty() ? "" : ". " + h.how), {}});
  }
  for (const auto& s : river.spots) {
    if (same_place(s.place, place)) rows.push_back({RowShape::Plain, "spot", name_or_id(s.name, s.id), {}});
  }
}

}  // namespace

std::vector<StationRow> station_rows(const River& river, RiverPlace place) {
  std::vector<StationRow> rows;
  lake_rows(river, place, rows);
  standing_rows(river, place, rows);
  side_rows(river, place, rows);
  passing_rows(river, place, rows);
  return rows;
}

std::string reach_label(const River& river, const Reach& reach, Length length) {
  const std::string name = reach.name == reach.id ? "" : reach.name + ", ";
  const bool still = reach.lake && !reach.named_reach;
  return name + distance_text(river, length) + (still ? "" : waters_text(waters_of(river, reach)));
}

}  // namespace floatwright
