#pragma once
// A stretch cut into the rows of a plan: consecutive graph reaches of one named reach (or, unnamed, of one note) are one
// passage; it ends at a portage and at the ends of a closure, for one part is fished and the other is not.
// Side channels are not floated. A spot is a passage without length, with waters of its own.
#include <optional>
#include <string>
#include <vector>

#include "engine/trip/river_day.hpp"

namespace floatwright {

struct Passage {
  RiverPlace from{}, to{};      // from is upstream
  std::string id{}, name{};
  std::size_t reach = 0;    // graph reach at its middle: whose flow and temperature it has
  std::optional<std::size_t> named_reach{}, note{}, lake{};
  std::optional<std::size_t> spot{};     // index into River::spots: the place itself, not the reach it lies in
  std::vector<std::size_t> closures{};   // into River::closures: all that stand there on the day (closed_water.hpp)
  std::vector<std::size_t> portages{};   // into River::hazards: all at the lower end
  bool rises = false;  // a dam's rise or a fast one is due while the boat is there: nobody anchors or wades

  [[nodiscard]] Length length() const { return from - to; }
  [[nodiscard]] RiverPlace middle() const { return upstream_of(to, 0.5 * length()); }
};

[[nodiscard]] std::vector<Passage> passages(const RiverDay& day, RiverPlace from, RiverPlace to);

// None where the spot lies beyond the river's ends.
[[nodiscard]] std::optional<Passage> spot_passage(const RiverDay& day, std::size_t spot);

// Cut into even parts, each of its own place on the clock.
[[nodiscard]] std::vector<Passage> cut_evenly(const RiverDay& day, const Passage& passage, int parts);

// Whether somebody noted a water of it.
[[nodiscard]] bool is_described(const RiverDay& day, const Passage& passage);
// As described; else the one that is likely there; empty where neither is known.
[[nodiscard]] const std::vector<Water>& waters_of(const RiverDay& day, const Passage& passage);
[[nodiscard]] Bed bed_of(const RiverDay& day, const Passage& passage);

// Whether the closure stands on that day at all, whatever its hours.
[[nodiscard]] bool closed_on(const Closure& closure, std::chrono::year_month_day day);

// Whether the place lies between the ends of a stretch; the lower end, where the boat is taken out, does not count.
[[nodiscard]] bool lies_between(RiverPlace place, RiverPlace from, RiverPlace to);

}  // namespace floatwright
