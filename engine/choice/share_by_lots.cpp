#include <algorithm>

#include "engine/choice/share_out.hpp"

namespace floatwright {
namespace {

constexpr double kMore = 1e-9;  // min; less than that is the same

// Who has which rods; those that nobody has are in the rack.
class Holders {
 public:
  explicit Holders(const Sharing& sharing) : sharing_(sharing), held_(sharing.most.size()), worth_(held_.size(), 0.0) {
    for (std::size_t rod = 0; rod < sharing.rods; ++rod) rack_.push_back(rod);
  }
  [[nodiscard]] std::size_t boats() const { return held_.size(); }
  [[nodiscard]] const RodNumbers& of(std::size_t boat) const { return held_[boat]; }
  [[nodiscard]] const RodNumbers& rack() const { return rack_; }
  [[nodiscard]] const std::vector<RodNumbers>& in_boats() const { return held_; }

  // What the boat would have more with one rod more; nothing where it is full.
  [[nodiscard]] double gain(std::size_t boat, std::size_t rod) const {
    return held_[boat].size() < sharing_.most[boat] ? worth_of(boat, with(boat, rod)) - worth_[boat] : 0.0;
  }
  void give(std::size_t boat, std::size_t rod) { give_anew({boat}, {with(boat, rod)}); }

  // To each of the boats what is named for it, where that makes them worth more together; what they had and are not given
  // is put into the rack.
  bool give_anew(const std::vector<std::size_t>& boats, const std::vector<RodNumbers>& given) {
    std::vector<double> worth;
    double more = 0.0;
    for (std::size_t i = 0; i < boats.size(); ++i) {
      worth.push_back(worth_of(boats[i], given[i]));
      more += worth[i] - worth_[boats[i]];
    }
    if (more <= kMore) return false;
    for (const std::size_t boat : boats) rack_.insert(rack_.end(), held_[boat].begin(), held_[boat].end());
    for (std::size_t i = 0; i < boats.size(); ++i) {
      for (const std::size_t rod : given[i]) std::erase(rack_, rod);
      held_[boats[i]] = given[i];
      worth_[boats[i]] = worth[i];
    }
    std::ranges::sort(rack_);
    return true;
  }

 private:
  [[nodiscard]] RodNumbers with(std::size_t boat, std::size_t rod) const {
    RodNumbers rods = held_[boat];
    rods.insert(std::ranges::lower_bound(rods, rod), rod);
    return rods;
  }
  [[nodiscard]] double worth_of(std::size_t boat, const RodNumbers& rods) const {
    return rods.empty() ? 0.0 : sharing_.worth(boat, rods);
  }

  const Sharing& sharing_;
  std::vector<RodNumbers> held_;
  std::vector<double> worth_;
  RodNumbers rack_;
};

// The rod of the rack that brings most in any boat goes into it, again and again; of equals to the boat with fewer rods.
void hand_out_best_first(Holders& holders, const Sharing& sharing) {
  std::vector<std::vector<double>> gains(holders.boats(), std::vector<double>(sharing.rods));
  const auto look = [&](std::size_t boat) {
    for (const std::size_t rod : holders.rack()) gains[boat][rod] = holders.gain(boat, rod);
  };
  for (std::size_t boat = 0; boat < holders.boats(); ++boat) look(boat);
  while (true) {
    std::size_t to = holders.boats(), best = 0;
    for (std::size_t boat = 0; boat < holders.boats(); ++boat) {
      for (const std::size_t rod : holders.rack()) {
        const bool first = to == holders.boats();
        const bool fewer = !first && holders.of(boat).size() < holders.of(to).size();
        if (gains[boat][rod] <= (first ? 0.0 : gains[to][best]) + (fewer ? -kMore : kMore)) continue;
        if (gains[boat][rod] > kMore) to = boat, best = rod;
      }
    }
    if (to == holders.boats()) return;
    holders.give(to, best);
    look(to);
  }
}

struct Lot {
  std::vector<std::size_t> boats;
  RodNumbers rods;
};

// Every so many boats from one on, as long as their rods fit; then from the rack what can bring most to one of them.
Lot lot_from(const Holders& holders, const Sharing& sharing, std::size_t first, std::size_t stride, std::size_t at_once) {
  Lot lot;
  for (std::size_t boat = first; std::ranges::find(lot.boats, boat) == lot.boats.end(); boat = (boat + stride) % holders.boats()) {
    if (lot.rods.size() + holders.of(boat).size() > at_once) break;
    lot.boats.push_back(boat);
    lot.rods.insert(lot.rods.end(), holders.of(boat).begin(), holders.of(boat).end());
  }
  const auto brings = [&](std::size_t rod) {
    double most = 0.0;
    for (const std::size_t boat : lot.boats) most = std::max(most, sharing.at_most(boat, {rod}));
    return most;
  };
  RodNumbers rack = holders.rack();
  std::ranges::stable_sort(rack, std::ranges::greater{}, brings);
  rack.resize(std::min(rack.size(), at_once - lot.rods.size()));
  lot.rods.insert(lot.rods.end(), rack.begin(), rack.end());
  std::ranges::sort(lot.rods);
  return lot;
}

bool share_anew(Holders& holders, const Sharing& sharing, const Lot& lot) {
  const auto named = [&](const RodNumbers& places) {
    RodNumbers rods;
    for (const std::size_t place : places) rods.push_back(lot.rods[place]);
    return rods;
  };
  Sharing part{lot.rods.size(), {}, {}, {}};
  for (const std::size_t boat : lot.boats) part.most.push_back(sharing.most[boat]);
  part.worth = [&](std::size_t i, const RodNumbers& set) { return sharing.worth(lot.boats[i], named(set)); };
  part.at_most = [&](std::size_t i, const RodNumbers& set) { return sharing.at_most(lot.boats[i], named(set)); };
  std::vector<RodNumbers> given;
  for (const RodNumbers& places : shared_exactly(part)) given.push_back(named(places));
  return holders.give_anew(lot.boats, given);
}

}  // namespace

std::vector<RodNumbers> shared_by_lots(const Sharing& sharing, std::size_t at_once) {
  Holders holders(sharing);
  hand_out_best_first(holders, sharing);
  bool better = true;
  while (better) {
    better = false;
    for (std::size_t stride = 1; stride <= holders.boats() / 2 + 1; ++stride)
      for (std::size_t boat = 0; boat < holders.boats(); ++boat)
        better = share_anew(holders, sharing, lot_from(holders, sharing, boat, stride, at_once)) || better;
  }
  return holders.in_boats();
}

}  // namespace floatwright
