#include "adapters/in/gauges/nws_weather/ask.hpp"

#include "adapters/in/gauges/asking.hpp"
#include "adapters/in/text/plain_text.hpp"

namespace floatwright {
namespace {

std::string coordinate(std::string_view text) {
  if (text.find('.') != std::string_view::npos) {
    text = text.substr(0, text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.remove_suffix(1);
  }
  return percent_encoded(text);
}

}  // namespace

std::vector<HttpRequest> ask_nws_weather(const Wanted& wanted, const ServiceAccess& access) {
  std::vector<HttpRequest> out;
  for (std::size_t i = 0; i < wanted.stations.size(); ++i) {
    const std::string& point = wanted.stations[i];
    const auto comma = point.find(',');
    if (comma == std::string::npos) continue;
    HttpRequest request = json_request(
        access.base + "/points/" + coordinate(point.substr(0, comma)) + "," + coordinate(point.substr(comma + 1)), i);
    request.headers = {"Accept: application/geo+json"};
    out.push_back(std::move(request));
  }
  return out;
}

}  // namespace floatwright
