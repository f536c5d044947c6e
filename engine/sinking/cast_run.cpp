#include "engine/sinking/cast_run.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {

template <class Real>
CastRun<Real>::CastRun(const CastCase& in, std::span<const TabledWater* const> waters, const Resolution& resolution)
    : CastRun(in, chain_line(in, waters.front()->properties, resolution), waters, resolution) {}

template <class Real>
CastRun<Real>::CastRun(const CastCase& in, const ChainLine& line, std::span<const TabledWater* const> waters,
                       const Resolution& resolution)
    : step_(resolution.step.si()),
      may_stretch_(resolution.stretch.si()),
      boat_(in.boat.si()),
      past_(waters.front()->surface_speed.si() - in.boat.si()),
      left_(std::max(0.0, (in.parts.back().length - in.line_out).si())),
      feed_(in.feed.si()),
      count_(in.count.si()),
      strip_(in.strip.si()),
      least_out_(in.least_out.si()),
      tip_(line.tip),
      chain_(line, landed(in, line), past_, waters, in.boat.si(), in.has_bed) {}

template <class Real>
bool CastRun<Real>::advance() {
  constexpr double kSameTime = 1e-6;  // s
  if (left_ > 0.0 && time_ + kSameTime < feed_) {
    const double more = std::min({left_, std::abs(past_) * step_, std::abs(past_) * (feed_ - time_)});
    chain_.let_out(more);
    left_ -= more;
  }
  if (strip_ > 0.0 && time_ + kSameTime >= count_) {
    if (chain_.out() <= least_out_) return false;
    chain_.take_in(strip_ * step_, least_out_);
  }
  chain_.step(step_, may_stretch_);
  time_ += step_;
  return true;
}

template <class Real>
CastRow CastRun<Real>::row(std::size_t lane) const {
  const auto of = [lane](const Real& x) { return of_lane(x, lane); };
  const auto& fly = chain_.joint(0);
  const auto& tip = chain_.joint(std::min(tip_, chain_.joints() - 1));  // or the uppermost that is left
  const double along = of(fly.velocity.along), across = of(fly.velocity.across);  // m/s
  return {seconds(time_),
          metres(std::max(0.0, of(tip.at.down))),
          metres(std::max(0.0, of(fly.at.down))),
          radians(std::atan2(of(fly.at.across), of(fly.at.along))),
          metres_per_second(std::hypot(along + boat_, across)),
          metres_per_second(std::hypot(along - of(chain_.stream(fly.at.down)), across))};
}

template class CastRun<Alone>;
template class CastRun<Abreast>;

}  // namespace floatwright
