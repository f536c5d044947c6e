#include "engine/sinking/cast_run.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {

template <class Real>
CastRun<Real>::CastRun(const CastCase& in, std::span<const WaterAndBoat> places, const Resolution& resolution)
    : CastRun(in, chain_line(in, places.front().water->properties, resolution), places, resolution) {}

template <class Real>
CastRun<Real>::CastRun(const CastCase& in, const ChainLine& line, std::span<const WaterAndBoat> places,
                       const Resolution& resolution)
    : step_(resolution.step.si()),
      may_stretch_(resolution.stretch.si()),
      boat_([&](auto lane) {
        return static_cast<Scalar>(places[std::min<std::size_t>(lane, places.size() - 1)].boat.si());
      }),
      left_(static_cast<Scalar>(std::max(0.0, (in.parts.back().length - in.line_out).si()))),
      feed_(in.feed.si()),
      count_(in.count.si()),
      strip_(in.strip.si()),
      least_out_(in.least_out.si()),
      tip_(line.tip),
      chain_(line, landed(in, line), places, in.has_bed) {}

template <class Real>
void CastRun<Real>::strip(Speed speed, Length least_out) {
  count_ = time_;
  strip_ = speed.si();
  least_out_ = least_out.si();
}

template <class Real>
bool CastRun<Real>::advance() {
  constexpr double kSameTime = 1e-6;  // s
  if (time_ + kSameTime < feed_) {
    const Real past = std::experimental::abs(chain_.past());
    const Real more = std::experimental::min(left_, Real(past * static_cast<Scalar>(std::min(step_, feed_ - time_))));
    chain_.let_out(more);
    left_ -= more;
  }
  if (strip_ > 0.0 && time_ + kSameTime >= count_) {
    const double may = static_cast<double>(std::experimental::hmin(chain_.out())) - least_out_;  // m
    if (may <= kSameTime) return false;
    chain_.take_in(Real(static_cast<Scalar>(std::min(strip_ * step_, may))));
  }
  chain_.step(step_, may_stretch_);
  time_ += step_;
  return true;
}

template <class Real>
CastRow CastRun<Real>::row(std::size_t lane) const {
  const auto of = [lane](const Real& x) { return of_lane(x, lane); };
  const auto& fly = chain_.joint(0);
  const auto& tip = chain_.joint(std::min(tip_, chain_.joints() - 1));            // or the uppermost that is left
  const double along = of(fly.velocity.along), across = of(fly.velocity.across);  // m/s
  return {seconds(time_),
          metres(std::max(0.0, of(tip.at.down))),
          metres(std::max(0.0, of(fly.at.down))),
          radians(std::atan2(of(fly.at.across), of(fly.at.along))),
          metres_per_second(std::hypot(along + of(boat_), across)),
          metres_per_second(std::hypot(along - of(chain_.stream(fly.at.down)), across))};
}

template class CastRun<Alone>;
template class CastRun<Abreast>;

}  // namespace floatwright
