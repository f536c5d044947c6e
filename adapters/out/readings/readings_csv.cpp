#include <array>
#include <charconv>
#include <cmath>

#include "adapters/out/readings/print_readings.hpp"
#include "adapters/out/readings/words.hpp"

namespace floatwright {
namespace {

std::string field(const std::string& text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? "\"\"" : std::string(1, c);
  return out + "\"";
}

std::string number(const std::optional<double>& value) {
  if (!value || !std::isfinite(*value)) return {};
  std::array<char, 40> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), *value).ptr;
  return {text.data(), end};
}

std::string marks(const GaugeSeries& series, const Reading& row) {
  std::string out;
  for (const std::string& word : mark_words(row.marks, series.daily)) out += (out.empty() ? "" : " ") + word;
  return out;
}

}  // namespace

std::string readings_csv(const GaugeAnswer& answer) {
  std::string out = "series,station,quantity,time,value,unit,marks\n";
  for (const GaugeSeries& series : answer.series)
    for (const Reading& row : series.readings)
      out += field(series.series_id) + "," + field(series.station) + "," + std::string{word_for(series.variable)} + "," +
             time_word(row.time) + "," + number(row.si) + "," + std::string{si_unit_of(series.variable)} + "," + marks(series, row) +
             "\n";
  return out;
}

}  // namespace floatwright
