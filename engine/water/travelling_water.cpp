#include "engine/water/travelling_water.hpp"

namespace floatwright {
namespace {

constexpr double kTravellingOverGuessed = 0.6;

}  // namespace

MeanSpeed travelling_speed(const Channel& channel, Discharge q) {
  return channel.guessed ? kTravellingOverGuessed * mean_speed(channel, q) : mean_speed(channel, q);
}

}  // namespace floatwright
