#pragma once
// Values of the plan as JSON: SI numbers, bands, instants.
// A number that is none (an error of ours) becomes null and is named in `doubts`: it never passes as a value.
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "engine/plan_day.hpp"
#include "engine/wording/clock.hpp"

namespace floatwright {

using Json = nlohmann::ordered_json;

struct JsonPlan {
  const DayPlan& plan;
  const DayInputs& in;
  LocalClock clock;
  std::vector<std::string> doubts;
};

[[nodiscard]] Json number(JsonPlan& out, double value, const char* what);
[[nodiscard]] std::string utc(Instant t);                             // "2027-05-14T13:30:00Z"
[[nodiscard]] std::string day_text(std::chrono::year_month_day day);  // "2027-05-14"

inline double si(Temperature t) { return in_celsius(t); }
template <int L, int M, int T, class Meaning>
double si(Quantity<L, M, T, Meaning> q) {
  return q.si();
}

// null where the value is not there. Made for the quantities that the plan has (plan_values.cpp).
template <class T>
[[nodiscard]] Json band(JsonPlan& out, const Band<T>& b, const char* what);
template <class T>
[[nodiscard]] Json band(JsonPlan& out, const Measured<Band<T>>& b, const char* what);
template <class T>
[[nodiscard]] Json maybe(JsonPlan& out, const std::optional<T>& value, const char* what);
template <class T>
[[nodiscard]] Json maybe(JsonPlan& out, const Measured<T>& value, const char* what);

// What was logged since the note: the factors that are in depth and speed; null where nothing was.
[[nodiscard]] Json logged_json(JsonPlan& out, const Correction& depth, const Correction& speed);

// The instant in UTC under `key`, the wall clock's under `key`_local.
void put_instant(JsonPlan& out, Json& object, const std::string& key, Instant t);
void put_instant(JsonPlan& out, Json& object, const std::string& key, const std::optional<Instant>& t);

// The parts of the document, each in a file of its own.
[[nodiscard]] Json document_head(JsonPlan& out, const char* kind);  // version, kind, day, river, how fresh
[[nodiscard]] Json rig_json(JsonPlan& out, const ScoredRig& rig);
[[nodiscard]] Json choice_json(JsonPlan& out, const PlannedWater& water);
[[nodiscard]] Json stretch_json(JsonPlan& out, const PlannedStretch& stretch);
[[nodiscard]] Json caution_json(JsonPlan& out, const Caution& caution);
[[nodiscard]] Json readings_json(JsonPlan& out);
[[nodiscard]] Json river_state_json(JsonPlan& out);
[[nodiscard]] Json fronts_json(JsonPlan& out);

// The whole plan; and a document as text. Bytes that are no UTF-8 become the replacement character, so that it can always
// be read.
[[nodiscard]] Json plan_document(const DayPlan& plan, const DayInputs& in);
[[nodiscard]] std::string document_text(const Json& document);

}  // namespace floatwright
