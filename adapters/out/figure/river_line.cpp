#include "adapters/out/figure/river_line.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "adapters/out/figure/words_on_paper.hpp"
#include "engine/river/place_text.hpp"
#include "engine/river/station_labels.hpp"
#include "engine/wording/river_page.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

constexpr double kWidth = 620.0, kStem = 96.0, kTop = 70.0;  // points: the picture, the line, where it begins
constexpr double kPerKilometre = 9.0;                        // points of height
constexpr double kHeavy = 3.0, kThin = 1.0;
constexpr double kMile = kStem - 18.0, kWords = kStem + 44.0, kFlow = kStem + 330.0;  // where words stand

struct Row {
  RiverPlace place;
  StationRow station;
  std::vector<std::string> words;  // a line each
  double y = 0.0;                  // of the first
};

// Every thing at every place, the topmost first, none nearer to the next than its words need.
std::vector<Row> rows_of(const River& river, const RiverGraph& graph, double size, double line) {
  std::vector<Row> rows;
  for (const Station& station : graph.stations)
    for (const StationRow& row : station_rows(river, station.place))
      rows.push_back({station.place, row, broken(fmt::format("{} {}", row.kind, typed(row.text)), kFlow - kWords - 8.0, size), 0.0});
  double free_from = kTop;
  for (Row& row : rows) {
    const double kilometres_down = in_metres(graph.stations.front().place - row.place) / 1000.0;
    row.y = std::max(free_from, kTop + kPerKilometre * kilometres_down);
    free_from = row.y + line * static_cast<double>(std::max<std::size_t>(1, row.words.size()));
  }
  return rows;
}

// How the row's thing is drawn at the line: a bar across for a dam, an arm for what joins, leaves or is taken.
void draw_shape(Drawing& drawing, const Row& row) {
  const auto stroke = [&](double x0, double y0, double x1, double y1, double width) {
    drawing.marks.push_back(Stroke{{{x0, y0}, {x1, y1}}, width});
  };
  switch (row.station.shape) {
    case RowShape::Dam:
      return stroke(kStem - 14.0, row.y, kStem + 14.0, row.y, 2.0 * kHeavy);
    case RowShape::Joins:
    case RowShape::Returns:
      return stroke(kStem + 34.0, row.y - 10.0, kStem, row.y, kHeavy / 2.0);
    case RowShape::Leaves:
      return stroke(kStem, row.y, kStem + 34.0, row.y + 10.0, kHeavy / 2.0);
    case RowShape::Taken:
      return stroke(kStem, row.y, kStem - 10.0, row.y + 8.0, kHeavy / 2.0);
    case RowShape::Access: {
      constexpr double kHalf = 5.0;
      drawing.marks.push_back(Stroke{{{kStem - kHalf, row.y - kHalf}, {kStem + kHalf, row.y - kHalf}, {kStem + kHalf, row.y + kHalf},
                                      {kStem - kHalf, row.y + kHalf}, {kStem - kHalf, row.y - kHalf}}, kThin});
      return;
    }
    case RowShape::Plain:
      return stroke(kStem - 7.0, row.y, kStem + 7.0, row.y, kThin);
  }
}

// Flow at noon of the reach below each row, where it changes from what stands above.
void draw_flow(Drawing& drawing, const RiverOfDay& river, const DayInputs& in, const std::vector<Row>& rows, double size) {
  std::string before;
  for (const Row& row : rows) {
    const auto below = std::find_if(river.reaches.begin(), river.reaches.end(), [&](const BelievedReach& reach) {
      return reach.side_channel.empty() && reach.from >= row.place && reach.to < row.place;
    });
    if (below == river.reaches.end()) continue;
    const std::string flow = flow_at_noon(*below, in.settings.units);
    const std::string words = flow.empty() ? "flow not known" : flow;
    if (words != before) drawing.marks.push_back(Words{{kFlow, row.y + size / 3.0}, words, size});
    before = words;
  }
}

}  // namespace

Drawing river_line(const RiverOfDay& river, const DayInputs& in) {
  const double size = words_size(kWidth), line = line_of_words(size) * 1.2;
  const RiverGraph graph = river_graph(in.river);
  Drawing drawing{kWidth, kTop, {}};
  drawing.marks.push_back(Words{{12.0, 24.0}, typed(in.river.name) + ", " + say_day(in.day), 16.0, TextAnchor::Start, true});
  drawing.marks.push_back(Words{{12.0, 44.0}, "Upstream is up. At the right the flow at noon: best, and one day in ten lower or higher.", size});
  const auto rows = rows_of(in.river, graph, size, line);
  for (const Row& row : rows) {
    draw_shape(drawing, row);
    drawing.marks.push_back(Words{{kMile, row.y + size / 3.0}, place_number(in.river, row.place), size, TextAnchor::End});
    for (std::size_t i = 0; i < row.words.size(); ++i)
      drawing.marks.push_back(Words{{kWords, row.y + size / 3.0 + line * static_cast<double>(i)}, row.words[i], size});
  }
  draw_flow(drawing, river, in, rows, size);
  const double bottom = rows.empty() ? kTop : rows.back().y + line * static_cast<double>(rows.back().words.size());
  drawing.marks.push_back(Stroke{{{kStem, kTop - 10.0}, {kStem, bottom}}, kHeavy});
  drawing.height = bottom + 20.0;
  return drawing;
}

std::string river_line_alt(const RiverOfDay& river, const DayInputs& in) {
  return fmt::format("{} from the top down, {} reaches, {}", typed(in.river.name), river.reaches.size(), say_day(in.day));
}

}  // namespace floatwright
