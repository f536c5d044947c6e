#include "engine/wording/sink_case_page.hpp"

#include <fmt/format.h>

#include <cmath>

namespace floatwright {
namespace {

constexpr const char* kModel =
    "As the model has it: nothing here was compared with a line in a real river, and no band is put on an exact case.";

std::string water_words(Length depth, SurfaceSpeed surface, const Profile& profile) {
  return fmt::format("Water {:.3f} m deep, {:.3f} m/s at the surface, {:.3f} m/s in the mean of the depth.", depth.si(),
                     in_metres_per_second(surface), in_metres_per_second(mean_speed(surface, profile, depth)));
}

}  // namespace

Page steady_page(const SteadyCase& asked, const SteadyShape& shape) {
  Page page{"A line held steady", {}};
  page.blocks.emplace_back(Heading{page.title, "", 1});
  page.blocks.emplace_back(Lines{{water_words(asked.depth, asked.surface_speed, asked.profile)}, ""});
  page.blocks.emplace_back(
      Lines{{fmt::format("fly {:.3f} m, tip's lower end {:.3f} m, its butt {:.3f} m below the surface",
                         shape.fly_depth.si(), shape.tip_depth.si(), shape.butt_depth.si())},
            "DEEP"});
  page.blocks.emplace_back(
      Lines{{fmt::format("{:.2f} degrees below the horizontal at the surface end, tension {:.4f} N",
                         in_degrees(shape.at_surface), shape.tension.si())},
            "PULL"});
  page.blocks.emplace_back(
      Lines{{shape.on_the_bed ? "on the bed or within a tenth of the depth of it: no depth is shown below it"
                              : "clear of the bed"},
            "BED"});
  page.blocks.emplace_back(Lines{{kModel}, "SURE"});
  return page;
}

Page cast_page(const CastCase& asked, const SimulatedCast& cast) {
  Page page{"A cast simulated", {}};
  page.blocks.emplace_back(Heading{page.title, "", 1});
  page.blocks.emplace_back(Lines{{water_words(asked.depth, asked.surface_speed, asked.profile)}, ""});
  page.blocks.emplace_back(
      Lines{{fmt::format("fly {:.3f} m at its deepest, {:.3f} m at the end", cast.deepest_fly.si(), cast.end_fly.si())},
            "DEEP"});
  PageTable table{{"AFTER", "TIP AT", "FLY AT", "BEARING"}, {"s", "m", "m", "deg"}, {}};
  for (const CastRow& row : cast.rows) {
    const double t = row.t.si();
    const bool told = std::abs(t - 2.0 * std::round(t / 2.0)) < 1e-6 &&
                      (t < 20.5 || std::abs(t - 10.0 * std::round(t / 10.0)) < 1e-6);
    if (told)
      table.rows.push_back({fmt::format("{:.0f}", t), fmt::format("{:.3f}", row.tip_depth.si()),
                            fmt::format("{:.3f}", row.fly_depth.si()), fmt::format("{:.1f}", in_degrees(row.bearing))});
  }
  page.blocks.emplace_back(std::move(table));
  page.blocks.emplace_back(Lines{{kModel}, "SURE"});
  return page;
}

}  // namespace floatwright
