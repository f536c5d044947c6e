#include "adapters/in/gauges/wsc_words.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"

namespace floatwright {
namespace {

struct Code {
  std::string_view text;  // lower case
  std::optional<Mark> mark;
};

constexpr std::array kCodes{Code{"a", Mark::Estimated},
                            Code{"b", Mark::Ice},
                            Code{"d", std::nullopt},
                            Code{"e", Mark::Estimated},
                            Code{"r", Mark::Revised},
                            Code{"s", std::nullopt},
                            Code{"1", Mark::Provisional},
                            Code{"2", Mark::Provisional},
                            Code{"3", Mark::Provisional},
                            Code{"4", Mark::Approved},
                            Code{"10", Mark::Ice},
                            Code{"20", Mark::Estimated},
                            Code{"30", Mark::Estimated},
                            Code{"40", std::nullopt},
                            Code{"50", Mark::Revised},
                            Code{"-1", std::nullopt},
                            Code{"-2", std::nullopt},
                            Code{"ice", Mark::Ice},
                            Code{"estimated", Mark::Estimated},
                            Code{"partial day", Mark::Estimated},
                            Code{"dry", std::nullopt},
                            Code{"revised", Mark::Revised},
                            Code{"unspecified", std::nullopt},
                            Code{"preliminary", Mark::Provisional},
                            Code{"provisional", Mark::Provisional},
                            Code{"reviewed", Mark::Provisional},
                            Code{"checked", Mark::Provisional},
                            Code{"approved", Mark::Approved},
                            Code{"final", Mark::Approved}};

void add_one(std::string_view code, Marks& marks, std::set<std::string>& unknown) {
  if (code.empty()) return;
  const std::string text = lower_case(code);
  const auto* const found = std::find_if(kCodes.begin(), kCodes.end(), [&](const Code& c) { return c.text == text; });
  if (found == kCodes.end()) {
    marks.insert(Mark::Unknown);
    unknown.insert(printable(code));
  } else if (found->mark) {
    marks.insert(*found->mark);
  }
}

}  // namespace

std::string_view english_half(std::string_view text) { return trimmed(text.substr(0, text.find('/'))); }

void add_wsc_marks(std::string_view cell, Marks& marks, std::set<std::string>& unknown) {
  while (!cell.empty()) {
    const auto end = cell.find_first_of(";,");
    add_one(english_half(cell.substr(0, end)), marks, unknown);
    cell = end == std::string_view::npos ? std::string_view{} : cell.substr(end + 1);
  }
}

GaugeSeries wsc_series(std::string_view station, std::string series_id, Variable variable, const std::string& where) {
  GaugeSeries out;
  out.station = "wsc:" + printable(station);  // the bytes may be no UTF-8
  out.series_id = std::move(series_id);
  out.source = where;
  out.variable = variable;
  return out;
}

}  // namespace floatwright
