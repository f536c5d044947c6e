#pragma once
// The rows of one sensor of the older service, kept as small as they can be until the entry around them ends: only then
// is it sure which unit and which missing code hold for them, and whether they are dates, whatever the order of the
// keys.
#include <cstddef>
#include <cstdint>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {

class LegacyBlock {
 public:
  std::string place, method_id, sensor;
  bool begins_with_a_date = false;  // a date at midnight without a zone is a daily label, whatever the statistic says

  void take(const JsonValue& time, const JsonValue& value, const JsonValue& qualifiers);
  [[nodiscard]] std::size_t size() const { return size_; }
  void shelve(SeriesShelf& shelf, std::size_t at, const UnitLine& unit, std::span<const double> no_data) const;

 private:
  struct Row {
    Instant local{};
    double number = 0.0;
    std::int32_t east_s = 0;
    Marks marks;
    bool has_zone = false, has_number = false;
  };
  struct Trouble {
    std::string why, place;  // below the list of values
  };
  // Of times that some kind of series can't have.
  struct BadTimes {
    std::size_t rows = 0, first = 0;
    std::string first_text;
    void add(std::size_t row, const std::string& text);
  };

  void leave_out(SeriesShelf& shelf, std::size_t at, const BadTimes& bad) const;

  std::vector<Row> rows_;
  std::vector<Trouble> troubles_;
  BadTimes unreadable_, without_zone_, not_midnight_;
  std::set<std::string> unknown_codes_;
  std::string last_codes_;
  Marks last_marks_;
  std::size_t size_ = 0;
};

}  // namespace floatwright
