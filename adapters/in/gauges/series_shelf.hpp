#pragma once
// Sorts the rows of one answer by series: each series by time, one row an instant, and says what it dropped.
// Of rows of one instant that differ the one written last is kept: by its own date of change where the service gives
// one, else the later in the answer. Rows that come in order are neither sorted nor copied.
#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "engine/readings/reading.hpp"

namespace floatwright {

class SeriesShelf {
 public:
  // Index of the series with the same station, id, variable, daily and issue; a new one, without rows, where there is
  // none.
  std::size_t place_for(const GaugeSeries& head);
  [[nodiscard]] GaugeSeries& at(std::size_t index) { return series_[index].head; }

  void add(std::size_t index, const Reading& row, std::optional<Instant> changed = std::nullopt);
  // What could not be read, counted by `what` and `why`: one sentence, a doubt, naming the first place (may be empty;
  // asked for only of the first, as finding a line in a long text takes long).
  // Only the first few reasons of a `what` are told apart: a text of 20 MB can hold a wrong word of its own in each
  // row.
  void leave_out(const std::string& what, const std::string& why, const std::string& place, std::size_t rows = 1);
  void leave_out(const std::string& what, const std::string& why, const std::function<std::string()>& place,
                 std::size_t rows = 1);
  // What is sound and not needed: one sentence for each `what`.
  void not_used(const std::string& what, std::size_t rows = 1) { not_used_[what] += rows; }
  void remark(const std::string& sentence) { remarks_.insert(sentence); }
  void doubt(std::string sentence) { doubts_.push_back(std::move(sentence)); }

  [[nodiscard]] std::size_t size() const { return series_.size(); }
  [[nodiscard]] GaugeAnswer answer() &&;

 private:
  struct Shelved {
    GaugeSeries head;
    std::vector<Instant> changed;  // by row of head.readings; empty: not told of any
  };
  struct LeftOut {
    std::size_t rows = 0;
    std::string first_place;
  };

  static void put_in_order(Shelved& shelved, GaugeAnswer& told);

  std::vector<Shelved> series_;
  std::map<std::pair<std::string, std::string>, std::size_t> index_;  // by station and the rest of the key
  std::map<std::string, std::map<std::string, LeftOut>> left_out_;    // by what and why
  std::map<std::string, std::size_t> not_used_;                       // rows by what
  std::set<std::string> remarks_;
  std::vector<std::string> doubts_;
};

}  // namespace floatwright
