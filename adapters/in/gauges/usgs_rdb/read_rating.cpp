#include "adapters/in/gauges/usgs_rdb/read_rating.hpp"

#include <fmt/format.h>

#include <limits>
#include <optional>
#include <vector>

#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/usgs_rdb/rdb_rows.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {
namespace {

// Of "//RATING ID="20.0" TYPE="STGQ"" the ID; empty: no such line or key.
std::string_view fact(const RdbRows& rows, std::string_view subject, std::string_view key) {
  const std::string start = fmt::format("//{} ", subject), assigned = fmt::format(" {}=", key);
  for (const std::string_view line : rows.comments()) {
    const auto at = line.starts_with(start) ? line.find(assigned) : std::string_view::npos;
    if (at == std::string_view::npos) continue;
    std::string_view value = line.substr(at + assigned.size());
    const bool quoted = value.starts_with('"');
    if (quoted) value.remove_prefix(1);
    return trimmed(value.substr(0, value.find(quoted ? '"' : ' ')));
  }
  return {};
}

class RatingReader {
 public:
  explicit RatingReader(RdbRows& rows) : rows_(rows) {}

  // Why there is no rating in it, a phrase; empty: there is.
  std::string read() {
    const auto stage = rows_.column("INDEP"), flow = rows_.column("DEP");
    if (!stage || !flow) return "no columns INDEP and DEP, so no rating of stage to discharge";
    for (const auto step : {&RatingReader::check_kind, &RatingReader::take_interpolation})
      if (std::string wrong = (this->*step)(); !wrong.empty()) return wrong;
    while (rows_.next())
      if (std::string wrong = take_point(rows_.field(*stage), rows_.field(*flow)); !wrong.empty())
        return rows_.place() + ": " + wrong;
    if (out_.points.size() < 2) return fmt::format("{} points, too few for a rating", out_.points.size());
    return {};
  }
  [[nodiscard]] Rating rating() && { return std::move(out_); }

 private:
  // Feet and cubic feet per second, or it is not read.
  std::string check_kind() {
    const auto type = fact(rows_, "RATING", "TYPE"), stage = fact(rows_, "RATING_INDEP", "PARAMETER"),
               flow = fact(rows_, "RATING_DEP", "PARAMETER"), number = fact(rows_, "STATION", "NUMBER");
    if (type != "STGQ") return fmt::format("a rating of type \"{}\", not of stage to discharge (STGQ)", printable(type));
    if (stage.find("(ft)") == std::string_view::npos || flow.find("(ft^3/s)") == std::string_view::npos)
      return fmt::format("a rating of \"{}\" to \"{}\"; feet and ft^3/s are read", printable(stage), printable(flow));
    if (number.empty()) return "no station number (//STATION ... NUMBER=)";
    out_.station = station_key(fact(rows_, "STATION", "AGENCY"), number);
    out_.id = fact(rows_, "RATING", "ID");
    return {};
  }

  // The expanded table has its shift in the flows and not in the stages, so its offset no longer fits; a hundredth of a
  // foot apart, its rows are as good as a straight line.
  std::string take_interpolation() {
    out_.shifted = rows_.column("SHIFT").has_value();
    const std::string expansion = lower_case(fact(rows_, "RATING", "EXPANSION"));
    if (out_.shifted || expansion == "linear") return {};
    if (expansion != "logarithmic")
      return fmt::format("the interpolation \"{}\" is not known (//RATING EXPANSION=)", printable(expansion));
    out_.between = Rating::Between::Logarithmic;
    return take_offsets();
  }

  // OFFSET1 holds up to BREAKPOINT1, OFFSET2 from there on, and so forth.
  std::string take_offsets() {
    Stage from = Stage::from_si(std::numeric_limits<double>::lowest());
    for (int i = 1;; ++i) {
      const auto zero = number_in(fact(rows_, "RATING", fmt::format("OFFSET{}", i)));
      if (!zero) return fmt::format("no readable OFFSET{} for a logarithmic rating", i);
      out_.offsets.push_back({from, stage_feet(*zero)});
      const auto up_to = number_in(fact(rows_, "RATING", fmt::format("BREAKPOINT{}", i)));
      if (!up_to) break;
      from = stage_feet(*up_to);
    }
    const std::string one_more = fmt::format("OFFSET{}", out_.offsets.size() + 1);
    return number_in(fact(rows_, "RATING", one_more)) ? one_more + " without a breakpoint below it" : "";
  }

  std::string take_point(std::string_view stage_text, std::string_view flow_text) {
    if (!rows_.fault().empty()) return rows_.fault();
    const auto stage = number_in(stage_text), flow = number_in(flow_text);
    if (!stage || !flow || *flow < 0.0)
      return fmt::format("\"{}\" and \"{}\" are no stage and discharge", printable(stage_text), printable(flow_text));
    const RatingPoint point{stage_feet(*stage), cubic_feet_per_second(*flow)};
    if (!out_.points.empty() && !(out_.points.back().stage < point.stage)) return "the stage does not rise";
    if (!out_.points.empty() && out_.points.back().flow > point.flow)
      return "the discharge falls while the stage rises";
    out_.points.push_back(point);
    return {};
  }

  RdbRows& rows_;
  Rating out_;
};

}  // namespace

Result<Rating> read_usgs_rdb_rating(std::string_view bytes, const std::string& where) {
  auto rows = RdbRows::begin(bytes, where);
  if (!rows) return tl::unexpected(rows.error());
  RatingReader reader(*rows);
  if (const std::string wrong = reader.read(); !wrong.empty())
    return tl::unexpected(Failure{where + ": " + wrong, kExitBadData});
  return std::move(reader).rating();
}

}  // namespace floatwright
