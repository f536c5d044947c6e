#pragma once
// Reads what engine/trip/tuned_keys.hpp names out of one JSON object; what does not fit is told. Used by tuned_file.cpp.
#include <array>
#include <cmath>
#include <concepts>
#include <limits>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/files/typed_object.hpp"
#include "engine/units/measured.hpp"
#include "engine/units/temperature.hpp"

namespace floatwright {

class TunedReader {
 public:
  explicit TunedReader(TypedObject& in) : in_(in) {}

  void text(const char* key, std::string& value) { value = in_.text(key, in_.has(key) ? Need::Optional : Need::Required); }
  void texts(const char* key, std::vector<std::string>& value) { value = in_.texts(key, Need::Required); }
  void truth(const char* key, bool& value) {
    if (!in_.has(key)) in_.tell("", std::string("no \"") + key + "\"", "true or false", "Tune again.");
    value = in_.truth(key, false);
  }
  void number(const char* key, double& value) { value = in_.plain_number(key, -kMost, kMost, Need::Required).value_or(0.0); }
  void number_or_null(const char* key, double& value) {
    value = std::numeric_limits<double>::quiet_NaN();
    if (!is_null(key)) number(key, value);
  }
  void measured_number(const char* key, Measured<double>& value) {
    double read = 0.0;
    number_or_null(key, read);
    value = std::isfinite(read) ? Measured<double>{read} : Absent{};
  }
  void maybe_number(const char* key, std::optional<double>& value) {
    double read = 0.0;
    number_or_null(key, read);
    value = std::isfinite(read) ? std::optional{read} : std::nullopt;
  }
  template <std::integral Whole>
  void count(const char* key, Whole& value) {
    value = static_cast<Whole>(in_.whole_number(key, 0, std::numeric_limits<int>::max(), Need::Required).value_or(0));
  }
  template <class Q>
  void si(const char* key, Q& value) {
    value = Q::from_si(in_.plain_number(key, 0.0, kMost, Need::Required).value_or(0.0));
  }
  void kelvin(const char* key, TemperatureChange& value) {
    double read = 0.0;
    number_or_null(key, read);
    value = TemperatureChange{read};
  }
  void hours(const char* key, Period& value) {
    constexpr double kLeast = 1.0 / 3600.0, kLongest = 8784.0;  // a second to a year
    value = Period{std::llround(3600.0 * in_.plain_number(key, kLeast, kLongest, Need::Required).value_or(1.0))};
  }
  void instant(const char* key, Instant& value) {
    const std::string written = in_.text(key, Need::Required);
    const auto read = instant_in(written);
    if (!read && !written.empty()) in_.tell(key, "\"" + written + "\"", "an instant as 2027-05-13T19:50:00Z", "Tune again.");
    value = read.value_or(Instant{});
  }
  void maybe_instant(const char* key, std::optional<Instant>& value) {
    Instant read{};
    if (!is_null(key)) instant(key, read);
    value = is_null(key) ? std::nullopt : std::optional{read};
  }
  template <class E, std::size_t N>
  void maybe_word(const char* key, std::optional<E>& value, const WordTable<E, N>& words) {
    value = is_null(key) ? std::nullopt : meaning_of(in_, key, in_.text(key, Need::Required), words);
  }
  template <std::size_t N>
  void terms(const char* key, std::array<double, N>& values, const std::array<std::string_view, N>& words) {
    auto object = in_.object(key, Need::Required);
    if (!object) return;
    for (std::size_t i = 0; i < N; ++i) values[i] = object->plain_number(words[i], -kMostShare, kMostShare, Need::Required).value_or(0.0);
    object->finish();
  }
  void row(const char* key, std::vector<float>& values);  // null: no number
  template <class T>
  void object(const char* key, T& value) {
    auto below = in_.object(key, Need::Required);
    if (below) read(*below, value);
  }
  template <class T>
  void maybe_object(const char* key, std::optional<T>& value) {
    if (is_null(key)) return;
    object(key, value.emplace());
  }
  template <class T>
  void list(const char* key, std::vector<T>& values) {
    for (TypedObject& item : in_.objects(key, Need::Optional)) read(item, values.emplace_back());
  }

 private:
  static constexpr double kMost = 1e12, kMostShare = 20.0;  // shares that were fitted are a few at most

  template <class T>
  static void read(TypedObject& in, T& value) {
    TunedReader reader(in);
    tuned_keys(reader, value);
    in.finish();
  }
  [[nodiscard]] bool is_null(const char* key) {
    const LocatedJson* const there = in_.find(key);
    return there != nullptr && there->kind == JsonKind::Null;
  }

  TypedObject& in_;
};

}  // namespace floatwright
