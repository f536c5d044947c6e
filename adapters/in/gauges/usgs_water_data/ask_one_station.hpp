#pragma once
// Asks USGS Water Data for one station's continuous values of the last 15 days, page after page to the end. A walk that
// breaks off is a failure as a whole: part of an answer looks like a complete short one.
#include <string>

#include "adapters/result.hpp"

namespace floatwright {

struct UsgsAsking {
  std::string base = "https://api.waterdata.usgs.gov/ogcapi/v1";
  std::string api_key;  // empty: none; sent as the header X-Api-Key
  std::string user_agent;
  std::string ca_file;  // empty: the system's
};

// `location`: "USGS-01541000". The answer is one GeoJSON text that the reader has read: of several pages one list of
// features without links.
[[nodiscard]] Result<std::string> ask_usgs_water_data(const UsgsAsking& asking, const std::string& location);

}  // namespace floatwright
