#pragma once
// Parcels that set out every hour at the head of a path, followed down it: the temperature at the middle of each piece
// and at the end, up to the equilibrium's three numbers.
#include <functional>

#include "engine/temperature/heat_parcel.hpp"
#include "engine/temperature/water_path.hpp"

namespace floatwright {

// Of a tributary's water, by its index, at an instant.
using JoiningTemperature = std::function<Temperature(std::size_t tributary, Instant t)>;

class ParcelsDown {
 public:
  // Every piece takes `pace` times its travel. Places 0 to n-1 are the middles of the pieces, n the end.
  ParcelsDown(const WaterPath& path, double pace, const TimeGrid& departures, const JoiningTemperature& joining);

  [[nodiscard]] std::size_t end() const { return places_.size() - 1; }
  [[nodiscard]] const TimeGrid& departures() const { return departures_; }
  [[nodiscard]] Duration travel(std::size_t place) const { return places_[place].travel; }
  [[nodiscard]] const ParcelShares& shares(std::size_t place, std::size_t departure) const {
    return places_[place].shares[departure];
  }

  // At an instant, between the two parcels that pass about then; `starts` by departure. None outside all of them.
  [[nodiscard]] std::optional<Temperature> at(std::size_t place, Instant t, const Equilibrium& equilibrium,
                                              const std::vector<std::optional<Temperature>>& starts) const;

 private:
  struct Place {
    Duration travel;
    std::vector<ParcelShares> shares;  // by departure
  };
  TimeGrid departures_;
  std::vector<Place> places_;
};

}  // namespace floatwright
