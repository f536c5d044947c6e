#include "adapters/in/gauges/rating_files.hpp"

#include <fmt/format.h>

#include "adapters/in/files/whole_text.hpp"
#include "adapters/in/gauges/usgs_rdb/read_rating.hpp"

namespace floatwright {
namespace {

std::optional<Problem> read_into(GaugeSite& gauge) {
  const auto text = read_whole_text(gauge.rating_file);
  auto rating = text ? read_usgs_rdb_rating(*text, gauge.rating_file) : tl::unexpected(text.error());
  if (!rating)
    return Problem{gauge.rating_file, 0, "", rating.error().what, "a rating of stage to discharge as USGS RDB",
                   "Put the gauge's rating there, or take \"rating\" away."};
  const bool another = gauge.station.starts_with("usgs:") && rating->station != gauge.station;
  if (another)
    return Problem{gauge.rating_file, 0, "", "the rating of " + rating->station,
                   fmt::format("that of {}, the station of gauge \"{}\"", gauge.station, gauge.id),
                   "Put the rating of this station there."};
  gauge.rating = std::move(*rating);
  return std::nullopt;
}

}  // namespace

LoadedConfiguration with_ratings(LoadedConfiguration loaded) {
  if (!loaded.configuration) return loaded;
  bool sound = true;
  for (GaugeSite& gauge : loaded.configuration->river.gauges) {
    if (gauge.rating_file.empty()) continue;
    if (auto problem = read_into(gauge)) {
      loaded.problems.push_back(std::move(*problem));
      sound = false;
    }
  }
  if (sound) return loaded;
  loaded.configuration.reset();
  loaded.exit_code = kExitConfiguration;
  return loaded;
}

}  // namespace floatwright
