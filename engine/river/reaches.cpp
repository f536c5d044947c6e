#include "engine/river/reaches.hpp"

#include "engine/river/place_text.hpp"
#include "engine/river/stations.hpp"

namespace floatwright {
namespace {

// Index of the first item that stands at the place.
template <class Item, class PlaceOf>
std::optional<std::size_t> standing_at(const std::vector<Item>& items, RiverPlace place, PlaceOf place_of) {
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::optional<RiverPlace> p = place_of(items[i]);
    if (p && same_place(*p, place)) return i;
  }
  return std::nullopt;
}

template <class Item>
std::vector<std::size_t> all_at(const std::vector<Item>& items, RiverPlace Item::*where, RiverPlace place) {
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (same_place(items[i].*where, place)) found.push_back(i);
  }
  return found;
}

// Index of the shortest item that covers the middle of the piece: the one that was written about it most closely.
template <class Item, class Accepts>
std::optional<std::size_t> covering(const std::vector<Item>& items, const Reach& piece, Accepts accepts) {
  const RiverPlace middle = upstream_of(piece.to, (piece.from - piece.to) * 0.5);
  std::optional<std::size_t> best;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const auto& item = items[i];
    if (!accepts(item) || item.from < middle || item.to > middle) continue;
    if (!best || item.from - item.to < items[*best].from - items[*best].to) best = i;
  }
  return best;
}

std::optional<std::size_t> lake_of(const River& river, const Reach& piece) {
  const RiverPlace middle = upstream_of(piece.to, (piece.from - piece.to) * 0.5);
  for (std::size_t i = 0; i < river.lakes.size(); ++i) {
    const auto& lake = river.lakes[i];
    if (lake.from && lake.to && *lake.from >= middle && *lake.to <= middle) return i;
  }
  return std::nullopt;
}

std::string name_of(const River& river, const Reach& piece) {
  if (piece.named_reach) return river.reaches[*piece.named_reach].name;
  if (piece.side_channel) return river.side_channels[*piece.side_channel].name;
  if (piece.lake) return river.lakes[*piece.lake].name;
  if (!piece.note) return "";
  const auto& note = river.notes[*piece.note];
  return note.from_name.empty() || note.to_name.empty() ? "" : note.from_name + " to " + note.to_name;
}

void mark_ends(const River& river, Reach& piece) {
  const auto of_gauge = [](const GaugeSite& g) { return g.place; };
  const auto of_dam = [](const Dam& d) { return std::optional{d.place}; };
  const auto of_split = [](const SideChannel& s) { return std::optional{s.leaves}; };
  piece.gauge_at_start = standing_at(river.gauges, piece.from, of_gauge);
  piece.gauge_at_end = standing_at(river.gauges, piece.to, of_gauge);
  piece.dam_at_start = standing_at(river.dams, piece.from, of_dam);
  piece.dam_at_end = standing_at(river.dams, piece.to, of_dam);
  piece.splits_off = standing_at(river.side_channels, piece.from, of_split);
  piece.tributaries_at_start = all_at(river.tributaries, &Tributary::joins_at, piece.from);
  piece.diversions_at_start = all_at(river.diversions, &Diversion::place, piece.from);
}

Reach piece_between(const River& river, RiverPlace from, RiverPlace to) {
  Reach piece;
  piece.id = (river.kilometres ? "km " : "mile ") + place_number(river, from) + "-" + place_number(river, to);
  piece.from = from;
  piece.to = to;
  piece.length = from - to;
  return piece;
}

Reach stem_piece(const River& river, RiverPlace from, RiverPlace to) {
  Reach piece = piece_between(river, from, to);
  mark_ends(river, piece);
  piece.named_reach = covering(river.reaches, piece, [](const NamedReach& r) { return r.in_side_channel.empty(); });
  piece.note = covering(river.notes, piece, [](const StretchNote&) { return true; });
  piece.lake = lake_of(river, piece);
  piece.name = name_of(river, piece);
  if (piece.name.empty()) piece.name = piece.id;
  return piece;
}

// As long as the named reach in it, else as the stem beside it.
Reach branch_piece(const River& river, std::size_t index, RiverPlace from, RiverPlace to) {
  const SideChannel& side = river.side_channels[index];
  Reach piece = piece_between(river, from, to);
  piece.id += "/branch";
  piece.main_thread = false;
  piece.side_channel = index;
  for (std::size_t i = 0; i < river.reaches.size() && !piece.named_reach; ++i) {
    const auto& named = river.reaches[i];
    if (named.in_side_channel != side.id) continue;
    piece.named_reach = i;
    if (named.from > named.to) piece.length = named.from - named.to;
  }
  piece.name = name_of(river, piece);
  if (piece.name.empty()) piece.name = piece.id;
  return piece;
}

std::optional<RiverPlace> station_at(const std::vector<Station>& stations, RiverPlace place) {
  const auto i = standing_at(stations, place, [](const Station& s) { return std::optional{s.place}; });
  if (!i) return std::nullopt;
  return stations[*i].place;
}

}  // namespace

std::vector<Reach> cut_reaches(const River& river, const std::vector<Station>& stations) {
  std::vector<Reach> pieces;
  for (std::size_t i = 1; i < stations.size(); ++i) {
    pieces.push_back(stem_piece(river, stations[i - 1].place, stations[i].place));
  }
  for (std::size_t i = 0; i < river.side_channels.size(); ++i) {
    const auto leaves = station_at(stations, river.side_channels[i].leaves);
    const auto returns = station_at(stations, river.side_channels[i].returns);
    if (leaves && returns && *leaves != *returns) pieces.push_back(branch_piece(river, i, *leaves, *returns));
  }
  return pieces;
}

std::vector<FlowEdge> flow_edges(const std::vector<Reach>& pieces) {
  std::vector<FlowEdge> edges;
  for (std::size_t below = 0; below < pieces.size(); ++below) {
    for (std::size_t above = 0; above < pieces.size(); ++above) {
      if (above != below && pieces[above].to == pieces[below].from) edges.push_back({above, below});
    }
  }
  return edges;
}

}  // namespace floatwright
