#pragma once
// Every water met and scored once: stretches share reaches, and a water at the same half hour is the same water. Boats
// whose people fish alike share a book; threads may read in it at once.
#include <map>
#include <mutex>
#include <tuple>

#include "engine/trip/met_water.hpp"

namespace floatwright {

struct ScoredWater {
  MetWater met;
  std::vector<ScoredRig> scored;  // empty where nothing can be chosen
};

class WaterBook {
 public:
  explicit WaterBook(const RiverDay& day) : day_(day) {}
  // `water`: index into waters_of the passage.
  [[nodiscard]] const ScoredWater& at(const Passage& passage, std::size_t water, Instant read_at);

 private:
  using Key = std::tuple<RiverPlace, RiverPlace, std::size_t, Instant>;
  struct Page {
    std::once_flag written;
    ScoredWater water;
  };
  Page& page(const Key& key);
  const RiverDay& day_;
  std::mutex turning_;
  std::map<Key, Page> pages_;
};

}  // namespace floatwright
