#include "engine/river/stations.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "engine/river/place_text.hpp"

namespace floatwright {
namespace {

struct Mark {
  RiverPlace place;
  StationKind kind;
  std::string name;
};

// A place of several things takes its name from the first of these that it is.
constexpr std::array kNamingOrder{StationKind::Access, StationKind::Dam,    StationKind::Gauge,
                                  StationKind::Hazard, StationKind::Spot,   StationKind::Confluence,
                                  StationKind::Split,  StationKind::Rejoin, StationKind::Diversion};

auto naming_key(const Mark& mark) { return std::pair{std::ranges::find(kNamingOrder, mark.kind), mark.name}; }

// From the top down; the order in the file does not matter.
bool stands_before(const Mark& a, const Mark& b) {
  return a.place != b.place ? a.place > b.place : naming_key(a) < naming_key(b);
}

std::vector<Mark> spanning_marks(const River& river) {
  std::vector<Mark> marks;
  for (const auto& x : river.accesses) marks.push_back({x.place, StationKind::Access, x.name});
  for (const auto& x : river.dams) marks.push_back({x.place, StationKind::Dam, x.name});
  for (const auto& x : river.gauges) {
    if (x.place) marks.push_back({*x.place, StationKind::Gauge, x.name});
  }
  for (const auto& x : river.lakes) {
    if (!x.from || !x.to) continue;
    marks.push_back({*x.from, StationKind::LakeEnd, "head of " + x.name});
    marks.push_back({*x.to, StationKind::LakeEnd, "foot of " + x.name});
  }
  for (const auto& x : river.reaches) {
    if (!x.in_side_channel.empty()) continue;
    marks.push_back({x.from, StationKind::ReachEnd, ""});
    marks.push_back({x.to, StationKind::ReachEnd, ""});
  }
  for (const auto& x : river.notes) {
    marks.push_back({x.from, StationKind::ReachEnd, x.from_name});
    marks.push_back({x.to, StationKind::ReachEnd, x.to_name});
  }
  return marks;
}

std::vector<Mark> marks_within(const River& river) {
  std::vector<Mark> marks;
  for (const auto& x : river.hazards) marks.push_back({x.place, StationKind::Hazard, x.what});
  for (const auto& x : river.spots) marks.push_back({x.place, StationKind::Spot, x.name});
  for (const auto& x : river.tributaries) marks.push_back({x.joins_at, StationKind::Confluence, x.name});
  for (const auto& x : river.diversions) marks.push_back({x.place, StationKind::Diversion, x.name});
  for (const auto& x : river.side_channels) {
    marks.push_back({x.leaves, StationKind::Split, "head of " + x.name});
    marks.push_back({x.returns, StationKind::Rejoin, "foot of " + x.name});
  }
  return marks;
}

// A place that is not a number is reported by the reader of the file; here it must not upset the sorting.
void drop_unreal(std::vector<Mark>& marks) {
  std::erase_if(marks, [](const Mark& m) { return !std::isfinite(m.place.si()); });
}

void add(std::vector<Station>& stations, const Mark& mark) {
  if (stations.empty() || !same_place(stations.back().place, mark.place)) stations.push_back({mark.place, {}, ""});
  Station& station = stations.back();
  if (std::ranges::find(station.kinds, mark.kind) == station.kinds.end()) station.kinds.push_back(mark.kind);
  if (station.name.empty()) station.name = mark.name;
}

std::optional<RiverSpan> span_of(const std::vector<Mark>& marks) {
  if (marks.empty()) return std::nullopt;
  const auto [lowest, highest] = std::ranges::minmax_element(marks, {}, &Mark::place);
  return RiverSpan{highest->place, lowest->place};
}

}  // namespace

bool same_place(RiverPlace a, RiverPlace b) { return std::abs((a - b).si()) < kSamePlace.si(); }

bool lies_on(const RiverSpan& span, RiverPlace place) {
  return (place < span.top || same_place(place, span.top)) && (place > span.mouth || same_place(place, span.mouth));
}

std::optional<RiverSpan> river_span(const River& river) {
  auto marks = spanning_marks(river);
  drop_unreal(marks);
  return span_of(marks);
}

std::vector<Station> river_stations(const River& river) {
  auto marks = spanning_marks(river);
  drop_unreal(marks);
  const auto span = span_of(marks);
  if (!span) return {};
  auto within = marks_within(river);
  drop_unreal(within);
  for (auto& mark : within) {
    if (lies_on(*span, mark.place)) marks.push_back(std::move(mark));
  }
  std::ranges::sort(marks, stands_before);

  std::vector<Station> stations;
  for (const auto& mark : marks) add(stations, mark);
  stations.front().kinds.insert(stations.front().kinds.begin(), StationKind::Source);
  stations.back().kinds.push_back(StationKind::Mouth);
  for (auto& station : stations) {
    if (station.name.empty()) station.name = place_text(river, station.place);
  }
  return stations;
}

}  // namespace floatwright
