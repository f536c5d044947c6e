#pragma once
// Inside the archive: forecasts that later ones have taken the place of, removed after a while.
#include <vector>

#include "engine/readings/reading.hpp"

namespace SQLite {
class Database;
}

namespace floatwright {

// Of the forecast series in `stored`: removes the issues made more than kSupersededForecastsKept before their newest.
// The age is taken from issue to issue and never from the clock, so that a wrong clock removes nothing; an issue said
// to be made a day or more after `fetched_at` takes nobody's place.
void remove_superseded(SQLite::Database& database, const std::vector<GaugeSeries>& stored, Instant fetched_at);

}  // namespace floatwright
