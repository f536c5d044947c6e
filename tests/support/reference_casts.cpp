// Writes the reference's answers to random casts, so that tests compare with them without waiting for it:
// reference_casts COUNT SEED SEGMENT_M > fixtures/sinking/reference_casts.json (some 15 minutes for 100 at 0.1 m).
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <future>
#include <nlohmann/json.hpp>
#include <vector>

#include "tests/support/random_casts.hpp"
#include "tests/support/reference_chain.hpp"

namespace floatwright {
namespace {

double rounded(Length depth) { return std::round(depth.si() * 1e4) / 1e4; }

nlohmann::ordered_json as_json(const CastCase& in, const SimulatedCast& cast) {
  nlohmann::ordered_json out = {{"depth_m", in.depth.si()},
                                {"surface_speed_m_s", in.surface_speed.si()},
                                {"deepest_fly_m", rounded(cast.deepest_fly)},
                                {"end_fly_m", rounded(cast.end_fly)}};
  auto &fly = out["fly_depth_m"], &tip = out["tip_depth_m"];
  for (std::size_t i = 0; i < cast.rows.size(); i += 10) {
    fly.push_back(rounded(cast.rows[i].fly_depth));
    tip.push_back(rounded(cast.rows[i].tip_depth));
  }
  return out;
}

void write(int count, unsigned seed, double segment) {
  const std::vector<CastCase> casts = random_casts(count, seed);
  ReferenceChoices choices;
  choices.segment = segment;
  std::vector<SimulatedCast> answers(casts.size());
  const auto every_other = [&](std::size_t first) {
    for (std::size_t i = first; i < casts.size(); i += 2) {
      answers[i] = reference_cast(casts[i], choices);
      std::fprintf(stderr, "%zu ", i);
    }
  };
  auto beside = std::async(std::launch::async, every_other, 1);
  every_other(0);
  beside.get();
  std::printf("{ \"made_by\": \"reference_casts %d %u %g > fixtures/sinking/reference_casts.json\",\n"
              "  \"about\": \"random_casts(%d, %u) by the reference chain; depths every second\", \"casts\": [\n",
              count, seed, segment, count, seed);
  for (std::size_t i = 0; i < casts.size(); ++i) {
    std::printf("%s%s\n", as_json(casts[i], answers[i]).dump().c_str(), i + 1 < casts.size() ? "," : "] }");
  }
}

}  // namespace
}  // namespace floatwright

int main(int argc, char** argv) {
  if (argc != 4) return std::fprintf(stderr, "reference_casts COUNT SEED SEGMENT_M\n"), 64;
  floatwright::write(std::atoi(argv[1]), static_cast<unsigned>(std::atoi(argv[2])), std::atof(argv[3]));
}
