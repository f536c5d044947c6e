#pragma once
// The three cases a day is computed in: low, middle and high (10th, 50th, 90th percentile of discharge). One case is
// one river consistent with itself. No operators, by design: a case is never added to another.
namespace floatwright {

template <class T>
struct PerCase {
  T low{}, middle{}, high{};
};

// Applies `f` to each case alone.
template <class T, class F>
[[nodiscard]] auto each_case(const PerCase<T>& cases, F&& f) -> PerCase<decltype(f(cases.low))> {
  return {f(cases.low), f(cases.middle), f(cases.high)};
}

// Weights of the cases in a mean (three-point rule for the 10th, 50th and 90th percentile; judgement, docs/equations.md).
inline constexpr PerCase<double> kCaseWeight{0.3, 0.4, 0.3};

}  // namespace floatwright
