#pragma once
// What people measured at USGS stations: the collections field-measurements (discharge and stage, one feature a
// reading) and channel-measurements (width, area and speed, one feature a channel) of USGS Water Data, versions 0 and
// 1, joined by the visit. In channel-measurements everything is text, and empty where it is missing.
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/result.hpp"
#include "engine/readings/field_measurement.hpp"

namespace floatwright {

class UsgsFieldVisits {
 public:
  // A page of either collection, in any order. Gives the address of the page on which it goes on, if any.
  [[nodiscard]] Result<std::optional<std::string>> take(std::string_view bytes, const std::string& where);

  struct Told {
    std::vector<FieldMeasurement> visits;  // by station and time
    std::vector<std::string> notes;        // sentences about what was odd or left out
  };
  [[nodiscard]] Told told() const;

 private:
  struct When {
    std::optional<Instant> time;
    bool date_only = false;
  };
  struct StageRead {
    When when;
    Stage stage;
    bool is_mean = false;  // over the time of the discharge measurement
    Marks marks;
  };
  struct Visit {
    FieldMeasurement measured;
    std::vector<StageRead> stages;
    When discharge_when, channel_when;
  };

  [[nodiscard]] static When when_of(const JsonRow& feature);
  [[nodiscard]] static FieldMeasurement finished(const Visit& visit);
  void take_reading(const JsonRow& feature, Visit& visit);
  void take_channel(const JsonRow& feature, Visit& visit);

  std::map<std::pair<std::string, std::string>, Visit> visits_;  // by station and visit
  std::vector<std::string> notes_;
};

// By the key that only these collections have.
[[nodiscard]] bool is_usgs_field_visits(std::string_view bytes);

}  // namespace floatwright
