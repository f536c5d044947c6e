#pragma once
// A physical quantity that knows its dimension, held in SI. Dimensions are template integers, so metres plus
// seconds does not compile; a Meaning makes two types of one dimension (a stage is not a depth, the speed a person
// sees on the surface is not the mean speed). No more algebra than is used.
// Feet, cubic feet per second, grains and the like enter and leave only through engine/units/unit.hpp.
#include <compare>

namespace floatwright {

struct Plain {};

template <int L, int M, int T, class Meaning = Plain>
class Quantity {
 public:
  constexpr Quantity() = default;
  [[nodiscard]] static constexpr Quantity from_si(double value) {
    Quantity q;
    q.si_ = value;
    return q;
  }
  [[nodiscard]] constexpr double si() const { return si_; }

  friend constexpr auto operator<=>(const Quantity&, const Quantity&) = default;
  friend constexpr Quantity operator*(Quantity a, double b) { return from_si(a.si_ * b); }
  friend constexpr Quantity operator*(double a, Quantity b) { return from_si(a * b.si_); }
  friend constexpr Quantity operator/(Quantity a, double b) { return from_si(a.si_ / b); }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.si_ / b.si_; }

 private:
  double si_ = 0.0;
};

// Sums and differences: of plain quantities, and of those meanings that add (two surface speeds do, two stages don't).
template <class Meaning>
inline constexpr bool kAdds = true;

template <int L, int M, int T, class Meaning>
  requires kAdds<Meaning>
constexpr Quantity<L, M, T, Meaning> operator+(Quantity<L, M, T, Meaning> a, Quantity<L, M, T, Meaning> b) {
  return Quantity<L, M, T, Meaning>::from_si(a.si() + b.si());
}
template <int L, int M, int T, class Meaning>
  requires kAdds<Meaning>
constexpr Quantity<L, M, T, Meaning> operator-(Quantity<L, M, T, Meaning> a, Quantity<L, M, T, Meaning> b) {
  return Quantity<L, M, T, Meaning>::from_si(a.si() - b.si());
}
template <int L, int M, int T, class Meaning>
  requires kAdds<Meaning>
constexpr Quantity<L, M, T, Meaning> operator-(Quantity<L, M, T, Meaning> a) {
  return Quantity<L, M, T, Meaning>::from_si(-a.si());
}

// Products and quotients of plain quantities of unlike dimension.
template <int L1, int M1, int T1, int L2, int M2, int T2>
constexpr Quantity<L1 + L2, M1 + M2, T1 + T2> operator*(Quantity<L1, M1, T1> a, Quantity<L2, M2, T2> b) {
  return Quantity<L1 + L2, M1 + M2, T1 + T2>::from_si(a.si() * b.si());
}
template <int L1, int M1, int T1, int L2, int M2, int T2>
  requires(L1 != L2 || M1 != M2 || T1 != T2)
constexpr Quantity<L1 - L2, M1 - M2, T1 - T2> operator/(Quantity<L1, M1, T1> a, Quantity<L2, M2, T2> b) {
  return Quantity<L1 - L2, M1 - M2, T1 - T2>::from_si(a.si() / b.si());
}

// The kinds in use.
using Length = Quantity<1, 0, 0>;             // m; also the depth of water
using Area = Quantity<2, 0, 0>;               // m2
using Volume = Quantity<3, 0, 0>;             // m3
using Duration = Quantity<0, 0, 1>;           // s; a physical time, see instant.hpp for the clock
using Speed = Quantity<1, 0, -1>;             // m/s; also a sink rate
using Discharge = Quantity<3, 0, -1>;         // m3/s
using Mass = Quantity<0, 1, 0>;               // kg
using LinearDensity = Quantity<-1, 1, 0>;     // kg/m
using Density = Quantity<-3, 1, 0>;           // kg/m3
using Force = Quantity<1, 1, -2>;             // N

struct OverGaugeZero {};
struct AboveMouth {};
struct AtSurface {};
struct OverDepth {};
struct OfTurbidity {};
struct OfAngle {};
using Stage = Quantity<1, 0, 0, OverGaugeZero>;         // m over the gauge's own zero: never a depth
using RiverPlace = Quantity<1, 0, 0, AboveMouth>;       // m of river counted upstream: grows against the current
using SurfaceSpeed = Quantity<1, 0, -1, AtSurface>;     // m/s, what a person sees
using MeanSpeed = Quantity<1, 0, -1, OverDepth>;        // m/s, mean over the depth
using Turbidity = Quantity<0, 0, 0, OfTurbidity>;       // FNU
using Angle = Quantity<0, 0, 0, OfAngle>;               // rad

template <>
inline constexpr bool kAdds<OverGaugeZero> = false;
template <>
inline constexpr bool kAdds<AboveMouth> = false;
template <>
inline constexpr bool kAdds<OfTurbidity> = false;

// The difference of two stages or of two river places is a length.
constexpr Length operator-(Stage a, Stage b) { return Length::from_si(a.si() - b.si()); }
constexpr Length operator-(RiverPlace a, RiverPlace b) { return Length::from_si(a.si() - b.si()); }
constexpr RiverPlace upstream_of(RiverPlace place, Length distance) {
  return RiverPlace::from_si(place.si() + distance.si());
}

}  // namespace floatwright
