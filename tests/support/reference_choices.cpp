// What each choice that the equations leave open is worth: a table of per cent against the reference as it stands, over
// random casts. reference_choices [casts] [segment_m]; the table of docs/accuracy.md is that of 20 casts, 0.2 m.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <string>
#include <vector>

#include "tests/support/random_casts.hpp"
#include "tests/support/reference_chain.hpp"

namespace floatwright {
namespace {

struct Answer {
  double deepest, tip_at_4, end;  // m
};
Answer answer(const CastCase& in, const ReferenceChoices& choices) {
  const SimulatedCast cast = reference_cast(in, choices);
  const CastRow& at_4 = cast.rows[std::min<std::size_t>(40, cast.rows.size() - 1)];
  return {cast.deepest_fly.si(), at_4.tip_depth.si(), cast.end_fly.si()};
}

struct Change {
  const char* what;
  std::function<void(ReferenceChoices&)> make;
};
const std::vector<Change>& changes() {
  using FlyDrag = ReferenceChoices::FlyDrag;
  static const std::vector<Change> all = {
      {"fly: an axis along the leader", [](auto& c) { c.fly_drag = FlyDrag::ByAxis; }},
      {"fly: broadside area all round", [](auto& c) { c.fly_drag = FlyDrag::Broadside; }},
      {"fly: towed area all round", [](auto& c) { c.fly_drag = FlyDrag::Towed; }},
      {"fly: weight 0.9 of that in air", [](auto& c) { c.fly_weight_share = 0.9; }},
      {"drag at nodes, not on segments", [](auto& c) { c.drag_at_nodes = true; }},
      {"line goes under within 10 diameters", [](auto& c) { c.submergence_diameters = 10.0; }},
      {"line goes under within 30 diameters", [](auto& c) { c.submergence_diameters = 30.0; }},
      {"no added mass", [](auto& c) { c.added_mass = 0.0; }},
      {"bed with friction 0.5", [](auto& c) { c.bed_friction = 0.5; }},
      {"half the segment", [](auto& c) { c.segment *= 0.5; }},
      {"half the step", [](auto& c) { c.courant *= 0.5; }},
      {"four times as stiff", [](auto& c) { c.wave_speed *= 2.0; }},
  };
  return all;
}

// Per cent of the deepest fly for the tip at 4 s, which may be near 0; of themselves for the others.
void print_row(const char* what, const std::vector<Answer>& base, const std::vector<Answer>& changed) {
  double mean[3] = {}, worst[3] = {};
  for (std::size_t i = 0; i < base.size(); ++i) {
    const double by[3] = {(changed[i].deepest - base[i].deepest) / base[i].deepest,
                          (changed[i].tip_at_4 - base[i].tip_at_4) / base[i].deepest,
                          (changed[i].end - base[i].end) / std::max(base[i].end, 0.01)};
    for (int k = 0; k < 3; ++k) {
      mean[k] += 100.0 * std::abs(by[k]) / static_cast<double>(base.size());
      if (100.0 * std::abs(by[k]) > std::abs(worst[k])) worst[k] = 100.0 * by[k];
    }
  }
  std::printf("| %s | %.1f, %+.1f | %.1f, %+.1f | %.1f, %+.1f |\n", what, mean[0], worst[0], mean[1],
              worst[1], mean[2], worst[2]);
  std::fflush(stdout);
}

void print_table(int count, double segment) {
  const std::vector<CastCase> casts = random_casts(count, 5);
  ReferenceChoices as_it_stands;
  as_it_stands.segment = segment;
  std::vector<Answer> base;
  for (const CastCase& in : casts) base.push_back(answer(in, as_it_stands));
  for (const Change& change : changes()) {
    ReferenceChoices choices = as_it_stands;
    change.make(choices);
    std::vector<Answer> changed;
    for (const CastCase& in : casts) changed.push_back(answer(in, choices));
    print_row(change.what, base, changed);
  }
}

}  // namespace
}  // namespace floatwright

int main(int argc, char** argv) {
  floatwright::print_table(argc > 1 ? std::atoi(argv[1]) : 20, argc > 2 ? std::atof(argv[2]) : 0.2);
}
