#include "engine/river/picture.hpp"

#include <algorithm>
#include <array>
#include <iterator>

#include "engine/river/picture_text.hpp"
#include "engine/river/place_text.hpp"
#include "engine/river/station_labels.hpp"
#include "engine/river/stations.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kWidth = 78;
constexpr std::size_t kMileWidth = 8;  // "  40.2  "
constexpr std::size_t kArmWidth = 4;   // "----" of a tributary
constexpr std::size_t kKindWidth = 9;  // "gauge    "
constexpr std::size_t kMostLanes = 4;  // side channels beside each other; more are written, not drawn

// Which side channels run beside the stem just now, each in its lane.
class Lanes {
 public:
  std::optional<std::size_t> open(std::size_t side_channel) {
    for (std::size_t i = 0; i < kMostLanes; ++i) {
      if (running_[i]) continue;
      running_[i] = side_channel;
      return i;
    }
    return std::nullopt;
  }
  std::optional<std::size_t> close(std::size_t side_channel) {
    for (std::size_t i = 0; i < kMostLanes; ++i) {
      if (running_[i] != side_channel) continue;
      running_[i].reset();
      return i;
    }
    return std::nullopt;
  }
  // "  | |" to the right of the stem.
  [[nodiscard]] std::string drawn() const {
    std::string text;
    for (const auto& lane : running_) text += lane ? " |" : "  ";
    return text;
  }

 private:
  std::array<std::optional<std::size_t>, kMostLanes> running_{};
};

struct Drawing {
  std::vector<std::string> lines;
  std::size_t lanes = 0;  // the most that run side by side

  void row(const std::string& mile, const std::string& arm, const std::string& water, const std::string& below,
           const std::string& kind, const std::string& text) {
    const std::size_t water_width = 1 + 2 * lanes + 2;
    const std::size_t left = kMileWidth + kArmWidth;
    const auto parts = wrapped(text, kWidth - left - water_width - kKindWidth);
    for (std::size_t i = 0; i < parts.size(); ++i) {
      const bool first = i == 0;
      std::string line = left_aligned(first ? right_aligned(mile, kMileWidth - 2) : "", kMileWidth) +
                         left_aligned(first ? arm : "", kArmWidth) +
                         left_aligned((first ? water : below).substr(0, water_width), water_width) +
                         left_aligned(first ? kind : "", kKindWidth) + parts[i];
      line.erase(line.find_last_not_of(' ') + 1);
      lines.push_back(line);
    }
  }
};

// The stem with a channel that leaves ('\\') or returns ('/') in lane i, drawn over the lanes between.
std::string crossing(std::string lanes, std::size_t lane, char slope) {
  for (std::size_t i = 0; i < 2 * lane; ++i) lanes[i] = '-';
  lanes[2 * lane] = slope;
  lanes[2 * lane + 1] = ' ';
  return "+" + lanes;
}

std::string arm_of(RowShape shape) {
  switch (shape) {
    case RowShape::Joins:
      return "----";
    case RowShape::Taken:
      return "<---";
    case RowShape::Dam:
      return "  ==";
    default:
      return "";
  }
}

std::string water_of(const StationRow& row, Lanes& lanes) {
  const std::string before = lanes.drawn();
  switch (row.shape) {
    case RowShape::Access:
      return "O" + before;
    case RowShape::Dam:
      return "===" + before.substr(2);
    case RowShape::Leaves:
      if (const auto lane = lanes.open(*row.side_channel)) return crossing(before, *lane, '\\');
      break;
    case RowShape::Returns:
      if (const auto lane = lanes.close(*row.side_channel)) return crossing(before, *lane, '/');
      break;
    default:
      break;
  }
  return "+" + before;
}

std::size_t most_lanes(const River& river, const std::vector<Station>& stations) {
  Lanes lanes;
  std::size_t most = 0;
  for (const auto& station : stations) {
    for (const auto& row : station_rows(river, station.place)) {
      static_cast<void>(water_of(row, lanes));
      most = std::max(most, static_cast<std::size_t>(std::ranges::count(lanes.drawn(), '|')));
    }
  }
  return most;
}

void draw_station(const River& river, const Station& station, const std::string& thread_below, Lanes& lanes,
                  Drawing& drawing) {
  std::string mile = place_number(river, station.place);
  for (const auto& row : station_rows(river, station.place)) {
    const std::string water = water_of(row, lanes);
    drawing.row(mile, arm_of(row.shape), water, thread_below + lanes.drawn(), row.kind, row.text);
    mile.clear();
  }
  // The end of a reach alone has a mile and no more to say.
  if (!mile.empty()) drawing.row(mile, "", "+" + lanes.drawn(), "", "", "");
}

std::string thread_of(const Reach& reach) { return reach.lake ? "~" : "|"; }

bool same_water(const Reach& a, const Reach& b) {
  return a.named_reach == b.named_reach && a.note == b.note && a.lake == b.lake &&
         a.named_reach.has_value() + a.note.has_value() + a.lake.has_value() > 0;
}

std::vector<Reach> stem_of(const RiverGraph& graph) {
  std::vector<Reach> stem;
  std::ranges::copy_if(graph.reaches, std::back_inserter(stem), &Reach::main_thread);
  return stem;
}

// Length of the pieces from i on that share one description.
Length described_together(const std::vector<Reach>& stem, std::size_t i) {
  Length sum = stem[i].length;
  for (std::size_t j = i + 1; j < stem.size() && same_water(stem[j - 1], stem[j]); ++j) sum = sum + stem[j].length;
  return sum;
}

void draw_heading(const River& river, RiverPlace top, RiverPlace mouth, Drawing& drawing) {
  drawing.lines = wrapped(river.name + ", " + place_text(river, top) + " to " + place_number(river, mouth) + ", " +
                              distance_text(river, top - mouth) + ". Upstream is up.",
                          kWidth);
  drawing.lines.emplace_back();
}

}  // namespace

std::vector<std::string> river_picture(const River& river, const RiverGraph& graph) {
  if (graph.stations.empty()) return {river.name + ": no place on it is known."};
  Drawing drawing;
  drawing.lanes = most_lanes(river, graph.stations);
  draw_heading(river, graph.stations.front().place, graph.stations.back().place, drawing);

  // The stem runs from station to station, so piece i lies below station i.
  const auto stem = stem_of(graph);
  Lanes lanes;
  for (std::size_t i = 0; i < graph.stations.size(); ++i) {
    const std::string thread = i < stem.size() ? thread_of(stem[i]) : " ";
    draw_station(river, graph.stations[i], thread, lanes, drawing);
    if (i >= stem.size()) continue;
    const bool goes_on = i > 0 && same_water(stem[i - 1], stem[i]);
    const std::string label = goes_on ? "" : reach_label(river, stem[i], described_together(stem, i));
    drawing.row("", "", thread + lanes.drawn(), thread + lanes.drawn(), "", label);
  }
  return drawing.lines;
}

}  // namespace floatwright
