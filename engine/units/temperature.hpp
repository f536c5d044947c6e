#pragma once
// Temperature is affine: two of them differ by a TemperatureChange, and never add.
// C = (F - 32) / 1.8 exactly (NIST SP 811 Appendix B).
#include <compare>

namespace floatwright {

class TemperatureChange {
 public:
  constexpr TemperatureChange() = default;
  constexpr explicit TemperatureChange(double kelvins) : kelvins_(kelvins) {}
  [[nodiscard]] constexpr double kelvins() const { return kelvins_; }
  friend constexpr auto operator<=>(const TemperatureChange&, const TemperatureChange&) = default;
  friend constexpr TemperatureChange operator*(double a, TemperatureChange b) { return TemperatureChange{a * b.kelvins_}; }
  friend constexpr TemperatureChange operator+(TemperatureChange a, TemperatureChange b) {
    return TemperatureChange{a.kelvins_ + b.kelvins_};
  }

 private:
  double kelvins_ = 0.0;
};

class Temperature {
 public:
  constexpr Temperature() = default;
  [[nodiscard]] static constexpr Temperature from_celsius(double value) {
    Temperature t;
    t.celsius_ = value;
    return t;
  }
  [[nodiscard]] constexpr double in_celsius() const { return celsius_; }
  friend constexpr auto operator<=>(const Temperature&, const Temperature&) = default;
  friend constexpr TemperatureChange operator-(Temperature a, Temperature b) {
    return TemperatureChange{a.celsius_ - b.celsius_};
  }
  friend constexpr Temperature operator+(Temperature a, TemperatureChange b) {
    return from_celsius(a.celsius_ + b.kelvins());
  }

 private:
  double celsius_ = 0.0;
};

constexpr Temperature celsius(double v) { return Temperature::from_celsius(v); }
constexpr Temperature fahrenheit(double v) { return Temperature::from_celsius((v - 32.0) / 1.8); }
constexpr double in_celsius(Temperature t) { return t.in_celsius(); }
constexpr double in_fahrenheit(Temperature t) { return t.in_celsius() * 1.8 + 32.0; }
constexpr TemperatureChange kelvins(double v) { return TemperatureChange{v}; }
constexpr double in_kelvins(TemperatureChange d) { return d.kelvins(); }

}  // namespace floatwright
