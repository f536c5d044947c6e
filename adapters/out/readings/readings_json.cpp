#include <cmath>
#include <nlohmann/json.hpp>

#include "adapters/out/readings/print_readings.hpp"
#include "adapters/out/readings/words.hpp"

namespace floatwright {
namespace {

using Json = nlohmann::ordered_json;

Json row_json(const GaugeSeries& series, const Reading& row) {
  Json out;
  out["series"] = series.series_id;
  out["station"] = series.station;
  out["quantity"] = word_for(series.variable);
  out["time"] = time_word(row.time);
  out["value"] = row.si && std::isfinite(*row.si) ? Json(*row.si) : Json(nullptr);
  out["unit"] = si_unit_of(series.variable);
  out["marks"] = mark_words(row.marks, series.daily);
  return out;
}

}  // namespace

std::string readings_json(const GaugeAnswer& answer) {
  Json out;
  out["schema_version"] = 1;
  out["kind"] = "readings";
  out["readings"] = Json::array();
  for (const GaugeSeries& series : answer.series)
    for (const Reading& row : series.readings) out["readings"].push_back(row_json(series, row));
  out["notes"] = answer.notes;
  return out.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace floatwright
