#include "engine/learning/water_named.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>

#include "engine/river/names.hpp"

namespace floatwright {
namespace {

constexpr Length kJustBelow = metres(5.0);  // further than what counts as one place (stations.hpp)

std::string lower(std::string text) {
  std::ranges::transform(text, text.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

// "mile 39.5", "39.5", "km 63": a place as the file counts it.
std::optional<RiverPlace> typed_place(const River& river, std::string_view text) {
  const std::string_view unit = river.kilometres ? "km" : "mile";
  if (text.starts_with(unit)) text.remove_prefix(unit.size());
  while (text.starts_with(' ')) text.remove_prefix(1);
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  if (river.miles_from_source) value = -value;
  return river.kilometres ? river_kilometre(value) : river_mile(value);
}

// A place without the kind of water.
struct PlaceFound {
  WaterHolder holder = WaterHolder::NamedReach;
  std::size_t of = 0, reach = 0;
  RiverPlace place{};
  std::string name;
  bool operator==(const PlaceFound& other) const { return holder == other.holder && of == other.of; }
};

class Finder {
 public:
  Finder(const River& river, const RiverGraph& graph) : river_(river), graph_(graph) {}

  // All that are called so.
  [[nodiscard]] std::vector<PlaceFound> called(const std::string& name) const {
    std::vector<PlaceFound> found = by(name, [](const std::string& a) { return a; });
    if (found.empty()) found = by(name, lower);
    if (!found.empty()) return found;
    if (lower(name).starts_with("below ")) return below(name.substr(6));
    if (const auto place = typed_place(river_, lower(name))) add(at(*place), found);
    return found;
  }

 private:
  template <class Spelt>
  std::vector<PlaceFound> by(const std::string& name, const Spelt& spelt) const {
    std::vector<PlaceFound> found;
    const auto is = [&](const auto& thing) { return spelt(thing.id) == spelt(name) || spelt(thing.name) == spelt(name); };
    for (std::size_t i = 0; i < river_.spots.size(); ++i)
      if (is(river_.spots[i])) add(spot(i), found);
    for (std::size_t i = 0; i < river_.reaches.size(); ++i)
      if (is(river_.reaches[i])) add(named_reach(i), found);
    for (const Access& access : river_.accesses)
      if (found.empty() && is(access)) add(at(upstream_of(access.place, -1.0 * kJustBelow)), found);
    return found;
  }
  static void add(std::optional<PlaceFound> place, std::vector<PlaceFound>& found) {
    if (place && std::ranges::find(found, *place) == found.end()) found.push_back(std::move(*place));
  }

  [[nodiscard]] std::vector<PlaceFound> below(const std::string& name) const {
    std::vector<PlaceFound> found;
    const auto try_one = [&](const std::string& id, const std::string& its_name, RiverPlace place) {
      if (lower(name) == lower(id) || lower(name) == lower(its_name)) add(at(upstream_of(place, -1.0 * kJustBelow)), found);
    };
    for (const Access& access : river_.accesses) try_one(access.id, access.name, access.place);
    for (const NamedReach& reach : river_.reaches) try_one(reach.id, reach.name, reach.to);
    for (const Hazard& hazard : river_.hazards) try_one("", hazard.what, hazard.place);
    for (const Tributary& tributary : river_.tributaries) try_one(tributary.id, tributary.name, tributary.joins_at);
    return found;
  }

  [[nodiscard]] std::optional<PlaceFound> spot(std::size_t i) const {
    const Spot& there = river_.spots[i];
    const auto reach = graph_.at(there.place);
    if (!reach) return std::nullopt;
    return PlaceFound{WaterHolder::Spot, i, *reach, there.place, there.name.empty() ? there.id : there.name};
  }
  [[nodiscard]] std::optional<PlaceFound> named_reach(std::size_t i) const {
    const NamedReach& there = river_.reaches[i];
    const RiverPlace middle = upstream_of(there.to, 0.5 * (there.from - there.to));
    std::optional<std::size_t> reach;
    if (there.in_side_channel.empty()) reach = graph_.at(middle);
    for (std::size_t r = 0; !reach && r < graph_.reaches.size(); ++r)
      if (graph_.reaches[r].named_reach == i) reach = r;
    if (!reach) return std::nullopt;
    return PlaceFound{WaterHolder::NamedReach, i, *reach, middle, there.name.empty() ? there.id : there.name};
  }
  // The water of the stem at a place.
  [[nodiscard]] std::optional<PlaceFound> at(RiverPlace place) const {
    const auto reach = graph_.at(place);
    if (!reach) return std::nullopt;
    const Reach& there = graph_.reaches[*reach];
    if (there.named_reach) return named_reach(*there.named_reach);
    if (!there.note) return std::nullopt;
    const StretchNote& note = river_.notes[*there.note];
    return PlaceFound{WaterHolder::StretchNote, *there.note, *reach, place, note.from_name + " to " + note.to_name};
  }

  const River& river_;
  const RiverGraph& graph_;
};

std::string kinds_of(const std::vector<Water>& waters) {
  std::vector<std::string_view> words;
  for (const Water& water : waters) words.push_back(word_for(water.type));
  return fmt::format("{}", fmt::join(words, ", "));
}

std::optional<std::size_t> of_kind(const std::vector<Water>& waters, WaterType kind) {
  const auto found = std::ranges::find(waters, kind, &Water::type);
  return found == waters.end() ? std::nullopt : std::optional(static_cast<std::size_t>(found - waters.begin()));
}

std::string last_word(const std::string& text) { return lower(text.substr(text.rfind(' ') + 1)); }

// Which of the place's waters, where no kind was told.
std::optional<std::size_t> only_or_namesake(const std::vector<Water>& waters, const std::string& name) {
  if (waters.size() == 1) return 0;
  const auto kind = value_in(kWaterWords, last_word(name));
  return kind ? of_kind(waters, *kind) : std::nullopt;
}

Measured<NamedWater> water_at(const River& river, const std::vector<PlaceFound>& places, std::optional<WaterType> kind) {
  const PlaceFound& place = places.front();
  if (places.size() > 1)
    return Absent{fmt::format("\"{}\" and \"{}\" are two places: write the id of one", place.name, places[1].name)};
  const std::vector<Water>& waters = waters_of(river, place.holder, place.of);
  if (waters.empty()) return Absent{fmt::format("nobody described the water of {}", place.name)};
  const auto water = kind ? of_kind(waters, *kind) : only_or_namesake(waters, place.name);
  if (!water && kind) return Absent{fmt::format("{} has no {}: it has {}", place.name, word_for(*kind), kinds_of(waters))};
  if (!water) return Absent{fmt::format("{} has several waters: say which, {}", place.name, kinds_of(waters))};
  return NamedWater{place.holder, place.of, *water, place.reach, place.place, place.name};
}

}  // namespace

const std::vector<Water>& waters_of(const River& river, WaterHolder holder, std::size_t of) {
  if (holder == WaterHolder::Spot) return river.spots[of].waters;
  return holder == WaterHolder::NamedReach ? river.reaches[of].waters : river.notes[of].waters;
}

Measured<NamedWater> water_named(const River& river, const RiverGraph& graph, const std::string& where,
                                 std::optional<WaterType> kind) {
  const Finder finder(river, graph);
  if (const auto places = finder.called(where); !places.empty()) return water_at(river, places, kind);
  const auto cut = where.rfind(' ');
  const auto told = value_in(kWaterWords, last_word(where));
  if (told && cut != std::string::npos && (!kind || *kind == *told))
    if (const auto places = finder.called(where.substr(0, cut)); !places.empty()) return water_at(river, places, told);
  // The mile that a sheet prints behind a name.
  if (cut != std::string::npos && typed_place(river, where.substr(cut + 1)))
    if (const auto places = finder.called(where.substr(0, cut)); !places.empty()) return water_at(river, places, kind);
  return Absent{fmt::format("no water here is called \"{}\"", where)};
}

std::vector<std::string> names_of_waters(const River& river) {
  std::vector<std::string> names;
  const auto add = [&](const auto& things) {
    for (const auto& thing : things) names.push_back(thing.name.empty() ? thing.id : thing.name);
  };
  add(river.spots);
  add(river.reaches);
  add(river.accesses);
  return names;
}

}  // namespace floatwright
