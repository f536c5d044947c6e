// What runs from one place to another: downstream, and not over another of its kind.
#include "engine/river/place_text.hpp"
#include "engine/river/problem_groups.hpp"
#include "engine/river/stations.hpp"

namespace floatwright {
namespace {

struct Extent {
  std::size_t index;  // in its list
  std::string what;
  RiverPlace from, to;
};

std::string written(const River& river, const Extent& e) {
  return e.what + ", " + place_text(river, e.from) + " to " + place_text(river, e.to);
}

void uphill(const River& river, const std::string& list, const std::vector<Extent>& extents, Problems& all) {
  for (const auto& e : extents) {
    if (e.from > e.to && !same_place(e.from, e.to)) continue;
    const bool nowhere = same_place(e.from, e.to);
    all.push_back(river_error(
        pointer_to(list, e.index), written(river, e) + (nowhere ? ": no length" : ": it runs upstream"),
        "\"from\" upstream of \"to\"", nowhere ? "Mend one of the two miles." : "Exchange the two, or mend a mile."));
  }
}

void overlaps(const River& river, const std::string& list, const std::vector<Extent>& extents, const std::string& mend,
              Problems& all) {
  for (std::size_t i = 0; i < extents.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const Extent& a = extents[j];
      const Extent& b = extents[i];
      const bool apart = b.to > a.from || b.from < a.to || same_place(b.to, a.from) || same_place(b.from, a.to);
      if (apart || b.from < b.to || a.from < a.to) continue;
      all.push_back(river_error(pointer_to(list, b.index), written(river, b) + " lies over " + written(river, a),
                                "each piece of river once in " + list, mend));
    }
  }
}

std::vector<Extent> stem_reaches(const River& river) {
  std::vector<Extent> found;
  for (std::size_t i = 0; i < river.reaches.size(); ++i) {
    const auto& r = river.reaches[i];
    if (r.in_side_channel.empty()) found.push_back({i, called("reach", r.id, i), r.from, r.to});
  }
  return found;
}

std::vector<Extent> branch_reaches(const River& river) {
  std::vector<Extent> found;
  for (std::size_t i = 0; i < river.reaches.size(); ++i) {
    const auto& r = river.reaches[i];
    if (!r.in_side_channel.empty()) found.push_back({i, called("reach", r.id, i), r.from, r.to});
  }
  return found;
}

std::vector<Extent> lakes(const River& river) {
  std::vector<Extent> found;
  for (std::size_t i = 0; i < river.lakes.size(); ++i) {
    const auto& l = river.lakes[i];
    if (l.from && l.to) found.push_back({i, called("lake", l.id, i), *l.from, *l.to});
  }
  return found;
}

template <class Item>
std::vector<Extent> numbered(const std::vector<Item>& items, const std::string& kind) {
  std::vector<Extent> found;
  for (std::size_t i = 0; i < items.size(); ++i) found.push_back({i, called(kind, "", i), items[i].from, items[i].to});
  return found;
}

void half_lakes(const River& river, Problems& all) {
  for (std::size_t i = 0; i < river.lakes.size(); ++i) {
    if (river.lakes[i].from.has_value() == river.lakes[i].to.has_value()) continue;
    all.push_back(river_error(pointer_to("lakes", i), called("lake", river.lakes[i].id, i) + " has one end",
                              "both ends where the river runs through it, or none", "Add the other end."));
  }
}

// A branch's reach is placed by the miles of the stem beside it.
void astray_in_side_channels(const River& river, Problems& all) {
  for (const auto& e : branch_reaches(river)) {
    for (const auto& side : river.side_channels) {
      if (side.id != river.reaches[e.index].in_side_channel || e.from < e.to || side.leaves < side.returns) continue;
      const bool beside = (e.from < side.leaves || same_place(e.from, side.leaves)) &&
                          (e.to > side.returns || same_place(e.to, side.returns));
      if (beside) continue;
      all.push_back(river_error(pointer_to("reaches", e.index), written(river, e) + ": beyond its side channel",
                                place_text(river, side.leaves) + " to " + place_text(river, side.returns),
                                "Keep it between the miles where the channel leaves and returns."));
    }
  }
}

}  // namespace

Problems extent_problems(const River& river) {
  Problems all;
  const auto on_stem = stem_reaches(river);
  const auto waves = numbered(river.wave_times, "wave time");
  uphill(river, "notes", numbered(river.notes, "note"), all);
  uphill(river, "reaches", on_stem, all);
  uphill(river, "reaches", branch_reaches(river), all);
  uphill(river, "lakes", lakes(river), all);
  uphill(river, "wave_times", waves, all);
  uphill(river, "closures", numbered(river.closures, "closure"), all);
  overlaps(river, "reaches", on_stem, "Let one end where the other begins.", all);
  overlaps(river, "lakes", lakes(river), "Let one end where the other begins.", all);
  overlaps(river, "wave_times", waves, "Keep the better one, or split them at a shared mile.", all);
  half_lakes(river, all);
  astray_in_side_channels(river, all);
  return all;
}

}  // namespace floatwright
