#include "adapters/in/fetch/api_key.hpp"

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "adapters/in/text/plain_text.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;

std::string first_line(const fs::path& file, std::vector<std::string>& troubles) {
  const std::string name = file.string();
  std::error_code missing;
  const auto permissions = fs::status(file, missing).permissions();
  std::ifstream in(file);
  if (missing || !in) {
    troubles.push_back(name + ": the key can't be read; asked without it");
    return {};
  }
  if ((permissions & (fs::perms::group_all | fs::perms::others_all)) != fs::perms::none) {
    troubles.push_back(name + ": others may read this key, so it was not used; run chmod 600 on it");
    return {};
  }
  std::string line;
  std::getline(in, line);
  return line;
}

const std::optional<fs::path>* file_named(const GaugeService& service, const ReadingsPlace& place) {
  const auto listed = std::ranges::find(place.services, service.name, &ServiceSettings::name);
  if (listed != place.services.end() && listed->api_key_file) return &listed->api_key_file;
  return service.name == "usgs-water-data" ? &place.api_key_file : nullptr;
}

}  // namespace

std::string key_variable(const std::string& service_name) {
  std::string out = "FLOATWRIGHT_KEY_";
  for (const char c : service_name)
    out += c == '-' ? '_' : static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return out;
}

std::string api_key(const GaugeService& service, const ReadingsPlace& place, std::vector<std::string>& troubles) {
  std::string key;
  if (const char* const set = std::getenv(key_variable(service.name).c_str())) key = set;
  const auto* const file = file_named(service, place);
  if (key.empty() && file != nullptr && *file) key = first_line(**file, troubles);
  return without_controls(std::string{trimmed(key)});
}

}  // namespace floatwright
