#include "adapters/out/tuned/tuned_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <concepts>
#include <nlohmann/json.hpp>

#include "engine/trip/report_keys.hpp"

namespace floatwright {
namespace {

using Json = nlohmann::ordered_json;

double rounded(double value, double steps) { return std::round(value * steps) / steps; }
Json finite_or_null(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

// "2027-05-14T13:30:00Z"
std::string utc(Instant t) {
  const auto midnight = std::chrono::floor<std::chrono::days>(t);
  const std::chrono::year_month_day day{midnight};
  const auto since = (t - midnight).count();
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}Z", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                     static_cast<unsigned>(day.day()), since / 3600, since / 60 % 60, since % 60);
}

// Writes what the keys name into one JSON object.
class TunedWriter {
 public:
  explicit TunedWriter(Json& out) : out_(out) {}

  void text(const char* key, const std::string& value) { out_[key] = value; }
  void texts(const char* key, const std::vector<std::string>& value) { out_[key] = value; }
  void truth(const char* key, bool value) { out_[key] = value; }
  void number(const char* key, double value) { out_[key] = std::isfinite(value) ? value : 0.0; }
  void number_or_null(const char* key, double value) { out_[key] = finite_or_null(value); }
  void measured_number(const char* key, const Measured<double>& value) {
    out_[key] = value.has_value() ? finite_or_null(*value) : Json(nullptr);
  }
  void maybe_number(const char* key, const std::optional<double>& value) {
    out_[key] = value ? finite_or_null(*value) : Json(nullptr);
  }
  template <std::integral Whole>
  void count(const char* key, Whole value) {
    out_[key] = value;
  }
  template <class Q>
  void si(const char* key, Q value) {
    number(key, value.si());
  }
  void kelvin(const char* key, TemperatureChange value) { out_[key] = finite_or_null(in_kelvins(value)); }
  void hours(const char* key, Period value) {
    const auto seconds = value.count();
    out_[key] = seconds % 3600 == 0 ? Json(seconds / 3600) : Json(static_cast<double>(seconds) / 3600.0);
  }
  void instant(const char* key, Instant value) { out_[key] = utc(value); }
  void maybe_instant(const char* key, const std::optional<Instant>& value) { out_[key] = value ? Json(utc(*value)) : Json(nullptr); }
  template <class E, std::size_t N>
  void maybe_word(const char* key, const std::optional<E>& value, const WordTable<E, N>& words) {
    out_[key] = value ? Json(word_in(words, *value)) : Json(nullptr);
  }
  template <std::size_t N>
  void terms(const char* key, const std::array<double, N>& values, const std::array<std::string_view, N>& words) {
    Json object = Json::object();
    for (std::size_t i = 0; i < N; ++i) object[std::string(words[i])] = std::isfinite(values[i]) ? values[i] : 0.0;
    out_[key] = std::move(object);
  }
  void row(const char* key, const std::vector<float>& values) {
    constexpr double kFourDecimals = 1e4;
    Json list = Json::array();
    for (const float value : values) list.push_back(std::isfinite(value) ? Json(rounded(value, kFourDecimals)) : Json(nullptr));
    out_[key] = std::move(list);
  }
  template <class T>
  void object(const char* key, const T& value) {
    out_[key] = written(value);
  }
  template <class T>
  void maybe_object(const char* key, const std::optional<T>& value) {
    out_[key] = value ? written(*value) : Json(nullptr);
  }
  template <class T>
  void list(const char* key, const std::vector<T>& values) {
    Json list = Json::array();
    for (const T& value : values) list.push_back(written(value));
    out_[key] = std::move(list);
  }

 private:
  template <class T>
  static Json written(const T& value) {
    Json object = Json::object();
    TunedWriter writer(object);
    tuned_keys(writer, value);
    return object;
  }
  Json& out_;
};

bool only_numbers(const Json& list) {
  return std::all_of(list.begin(), list.end(), [](const Json& item) { return item.is_number() || item.is_null(); });
}

// As dump(1) has it, but rows of numbers, and objects of numbers alone, on one line.
void print(const Json& value, const std::string& indent, std::string& text) {
  const bool opens = value.is_structured() && !value.empty();
  if (!opens || only_numbers(value)) {
    text += value.dump(-1, ' ', false, Json::error_handler_t::replace);
    return;
  }
  const std::string deeper = indent + " ";
  text += value.is_object() ? "{" : "[";
  bool first = true;
  for (const auto& [key, item] : value.items()) {
    text += (first ? "\n" : ",\n") + deeper;
    if (value.is_object()) text += Json(key).dump() + ": ";
    print(item, deeper, text);
    first = false;
  }
  text += "\n" + indent + (value.is_object() ? "}" : "]");
}

std::string printed(const Json& document) {
  std::string text;
  print(document, "", text);
  return text + "\n";
}

}  // namespace

std::string tuned_json(const Tuning& tuning) {
  Json document{{"schema_version", 1}};
  TunedWriter writer(document);
  tuned_keys(writer, tuning);
  return printed(document);
}

std::string reports_json(const TuningReports& reports) {
  Json document{{"schema_version", 1}, {"kind", "tuning_report"}};
  TunedWriter writer(document);
  tuned_keys(writer, reports);
  return printed(document);
}

}  // namespace floatwright
