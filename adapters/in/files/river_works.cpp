#include <fmt/format.h>

#include "adapters/in/files/calendar_text.hpp"
#include "adapters/in/files/river_ranges.hpp"
#include "adapters/in/files/river_sections.hpp"

namespace floatwright {
namespace {

template <class T>
void read_names(TypedObject& in, T& site) {
  site.id = in.text("id", Need::Required);
  site.name = in.text("name", Need::Optional);
  if (site.name.empty()) site.name = site.id;
}

Dam read_dam(TypedObject& in, PlaceReader& places) {
  Dam dam;
  read_names(in, dam);
  dam.place = places.at(in, "", Need::Required).value_or(RiverPlace{});
  dam.schedule_file = in.text("releases", Need::Optional);
  dam.minimum = read_flow(in, "minimum", kFlows, Need::Optional);
  dam.ramping = in.truth("ramping", false);
  dam.release_depth = read_length(in, "release_depth", kLakeDepths, Need::Optional);
  in.finish();
  return dam;
}

Tributary read_tributary(TypedObject& in, PlaceReader& places) {
  Tributary tributary;
  read_names(in, tributary);
  tributary.joins_at = places.at(in, "joins_at_", Need::Required).value_or(RiverPlace{});
  tributary.drainage_area = read_area(in, "drainage_area", kDrainageAreas, Need::Optional);
  tributary.gauge = in.text("gauge", Need::Optional);
  in.finish();
  return tributary;
}

std::vector<FlowShare> read_shares(TypedObject& side_channel) {
  std::vector<FlowShare> shares;
  for (TypedObject& item : side_channel.objects("share_by_flow", Need::Required)) {
    const auto flow = read_flow(item, "at_flow", kFlows, Need::Required);
    const auto share = item.plain_number("share", 0.0, 1.0, Need::Required);
    item.finish();
    if (!flow || !share) continue;
    if (!shares.empty() && *flow <= shares.back().at_flow) {
      item.tell("", "a flow that is not above the one before it", "flows that rise down the list",
                "Sort the list by flow.");
    }
    shares.push_back({*flow, *share});
  }
  return shares;
}

SideChannel read_side_channel(TypedObject& in, PlaceReader& places) {
  SideChannel side;
  read_names(in, side);
  if (const auto span = places.span(in, Need::Required, "leaves_at", "returns_at")) {
    side.leaves = span->from.place;
    side.returns = span->to.place;
  }
  side.share_by_flow = read_shares(in);
  in.finish();
  return side;
}

std::optional<Season> read_season(TypedObject& in, Need need) {
  const auto from = read_month_day(in, "from_date", in.has("to_date") ? Need::Required : need);
  const auto to = read_month_day(in, "to_date", in.has("from_date") ? Need::Required : need);
  if (!from || !to) return std::nullopt;
  return Season{*from, *to};
}

Diversion read_diversion(TypedObject& in, PlaceReader& places) {
  Diversion diversion;
  read_names(in, diversion);
  diversion.place = places.at(in, "", Need::Required).value_or(RiverPlace{});
  diversion.flow = read_flow(in, "flow", kFlows, Need::Required).value_or(Discharge{});
  diversion.season = read_season(in, Need::Optional);
  in.finish();
  return diversion;
}

std::vector<ProfilePoint> read_profile(TypedObject& lake) {
  std::vector<ProfilePoint> profile;
  for (TypedObject& item : lake.objects("profile", Need::Optional)) {
    const auto depth = read_length(item, "depth", kLakeDepths, Need::Required);
    const auto temperature = read_temperature(item, "temperature", kWaterTemperatures, Need::Required);
    item.finish();
    if (!depth || !temperature) continue;
    if (!profile.empty() && *depth <= profile.back().depth) {
      item.tell("", "a depth that is not below the one before it", "depths that grow down the list",
                "Sort the list by depth.");
    }
    profile.push_back({*depth, *temperature});
  }
  return profile;
}

Lake read_lake(TypedObject& in, PlaceReader& places) {
  Lake lake;
  read_names(in, lake);
  if (const auto span = places.span(in, Need::Optional)) {
    lake.from = span->from.place;
    lake.to = span->to.place;
  }
  lake.profile = read_profile(in);
  lake.profile_on = read_date(in, "profile_on", Need::Optional);
  lake.shoal_depth = read_length(in, "shoal_depth", kLakeDepths, Need::Optional);
  lake.weed_top = read_length(in, "weed_top", kLakeDepths, Need::Optional);
  in.finish();
  return lake;
}

template <class T>
std::vector<T> read_each(TypedObject& river, std::string_view key, PlaceReader& places,
                         T (*reader)(TypedObject&, PlaceReader&)) {
  std::vector<T> all;
  for (TypedObject& item : river.objects(key, Need::Optional)) all.push_back(reader(item, places));
  return all;
}

}  // namespace

std::vector<Dam> read_dams(TypedObject& river, PlaceReader& places) {
  return read_each(river, "dams", places, read_dam);
}
std::vector<Tributary> read_tributaries(TypedObject& river, PlaceReader& places) {
  return read_each(river, "tributaries", places, read_tributary);
}
std::vector<SideChannel> read_side_channels(TypedObject& river, PlaceReader& places) {
  return read_each(river, "side_channels", places, read_side_channel);
}
std::vector<Diversion> read_diversions(TypedObject& river, PlaceReader& places) {
  return read_each(river, "diversions", places, read_diversion);
}
std::vector<Lake> read_lakes(TypedObject& river, PlaceReader& places) {
  return read_each(river, "lakes", places, read_lake);
}

}  // namespace floatwright
