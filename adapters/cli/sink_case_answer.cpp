#include <fmt/format.h>

#include "adapters/cli/sink_answer.hpp"
#include "adapters/in/files/sink_case_file.hpp"
#include "adapters/out/figure/line_picture.hpp"
#include "adapters/out/json/sink_case_json.hpp"
#include "adapters/out/text/line_sketch.hpp"
#include "engine/sinking/simulated_cast.hpp"
#include "engine/wording/sink_case_page.hpp"

namespace floatwright {
namespace {

constexpr double kPictureWidth = 480.0;  // points

// Along the stream from the surface down. A line that runs back on itself, as from a boat that outruns the water, has
// no picture; nor has an exact case a zone.
std::optional<LineOverBed> line_of(const SteadyCase& in, const SteadyShape& shape) {
  LineOverBed line;
  line.water = line.zone_depth = in.depth;
  for (const auto& point : shape.points) {
    const bool back = !line.shape.points.empty() && point.along < line.shape.points.back().away;
    if (back || point.along < Length{}) return std::nullopt;
    line.shape.points.push_back({point.along, point.depth});
  }
  return line;
}

void draw(SinkAnswer& answer, const LineOverBed& line) {
  const std::string words = "A line held steady, at true slope.";
  answer.sketches["line"] = line_sketch(line, UnitSystem::Metric);
  answer.picture = answer.page_picture = line_picture(line, {words}, UnitSystem::Metric, kPictureWidth);
  answer.picture_words = words;
  if (answer.picture) answer.page.blocks.emplace_back(Figure{"line", words});
}

struct Answering {
  Result<SinkAnswer> operator()(const SteadyCase& in) const {
    const auto shape = steady_shape(in);
    if (!shape) return tl::unexpected(no_answer(shape.why_absent()));
    SinkAnswer answer{steady_page(in, *shape), steady_json(*shape)};
    if (const auto line = line_of(in, *shape)) draw(answer, *line);
    return answer;
  }
  Result<SinkAnswer> operator()(const CastCase& in) const {
    const auto cast = simulated_cast(in);
    if (!cast) return tl::unexpected(no_answer(cast.why_absent()));
    return SinkAnswer{cast_page(in, *cast), cast_json(*cast)};
  }
  [[nodiscard]] Failure no_answer(const std::string& why) const {
    return {fmt::format("{}: no answer: {}", file, why), kExitBadData};
  }
  const std::string& file;
};

}  // namespace

Result<SinkAnswer> case_answer(const std::string& file) {
  const auto loaded = load_sink_case(file);
  for (const auto& problem : loaded.problems) fmt::print(stderr, "{}\n", say(problem));
  if (!loaded.sink_case)
    return tl::unexpected(
        Failure{fmt::format("{}: the case can't be solved; mend what stands above", file), loaded.exit_code});
  return std::visit(Answering{file}, *loaded.sink_case);
}

}  // namespace floatwright
