#include <fmt/format.h>

#include "adapters/cli/sink_answer.hpp"
#include "adapters/in/files/sink_case_file.hpp"
#include "adapters/out/json/sink_case_json.hpp"
#include "engine/sinking/simulated_cast.hpp"
#include "engine/wording/sink_case_page.hpp"

namespace floatwright {
namespace {

struct Answering {
  Result<SinkAnswer> operator()(const SteadyCase& in) const {
    const auto shape = steady_shape(in);
    if (!shape) return tl::unexpected(no_answer(shape.why_absent()));
    return SinkAnswer{steady_page(in, *shape), steady_json(*shape)};
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
