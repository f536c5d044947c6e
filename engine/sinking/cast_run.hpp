#pragma once
// A cast under way: the chain, and what the angler does with it step by step (lets line out, counts, strips).
#include <span>

#include "engine/sinking/cast_case.hpp"
#include "engine/sinking/chain.hpp"

namespace floatwright {

template <class Real>
class CastRun {
 public:
  // `places` take the place of the case's own water and boat; their waters outlive the run. See Chain.
  CastRun(const CastCase& in, std::span<const WaterAndBoat> places, const Resolution& resolution);

  // From now on line is taken in, whatever the case's count was.
  void strip(Speed speed, Length least_out);
  // One step on; false, and nothing moves, when a strip has taken in all it may, in any lane.
  bool advance();
  [[nodiscard]] double time() const { return time_; }  // s, from landing
  [[nodiscard]] const Chain<Real>& chain() const { return chain_; }
  [[nodiscard]] CastRow row(std::size_t lane) const;

 private:
  using Scalar = typename Real::value_type;
  CastRun(const CastCase& in, const ChainLine& line, std::span<const WaterAndBoat> places,
          const Resolution& resolution);

  double step_, time_ = 0.0;  // s
  double may_stretch_;        // m
  Real boat_;                 // m/s
  Real left_;                 // m of body that can still be let out
  double feed_, count_;       // s
  double strip_, least_out_;  // m/s, m
  std::size_t tip_;
  Chain<Real> chain_;
};

extern template class CastRun<Alone>;
extern template class CastRun<Abreast>;

}  // namespace floatwright
