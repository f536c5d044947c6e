#include "engine/wording/say_source.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

std::string gauge_id(std::size_t gauge, const River& river) {
  return gauge < river.gauges.size() ? typed(river.gauges[gauge].id) : "?";
}

std::string anchor_words(const FlowAnchor& anchor, const River& river) {
  if (anchor.gauge) return "gauge " + gauge_id(*anchor.gauge, river);
  if (anchor.dam && *anchor.dam < river.dams.size()) return "the releases of " + typed(river.dams[*anchor.dam].name);
  return "?";
}

std::string between_words(const FlowSource& source, const River& river) {
  if (source.from.gauge && source.to.gauge)
    return fmt::format("between the gauges {} and {}", gauge_id(*source.from.gauge, river),
                       gauge_id(*source.to.gauge, river));
  return fmt::format("between {} and {}", anchor_words(source.from, river), anchor_words(source.to, river));
}

std::string unknown_words(const std::string& why, Length away, const River& river, UnitSystem units) {
  const std::string distance = away > Length{} ? " (" + say_distance(away, river, units) + ")" : "";
  return without_stop(typed(why)) + distance;
}

std::string carried_words(const FlowSource& source, const River& river, UnitSystem units) {
  const std::string anchor = anchor_words(source.from, river);
  if (source.area_ratio) return fmt::format("{:.2f} of {} by area", *source.area_ratio, anchor);
  return fmt::format("as {}, {} {} (no drainage areas typed)", anchor, say_distance(source.away, river, units),
                     source.origin == FlowOrigin::Below ? "above" : "below");
}

// A part of the float with one source: its words, its lower end, and what stands behind the place.
struct Part {
  std::string words;
  RiverPlace lower_end;
  std::string more;
};

// "A above mile 30.1, B above mile 25.2, C below"
std::string down_the_float(const std::vector<Part>& parts, const River& river, UnitSystem units) {
  std::string words;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    std::string where;
    if (parts.size() > 1)
      where = i + 1 == parts.size() ? " below" : " above " + say_place(parts[i].lower_end, river, units);
    words += (i == 0 ? "" : ", ") + parts[i].words + where + parts[i].more;
  }
  return words;
}

// The reach that ends at a gauge belongs to what is told by it.
bool told_alike(const FlowSource& a, const FlowSource& b) {
  const FlowAnchor& lower = a.origin == FlowOrigin::Between ? a.to : a.from;
  if (b.origin == FlowOrigin::At && a.origin != FlowOrigin::Below && a.origin != FlowOrigin::Unknown)
    return lower == b.from;
  return a.origin == b.origin && a.from == b.from && a.to == b.to && a.why_unknown == b.why_unknown &&
         a.area_ratio.has_value() == b.area_ratio.has_value();
}

// Where one source hands over to the next: the gauge between them, else the end of the last reach.
RiverPlace hand_over(const FlowSource& last, RiverPlace end, const River& river) {
  const FlowAnchor& lower = last.origin == FlowOrigin::Between ? last.to : last.from;
  if (last.origin == FlowOrigin::Below || !lower.gauge || *lower.gauge >= river.gauges.size()) return end;
  return river.gauges[*lower.gauge].place.value_or(end);
}

std::string part_words(const FlowSource& source, const River& river, UnitSystem units) {
  const std::string anchor = anchor_words(source.from, river);
  switch (source.origin) {
    case FlowOrigin::Unknown:
      return "not known: " + unknown_words(source.why_unknown, source.away, river, units);
    case FlowOrigin::At:
      return anchor;
    case FlowOrigin::Between:
      return between_words(source, river);
    case FlowOrigin::Below:
    case FlowOrigin::Above:
      return source.area_ratio ? "from " + anchor + " by drainage area"
                               : "as at " + anchor + ", for no drainage areas are typed,";
  }
  return "not known";
}

std::string known_words(const TemperatureSource& source, const River& river) {
  const std::string from = source.dam ? "the release of " + river.dams[*source.dam].name
                                      : "gauge " + gauge_id(*source.gauge, river);
  if (source.down_to) return "water followed from " + from + " to gauge " + gauge_id(*source.down_to, river);
  return (source.daily_means ? "daily means only at " : "") + from;
}

std::string part_words(const TemperatureSource& source, const River& river) {
  if (source.known()) return known_words(source, river);
  return "not known: " + without_stop(typed(source.why_unknown));
}

bool told_alike(const TemperatureSource& a, const TemperatureSource& b) {
  return a.gauge == b.gauge && a.dam == b.dam && a.down_to == b.down_to && a.daily_means == b.daily_means &&
         a.why_unknown == b.why_unknown;
}

}  // namespace

std::string say(const FlowSource& source, const River& river, UnitSystem units) {
  const std::string share = source.share_of_stem ? "its share of the stem, " : "";
  switch (source.origin) {
    case FlowOrigin::Unknown:
      return "unknown: " + unknown_words(source.why_unknown, source.away, river, units);
    case FlowOrigin::At:
      return share + anchor_words(source.from, river);
    case FlowOrigin::Between:
      return share + between_words(source, river);
    case FlowOrigin::Below:
    case FlowOrigin::Above:
      return share + carried_words(source, river, units);
  }
  return "unknown";
}

std::string say(const TemperatureSource& source, const River& river, UnitSystem units) {
  if (!source.known()) return "unknown: " + without_stop(typed(source.why_unknown));
  const std::string gauge = known_words(source, river);
  if (!(source.away > Length{})) return gauge;
  return fmt::format("{}, {} {}", gauge, say_distance(source.away, river, units),
                     source.downstream ? "downstream" : "upstream");
}

std::string say_flow_sources(const std::vector<PlannedReach>& reaches, const River& river, UnitSystem units) {
  std::vector<Part> parts;
  const FlowSource* last = nullptr;
  for (const PlannedReach& reach : reaches) {
    const FlowSource& source = reach.flow_source;
    if (last == nullptr || !told_alike(*last, source)) {
      parts.push_back({part_words(source, river, units), reach.to, ""});
      last = &source;
    }
    parts.back().lower_end = hand_over(*last, reach.to, river);
  }
  return down_the_float(parts, river, units);
}

std::string say(const KnownFlows& known, UnitSystem units) {
  return fmt::format("the {} from {} to {}", known.of == KnownFlows::Of::Rating ? "rating goes" : "channel was measured",
                     flow_figure(known.from, units), say_flow(known.to, units));
}

std::string say_temperature_sources(const std::vector<PlannedReach>& reaches, const River& river, UnitSystem units) {
  std::vector<Part> parts;
  const TemperatureSource* last = nullptr;
  Length farthest;
  for (const PlannedReach& reach : reaches) {
    const TemperatureSource& source = reach.temperature_source;
    if (last == nullptr || !told_alike(*last, source)) {
      parts.push_back({part_words(source, river), reach.to, ""});
      last = &source;
      farthest = Length{};
    }
    farthest = std::max(farthest, source.away);
    parts.back().lower_end = reach.to;
    if (farthest > Length{}) parts.back().more = " (up to " + say_distance(farthest, river, units) + " away)";
  }
  return down_the_float(parts, river, units);
}

}  // namespace floatwright
