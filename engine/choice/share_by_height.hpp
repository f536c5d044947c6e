#pragma once
// share_at() of several heights side by side, without a branch: w is p up to the full share of the reach, falls evenly
// to 0 at its top, and is a share of p close to the bed.
#include <algorithm>

#include "engine/choice/zone.hpp"
#include "engine/sinking/abreast.hpp"

namespace floatwright {

class ShareByHeight {
 public:
  ShareByHeight(const Zone& zone, const ZoneJudgement& judgement)
      : top_(in_metres(zone.hold + zone.reach)),
        rise_(zone.presence /
              std::max(kLeastFall, top_ - in_metres(zone.hold + judgement.full_share_of_reach * zone.reach))),
        near_bed_(judgement.near_bed_m),
        at_bed_(zone.presence * judgement.near_bed_share),
        presence_(zone.presence) {}

  // False where the share is 0 at this height, m, and at any above.
  [[nodiscard]] bool may_be_taken(double height) const { return !(height >= std::max(top_, near_bed_)); }
  [[nodiscard]] double most() const { return std::max(presence_, at_bed_); }
  // Heights over the bed in m, of any width of std::experimental::simd<double>; the share of one that is
  // no number is none either.
  template <class Real>
  [[nodiscard]] Real at(const Real& height) const {
    Real share = (top_ - height) * rise_;
    where(share > presence_, share) = presence_;
    where(share < 0.0, share) = 0.0;
    where(height < near_bed_, share) = at_bed_;
    return share;
  }

 private:
  static constexpr double kLeastFall = 1e-9;  // m
  double top_, rise_;                         // m, 1/m
  double near_bed_, at_bed_, presence_;       // m, -, -
};

}  // namespace floatwright
