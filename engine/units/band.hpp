#pragma once
// What is printed of an uncertain value: the 10th percentile, the best guess, the 90th. Exists only in the finished plan.
namespace floatwright {

template <class T>
struct Band {
  T low{}, best{}, high{};
};

}  // namespace floatwright
