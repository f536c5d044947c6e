#include "adapters/in/gauges/measured_csv.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

struct Ending {
  std::string_view text;
  ColumnOf quantity;
  double factor;
};
constexpr std::array kEndings{Ending{"_m3_s", ColumnOf::Flows, 1.0},
                              Ending{"_m3s", ColumnOf::Flows, 1.0},
                              Ending{"_cfs", ColumnOf::Flows, kCubicMetresPerCubicFoot},
                              Ending{"_m", ColumnOf::Lengths, 1.0},
                              Ending{"_ft", ColumnOf::Lengths, kMetresPerFoot},
                              Ending{"_m_s", ColumnOf::Speeds, 1.0},
                              Ending{"_ft_s", ColumnOf::Speeds, kMetresPerFoot}};

}  // namespace

MeasuredCsv::MeasuredCsv(std::string_view bytes) : rows_(bytes) {
  if (rows_.next(header_))
    for (std::string& name : header_) name = lower_case(trimmed(name));
}

std::optional<MeasuredCsv::Column> MeasuredCsv::find(std::initializer_list<std::string_view> names, ColumnOf quantity) const {
  for (const std::string_view name : names)
    for (const Ending& ending : kEndings) {
      if (ending.quantity != quantity) continue;
      const auto found = std::ranges::find(header_, std::string(name) + std::string(ending.text));
      if (found != header_.end()) return Column{static_cast<std::size_t>(found - header_.begin()), ending.factor};
    }
  return std::nullopt;
}

std::optional<std::size_t> MeasuredCsv::find(std::initializer_list<std::string_view> names) const {
  for (const std::string_view name : names) {
    const auto found = std::ranges::find(header_, name);
    if (found != header_.end()) return static_cast<std::size_t>(found - header_.begin());
  }
  return std::nullopt;
}

std::string MeasuredCsv::header() const { return printable(fmt::format("{}", fmt::join(header_, ", "))); }

std::string_view MeasuredCsv::cell(std::optional<std::size_t> column) const {
  return column && *column < fields_.size() ? trimmed(fields_[*column]) : std::string_view{};
}

std::optional<double> MeasuredCsv::si(Column column) const {
  const auto number = number_in(cell(column.at));
  return number ? std::optional{*number * column.factor} : std::nullopt;
}

}  // namespace floatwright
