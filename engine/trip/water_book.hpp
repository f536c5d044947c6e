#pragma once
// Every water met and scored once: stretches share reaches, and a water at the same half hour is the same water, but for
// what a rise forbids. Boats whose people fish alike share a book; threads may read in it at once.
#include <map>
#include <mutex>
#include <tuple>

#include "engine/trip/met_water.hpp"

namespace floatwright {

struct ScoredWater {
  MetWater met;
  std::vector<ScoredRig> scored;  // empty where nothing can be chosen
};

// A water met at an hour; `water` is an index into waters_of the passage.
struct WaterAtHour {
  const Passage& passage;
  std::size_t water;
  Instant read_at;
};

enum class Scored {
  OnTables,   // as ranked_rigs(): to compare stretches by
  WorkedOut,  // as scored_rigs(): to choose by
};

class WaterBook {
 public:
  explicit WaterBook(const RiverDay& day) : day_(day) {}
  [[nodiscard]] const ScoredWater& at(const WaterAtHour& where, Scored how);

 private:
  using Key = std::tuple<RiverPlace, RiverPlace, std::size_t, Instant, bool, Scored>;
  struct Page {
    std::once_flag written;
    ScoredWater water;
  };
  Page& page(const Key& key);
  [[nodiscard]] ScoredWater ranked(const WaterAtHour& where) const;
  [[nodiscard]] ScoredWater worked_out(const WaterAtHour& where);
  const RiverDay& day_;
  std::mutex turning_;
  std::map<Key, Page> pages_;
};

}  // namespace floatwright
