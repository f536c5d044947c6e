#include "adapters/in/gauges/usgs_words.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "adapters/in/text/plain_text.hpp"

namespace floatwright {
namespace {

// Lower case.
const std::array<std::pair<std::string_view, Mark>, 34> kCodes{{{"p", Mark::Provisional},
                                                                {"provisional", Mark::Provisional},
                                                                {"a", Mark::Approved},
                                                                {"approved", Mark::Approved},
                                                                {"r", Mark::Revised},
                                                                {"revised", Mark::Revised},
                                                                {"e", Mark::Estimated},
                                                                {"est", Mark::Estimated},
                                                                {"estimated", Mark::Estimated},
                                                                {"ice", Mark::Ice},
                                                                {"ice_affected", Mark::Ice},
                                                                {"eqp", Mark::Equipment},
                                                                {"equip", Mark::Equipment},
                                                                {"equipment", Mark::Equipment},
                                                                {"mnt", Mark::Equipment},
                                                                {"maint", Mark::Equipment},
                                                                {"maintenance", Mark::Equipment},
                                                                {"fld", Mark::Equipment},
                                                                {"flood_damage", Mark::Equipment},
                                                                {"bkw", Mark::Backwater},
                                                                {"backwater", Mark::Backwater},
                                                                {"dis", Mark::Discontinued},
                                                                {"discontinued", Mark::Discontinued},
                                                                {"***", Mark::Unavailable},
                                                                {"--", Mark::Unavailable},
                                                                {"ssn", Mark::Unavailable},
                                                                {"seasonal", Mark::Unavailable},
                                                                {"nd", Mark::Unavailable},
                                                                {"unavail", Mark::Unavailable},
                                                                {"unavailable", Mark::Unavailable},
                                                                {"rat", Mark::Estimated},
                                                                {"rating_development", Mark::Estimated},
                                                                {"not_determined", Mark::Unavailable},
                                                                {"temporarily_unavailable", Mark::Unavailable}}};

bool splits_codes(char c) { return std::string_view{" \t\r\n,:;[]'\""}.find(c) != std::string_view::npos; }

}  // namespace

std::optional<Variable> variable_of(std::string_view parameter) {
  if (parameter == "00060") return Variable::Flow;
  if (parameter == "00065") return Variable::GaugeHeight;
  if (parameter == "00010") return Variable::WaterTemperature;
  if (parameter == "63680" || parameter == "00076") return Variable::Clarity;
  return std::nullopt;
}

std::string_view usual_unit(std::string_view parameter) {
  if (parameter == "00060") return "ft3/s";
  if (parameter == "00065") return "ft";
  if (parameter == "00010") return "deg C";
  if (parameter == "00076") return "NTU";
  return parameter == "63680" ? "FNU" : "";
}

std::string remark_on(std::string_view parameter) {
  if (parameter != "00076") return {};
  return "parameter 00076: turbidity in NTU (white light) is given as FNU (infrared), uncorrected";
}

std::vector<std::string> codes_in(std::string_view text) {
  std::vector<std::string> out;
  std::string code;
  for (const char c : text) {
    if (!splits_codes(c)) {
      code += c;
    } else if (!code.empty()) {
      out.push_back(std::exchange(code, {}));
    }
  }
  if (!code.empty()) out.push_back(code);
  return out;
}

std::optional<Mark> mark_of(std::string_view code) {
  const std::string text = lower_case(code);
  const auto* const found = std::find_if(kCodes.begin(), kCodes.end(), [&](const auto& c) { return c.first == text; });
  if (found == kCodes.end()) return std::nullopt;
  return found->second;
}

void add_marks(std::string_view text, Marks& marks, std::set<std::string>& unknown) {
  for (const std::string& code : codes_in(text)) {
    const auto mark = mark_of(code);
    marks.insert(mark.value_or(Mark::Unknown));
    if (!mark) unknown.insert(code);
  }
}

bool is_instantaneous(std::string_view statistic) { return statistic == "00000" || statistic == "00011"; }

std::string station_key(std::string_view agency, std::string_view number) {
  if (agency == "USGS" || agency.empty()) return "usgs:" + std::string{number};
  return "usgs:" + std::string{agency} + "-" + std::string{number};
}

std::string station_of_location(std::string_view location) {
  const auto hyphen = location.find('-');
  if (hyphen == std::string_view::npos) return station_key("", location);
  return station_key(location.substr(0, hyphen), location.substr(hyphen + 1));
}

std::string monitoring_location(std::string_view station_without_prefix) {
  const std::string text{station_without_prefix};
  return text.find('-') == std::string::npos ? "USGS-" + text : text;
}

}  // namespace floatwright
