#include "adapters/in/fetch/own_files.hpp"

#include <algorithm>

#include "adapters/in/files/whole_text.hpp"
#include "adapters/in/gauges/csv_gauge/read_csv_gauge.hpp"

namespace floatwright {

Payloads read_own_files(const std::vector<CsvGauge>& declared, const std::vector<std::string>& stations) {
  Payloads out;
  for (const CsvGauge& gauge : declared) {
    if (std::ranges::find(stations, gauge.station) == stations.end()) continue;
    const std::string where = gauge.file.string();
    const auto text = read_whole_text(gauge.file);
    auto answer = text ? read_csv_gauge(*text, where, gauge) : tl::unexpected(text.error());
    if (!answer) {
      out.troubles.push_back(answer.error().what);
      continue;
    }
    for (const std::string& doubt : answer->doubts) out.troubles.push_back(where + ": " + doubt);
    std::ranges::move(answer->series, std::back_inserter(out.series));
  }
  return out;
}

}  // namespace floatwright
