#pragma once
// The numbers that a chain computes with: one cast alone in double precision, or one line in several waters abreast, a
// lane each, in single precision (what a table keeps).
#include <bit>
#include <cstddef>
#include <cstdint>
#include <experimental/simd>

namespace floatwright {

using Alone = std::experimental::simd<double, std::experimental::simd_abi::scalar>;
using Abreast = std::experimental::native_simd<float>;

template <class Real>
[[nodiscard]] double of_lane(const Real& x, std::size_t lane) {
  return static_cast<double>(static_cast<typename Real::value_type>(x[lane]));
}

inline constexpr std::size_t kWatersAbreast = Abreast::size();

// From tables whose nodes stand even within an octave, the first one at 2^kFirstOctave, 2^kNodeBits of them an octave: the
// exponent and the first bits of the mantissa of x are its node, the other bits the way to the next one. `nodes(lane)` is the
// first of that lane's; x is positive and within them.
template <int kNodeBits, int kFirstOctave, class NodesOfLane>
[[nodiscard, gnu::always_inline]] inline Abreast between_nodes(const Abreast& x, const NodesOfLane& nodes) {
  namespace stdx = std::experimental;
  using Bits = stdx::rebind_simd_t<std::int32_t, Abreast>;
  constexpr int kRestBits = 23 - kNodeBits, kFirst = (127 + kFirstOctave) << kNodeBits;
  constexpr std::int32_t kRest = 1 << kRestBits;
  const auto bits = std::bit_cast<Bits>(x);
  const Bits node = (bits >> kRestBits) - kFirst;
  const Abreast way = stdx::static_simd_cast<Abreast>(bits & (kRest - 1)) * (1.0F / static_cast<float>(kRest));
  const Abreast low([&](auto lane) { return nodes(lane)[node[lane]]; });
  const Abreast high([&](auto lane) { return nodes(lane)[node[lane] + 1]; });
  return low + way * (high - low);
}

}  // namespace floatwright
