#pragma once
// A value that may be missing, with the reason: never 0, never -999. Absence is not an error; it is printed as such.
#include <string>
#include <utility>
#include <variant>

namespace floatwright {

struct Absent {
  std::string why;  // a phrase that reads after "unknown: ", such as "no gauge on this branch"
  friend bool operator==(const Absent&, const Absent&) = default;
};

template <class T>
class Measured {
 public:
  Measured(T value) : state_(std::in_place_index<1>, std::move(value)) {}                 // NOLINT: a value is one
  Measured(Absent absent = {"not measured"}) : state_(std::in_place_index<0>, std::move(absent)) {}  // NOLINT
  [[nodiscard]] bool has_value() const { return state_.index() == 1; }
  explicit operator bool() const { return has_value(); }
  // The caller has asked has_value().
  [[nodiscard]] const T& value() const { return std::get<1>(state_); }
  [[nodiscard]] T& value() { return std::get<1>(state_); }
  [[nodiscard]] const T& operator*() const { return value(); }
  [[nodiscard]] const T* operator->() const { return &value(); }
  [[nodiscard]] const std::string& why_absent() const { return std::get<0>(state_).why; }

 private:
  std::variant<Absent, T> state_;
};

}  // namespace floatwright
