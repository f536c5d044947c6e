#include "adapters/in/gauges/usgs_words.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "adapters/in/gauges/plain_text.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

struct Spelling {
  Variable variable;
  std::string_view text;  // lower case, without blanks
  UnitLine line;
};

constexpr double kSecondsPerDay = 86400.0;
constexpr double kCubicMetresPerGallon = 0.003785411784;  // US gallon, exact by definition

const std::array kSpellings{Spelling{Variable::Flow, "ft3/s", {kCubicMetresPerCubicFoot}},
                            Spelling{Variable::Flow, "ft^3/s", {kCubicMetresPerCubicFoot}},
                            Spelling{Variable::Flow, "ft\u00b3/s", {kCubicMetresPerCubicFoot}},
                            Spelling{Variable::Flow, "ft&#179;/s", {kCubicMetresPerCubicFoot}},
                            Spelling{Variable::Flow, "cfs", {kCubicMetresPerCubicFoot}},
                            Spelling{Variable::Flow, "kcfs", {1000.0 * kCubicMetresPerCubicFoot}},
                            Spelling{Variable::Flow, "m3/s", {}},
                            Spelling{Variable::Flow, "m^3/s", {}},
                            Spelling{Variable::Flow, "m\u00b3/s", {}},
                            Spelling{Variable::Flow, "cms", {}},
                            Spelling{Variable::Flow, "l/s", {0.001}},
                            Spelling{Variable::Flow, "mgd", {1e6 * kCubicMetresPerGallon / kSecondsPerDay}},
                            Spelling{Variable::GaugeHeight, "ft", {kMetresPerFoot}},
                            Spelling{Variable::GaugeHeight, "in", {kMetresPerInch}},
                            Spelling{Variable::GaugeHeight, "m", {}},
                            Spelling{Variable::GaugeHeight, "cm", {0.01}},
                            Spelling{Variable::GaugeHeight, "mm", {0.001}},
                            Spelling{Variable::WaterTemperature, "degc", {}},
                            Spelling{Variable::WaterTemperature, "\u00b0c", {}},
                            Spelling{Variable::WaterTemperature, "c", {}},
                            Spelling{Variable::WaterTemperature, "degf", {1.0 / 1.8, -32.0 / 1.8}},
                            Spelling{Variable::WaterTemperature,
                                     "\u00b0"
                                     "f",
                                     {1.0 / 1.8, -32.0 / 1.8}},
                            Spelling{Variable::WaterTemperature, "f", {1.0 / 1.8, -32.0 / 1.8}},
                            Spelling{Variable::Clarity, "fnu", {}},
                            Spelling{Variable::Clarity, "_fnu", {}},
                            Spelling{Variable::Clarity, "ntu", {}},
                            Spelling{Variable::Clarity, "_ntu", {}}};

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

std::optional<UnitLine> unit_line(Variable variable, std::string_view spelling) {
  std::string text = lower_case(spelling);
  std::erase_if(text, [](char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; });
  for (const Spelling& known : kSpellings)
    if (known.variable == variable && known.text == text) return known.line;
  return std::nullopt;
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

std::string monitoring_location(std::string_view station_without_prefix) {
  const std::string text{station_without_prefix};
  return text.find('-') == std::string::npos ? "USGS-" + text : text;
}

}  // namespace floatwright
