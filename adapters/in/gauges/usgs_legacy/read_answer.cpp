#include "adapters/in/gauges/usgs_legacy/read_answer.hpp"

#include <fmt/format.h>

#include <chrono>
#include <cmath>
#include <optional>
#include <vector>

#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/service_error.hpp"
#include "adapters/in/gauges/usgs_legacy/legacy_block.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

constexpr double kUsualNoData = -999999.0;

enum Slot : int {
  kAll,
  kSite,
  kAgency,
  kSiteName,
  kParameter,
  kUnit,
  kNoData,
  kOptionName,
  kOptionCode,
  kBlocks,
  kRows,
  kMethodId,
  kMethodText,
  kTime,
  kValue,
  kQualifiers
};
enum Row : int { kWhole, kEntry, kOption, kBlock, kRow };

const JsonShape& answer_shape() {
  const std::string entry = "/value/timeSeries/*", source = entry + "/sourceInfo", variable = entry + "/variable",
                    option = variable + "/options/option/*", block = entry + "/values/*", row = block + "/value/*";
  static const JsonShape kShape{{{"/value/timeSeries", kAll},
                                 {source + "/siteCode/0/value", kSite},
                                 {source + "/siteCode/0/agencyCode", kAgency},
                                 {source + "/siteName", kSiteName},
                                 {variable + "/variableCode/0/value", kParameter},
                                 {variable + "/unit/unitCode", kUnit},
                                 {variable + "/noDataValue", kNoData},
                                 {option + "/name", kOptionName},
                                 {option + "/optionCode", kOptionCode},
                                 {entry + "/values", kBlocks},
                                 {block + "/value", kRows},
                                 {block + "/method/0/methodID", kMethodId},
                                 {block + "/method/0/methodDescription", kMethodText},
                                 {row + "/dateTime", kTime},
                                 {row + "/value", kValue},
                                 {row + "/qualifiers", kQualifiers},
                                 {row + "/qualifiers/*", kQualifiers}},
                                {{"", kWhole}, {entry, kEntry}, {option, kOption}, {block, kBlock}, {row, kRow}}};
  return kShape;
}

const std::string& text_or(const JsonValue& value, const std::string& otherwise) {
  return value.is(Kind::Text) ? value.text : otherwise;
}

std::vector<double> no_data_of(const JsonValue& code) {
  std::vector<double> out{kUsualNoData};
  if (code.is(Kind::Number)) out.push_back(code.number);
  if (const auto number = number_in(code.text)) out.push_back(*number);
  return out;
}

std::string method_id(const JsonValue& id, std::size_t index) {
  if (id.is(Kind::Text)) return id.text;
  if (id.is(Kind::Number) && id.number == std::floor(id.number)) return fmt::format("{:.0f}", id.number);
  return "block" + std::to_string(index);
}

class AnswerReader {
 public:
  explicit AnswerReader(const std::string& where) : where_(where) {}

  void take(const JsonRow& row) {
    if (wrong_) return;
    switch (row.row) {
      case kRow:
        return block_.take(row[kTime], row[kValue], row[kQualifiers]);
      case kBlock:
        return take_block(row);
      case kOption:
        if (!statistic_ && row[kOptionName].text == "Statistic") statistic_ = text_or(row[kOptionCode], kInstantaneous);
        return;
      case kEntry:
        return take_entry(row);
      default:
        has_list_ = row[kAll].is(Kind::List);
    }
  }

  Result<GaugeAnswer> answer(std::string_view bytes) && {
    if (wrong_) return failure(*wrong_);
    if (has_list_) return std::move(shelf_).answer();
    if (const auto error = service_error(bytes)) return failure("the service answered with an error, " + *error);
    return failure("no list of series at /value/timeSeries");
  }

 private:
  static inline const std::string kInstantaneous = "00000";

  [[nodiscard]] tl::unexpected<Failure> failure(const std::string& what) const {
    return tl::unexpected(Failure{where_ + ": " + what, kExitBadData});
  }

  void take_block(const JsonRow& row) {
    if (!row[kRows].is(Kind::List) && !broken_block_) broken_block_ = "no list of values at " + row.place() + "/value";
    block_.place = row.place();
    block_.method_id = method_id(row[kMethodId], blocks_.size());
    block_.sensor = text_or(row[kMethodText], "");
    blocks_.push_back(std::exchange(block_, {}));
  }

  void take_entry(const JsonRow& entry) {
    wrong_ = wrong_in(entry);
    if (!wrong_)
      for (const LegacyBlock& block : blocks_) shelve(block, entry);
    statistic_.reset();
    broken_block_.reset();
    blocks_.clear();
  }

  [[nodiscard]] std::optional<std::string> wrong_in(const JsonRow& entry) const {
    if (!entry[kSite].is(Kind::Text)) return "no station number at " + entry.place() + "/sourceInfo/siteCode/0/value";
    if (!entry[kParameter].is(Kind::Text))
      return "no parameter code at " + entry.place() + "/variable/variableCode/0/value";
    if (!entry[kBlocks].is(Kind::List)) return "no list of blocks at " + entry.place() + "/values";
    return broken_block_;
  }

  void shelve(const LegacyBlock& block, const JsonRow& entry) {
    const std::string& parameter = entry[kParameter].text;
    const auto variable = variable_of(parameter);
    if (!variable) return shelf_.not_used("parameter " + printable(parameter), block.size());
    const GaugeSeries head = head_of(block, entry, *variable);
    const std::string& spelling = entry[kUnit].text;
    const auto unit = unit_line(*variable, spelling);
    if (!unit)
      return shelf_.leave_out("series " + printable(head.series_id),
                              fmt::format("the unit \"{}\" is not known", printable(spelling)), "", block.size());
    if (const std::string remark = remark_on(parameter); !remark.empty()) shelf_.remark(remark);
    block.shelve(shelf_, shelf_.place_for(head), *unit, no_data_of(entry[kNoData]));
  }

  [[nodiscard]] GaugeSeries head_of(const LegacyBlock& block, const JsonRow& entry, Variable variable) const {
    const std::string agency = text_or(entry[kAgency], "USGS"), statistic = statistic_.value_or(kInstantaneous);
    return {.station = station_key(agency, entry[kSite].text),
            .series_id = fmt::format("{}:{}:{}:{}:{}", agency, entry[kSite].text, entry[kParameter].text, statistic,
                                     block.method_id),
            .sensor = block.sensor,
            .station_name = text_or(entry[kSiteName], ""),
            .source = where_,
            .variable = variable,
            .daily = !is_instantaneous(statistic) || block.begins_with_a_date,
            .issued = {},
            .readings = {},
            .unknown_codes = {}};
  }

  const std::string& where_;
  SeriesShelf shelf_;
  LegacyBlock block_;
  std::vector<LegacyBlock> blocks_;  // of the entry that is being read
  std::optional<std::string> statistic_, broken_block_, wrong_;
  bool has_list_ = false;
};

}  // namespace

bool is_usgs_legacy(std::string_view bytes) { return stands_near_an_end(bytes, "\"timeSeries\""); }

Result<GaugeAnswer> read_usgs_legacy(std::string_view bytes, const std::string& where) {
  AnswerReader answer(where);
  const auto read = read_json_rows(bytes, where, answer_shape(), [&](const JsonRow& row) { answer.take(row); });
  if (!read) return tl::unexpected(read.error());
  return std::move(answer).answer(bytes);
}

}  // namespace floatwright
