#include "engine/water/channel.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

constexpr double kLeastFlow = 0.001;  // m3/s
constexpr double kMostM = 2.0 / 3.0;  // a few measurements may fit any exponent; a wave is no faster than 3 V (judgement)

double flow_si(Discharge q) { return std::max(kLeastFlow, in_cubic_metres_per_second(q)); }

}  // namespace

Length width(const Channel& channel, Discharge q) { return metres(channel.a * std::pow(flow_si(q), channel.b)); }
Length mean_depth(const Channel& channel, Discharge q) { return metres(channel.c * std::pow(flow_si(q), channel.f)); }
MeanSpeed mean_speed(const Channel& channel, Discharge q) {
  return mean_metres_per_second(channel.k * std::pow(flow_si(q), channel.m));
}
Speed celerity(const Channel& channel, Discharge q) {
  return metres_per_second(in_metres_per_second(mean_speed(channel, q)) / (1.0 - std::clamp(channel.m, 0.0, kMostM)));
}

ChannelMeasurement closed(const ChannelMeasurement& measured) {
  const double carried = in_metres(measured.width) * in_metres(measured.mean_depth) *
                         in_metres_per_second(measured.mean_speed);     // w d v, m3/s
  const double fit = std::cbrt(flow_si(measured.discharge) / carried);  // -
  return {measured.discharge, fit * measured.width, fit * measured.mean_depth, fit * measured.mean_speed};
}

Channel channel_through(const ChannelMeasurement& measured) { return channel_through(std::span{&measured, 1}); }

Channel channel_through(std::span<const ChannelMeasurement> measured, double drawn) {
  const auto n = static_cast<double>(measured.size());
  double x = 0.0, w = 0.0, d = 0.0;  // means of ln Q, ln w, ln d; SI
  for (const auto& row : measured) {
    x += std::log(flow_si(row.discharge)) / n;
    w += std::log(in_metres(closed(row).width)) / n;
    d += std::log(in_metres(closed(row).mean_depth)) / n;
  }
  Channel channel;
  double xx = drawn, xw = drawn * channel.b, xd = drawn * channel.f;
  for (const auto& row : measured) {
    const double off = std::log(flow_si(row.discharge)) - x;
    xx += off * off;
    xw += off * (std::log(in_metres(closed(row).width)) - w);
    xd += off * (std::log(in_metres(closed(row).mean_depth)) - d);
  }
  channel.b = xw / xx;
  channel.f = xd / xx;
  channel.m = 1.0 - channel.b - channel.f;
  channel.a = std::exp(w - channel.b * x);
  channel.c = std::exp(d - channel.f * x);
  channel.k = 1.0 / (channel.a * channel.c);  // the product is 1 to the last digit
  const auto [least, most] = std::ranges::minmax(measured, {}, &ChannelMeasurement::discharge);
  channel.least = least.discharge;
  channel.most = most.discharge;
  return channel;
}

}  // namespace floatwright
