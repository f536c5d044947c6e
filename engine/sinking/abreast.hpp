#pragma once
// The numbers that a chain computes with: one cast alone in double precision, or one line in several waters abreast, a
// lane each, in single precision (what a table keeps).
#include <cstddef>
#include <experimental/simd>

namespace floatwright {

using Alone = std::experimental::simd<double, std::experimental::simd_abi::scalar>;
using Abreast = std::experimental::native_simd<float>;

template <class Real>
[[nodiscard]] double of_lane(const Real& x, std::size_t lane) {
  return static_cast<double>(static_cast<typename Real::value_type>(x[lane]));
}

inline constexpr std::size_t kWatersAbreast = Abreast::size();

}  // namespace floatwright
