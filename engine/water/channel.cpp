#include "engine/water/channel.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

constexpr double kLeastFlow = 0.001;  // m3/s

double flow_si(Discharge q) { return std::max(kLeastFlow, in_cubic_metres_per_second(q)); }

}  // namespace

Length width(const Channel& channel, Discharge q) { return metres(channel.a * std::pow(flow_si(q), channel.b)); }
Length mean_depth(const Channel& channel, Discharge q) { return metres(channel.c * std::pow(flow_si(q), channel.f)); }
MeanSpeed mean_speed(const Channel& channel, Discharge q) {
  return mean_metres_per_second(channel.k * std::pow(flow_si(q), channel.m));
}
Speed celerity(const Channel& channel, Discharge q) {
  return metres_per_second(in_metres_per_second(mean_speed(channel, q)) / (1.0 - channel.m));
}

Channel channel_through(const ChannelMeasurement& measured) {
  const double q = flow_si(measured.discharge);                // Q, m3/s
  const double w = in_metres(measured.width);                  // m
  const double d = in_metres(measured.mean_depth);             // m
  const double v = in_metres_per_second(measured.mean_speed);  // m/s
  const double fit = std::cbrt(q / (w * d * v));               // -
  Channel channel;
  channel.a = fit * w / std::pow(q, channel.b);
  channel.c = fit * d / std::pow(q, channel.f);
  channel.k = 1.0 / (channel.a * channel.c);  // = fit v / Q^m, and the product is 1 to the last digit
  return channel;
}

}  // namespace floatwright
