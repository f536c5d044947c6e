#include "engine/temperature/parcels_down.hpp"

namespace floatwright {
namespace {

// Half a piece at a time: its middle is a place.
ParcelShares half_way(const ParcelShares& parcel, Instant set_out, Duration travelled, double pace,
                      const PathPiece& piece) {
  return after(parcel, set_out + period(travelled), 0.5 * pace * piece.travel, piece.heat_time);
}

}  // namespace

ParcelsDown::ParcelsDown(const WaterPath& path, double pace, const TimeGrid& departures,
                         const JoiningTemperature& joining)
    : departures_(departures) {
  std::vector<ParcelShares> parcels(departures.count);
  Duration travelled;
  for (const PathPiece& piece : path.pieces) {
    const Duration half = 0.5 * pace * piece.travel;
    Place middle{travelled + half, {}};
    for (std::size_t d = 0; d < departures.count; ++d) {
      const Instant set_out = departures.at(d);
      ParcelShares parcel = parcels[d];
      for (const JoiningWater& water : piece.joining)
        parcel = mixed(parcel, water.share, joining(water.tributary, set_out + period(travelled)));
      middle.shares.push_back(half_way(parcel, set_out, travelled, pace, piece));
      parcels[d] = half_way(middle.shares.back(), set_out, middle.travel, pace, piece);
    }
    travelled = travelled + half + half;
    places_.push_back(std::move(middle));
  }
  places_.push_back({travelled, std::move(parcels)});
}

std::optional<Temperature> ParcelsDown::at(std::size_t place, Instant t, const Equilibrium& equilibrium,
                                           const std::vector<std::optional<Temperature>>& starts) const {
  const Instant left = t - period(places_[place].travel);
  if (left < departures_.start || left > departures_.last()) return std::nullopt;
  const auto d = static_cast<std::size_t>((left - departures_.start) / departures_.step);
  if (!starts[d]) return std::nullopt;
  const Temperature earlier = temperature_of(shares(place, d), *starts[d], equilibrium);
  const Period since = left - departures_.at(d);
  if (since == Period{}) return earlier;
  if (!starts[d + 1]) return std::nullopt;
  const Temperature later = temperature_of(shares(place, d + 1), *starts[d + 1], equilibrium);
  return earlier + duration(since) / duration(departures_.step) * (later - earlier);
}

}  // namespace floatwright
