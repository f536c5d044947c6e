#pragma once
// Texts of any length as the services were recorded to write them, one row repeated with times of its own.
#include <cstddef>
#include <string>

namespace floatwright {

[[nodiscard]] std::string quarter_hour(std::size_t row);  // "2020-01-01T00:15:00" of 1

template <class Row>
std::string repeated(const std::string& head, Row row, const std::string& tail, std::size_t about) {
  std::string out = head;
  out.reserve(about + 1000);
  for (std::size_t i = 0; out.size() < about; ++i) out += (i == 0 ? "" : ",") + row(i);
  return out + tail;
}

[[nodiscard]] std::string geomet_text(std::size_t about);
[[nodiscard]] std::string ea_flood_text(std::size_t about);
[[nodiscard]] std::string ea_hydrology_text(std::size_t about);
[[nodiscard]] std::string nwps_text(std::size_t about);
[[nodiscard]] std::string nws_weather_text(std::size_t about);
[[nodiscard]] std::string hubeau_text(std::size_t about);
[[nodiscard]] std::string nve_text(std::size_t about);
[[nodiscard]] std::string foen_text(std::size_t about);
[[nodiscard]] std::string waterml1_text(std::size_t about);
[[nodiscard]] std::string waterml2_text(std::size_t about);

}  // namespace floatwright
