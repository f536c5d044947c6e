#include <algorithm>
#include <array>

#include "engine/choice/share_out.hpp"

namespace floatwright {
namespace {

constexpr double kMore = 1e-9;  // min; less than that is the same
constexpr int kMostRounds = 50;
constexpr std::size_t kMostSharedAnew = 8;  // rods

// Who has which rods. The rack is the last holder: it takes all and makes nothing of them.
class Holders {
 public:
  explicit Holders(const Sharing& sharing) : sharing_(sharing), held_(sharing.most.size() + 1), worth_(held_.size(), 0.0) {
    for (std::size_t rod = 0; rod < sharing.rods; ++rod) held_.back().push_back(rod);
  }
  [[nodiscard]] std::size_t boats() const { return sharing_.most.size(); }
  [[nodiscard]] std::size_t rack() const { return boats(); }
  [[nodiscard]] const RodNumbers& of(std::size_t holder) const { return held_[holder]; }
  [[nodiscard]] bool has_room(std::size_t holder) const {
    return holder == rack() || held_[holder].size() < sharing_.most[holder];
  }
  [[nodiscard]] std::vector<RodNumbers> in_boats() const { return {held_.begin(), held_.end() - 1}; }

  // What a holder would have more without one rod and with another; `none` for neither.
  static constexpr std::size_t none = static_cast<std::size_t>(-1);
  [[nodiscard]] double gain(std::size_t holder, std::size_t without, std::size_t with) const {
    if (holder == rack()) return 0.0;
    return worth_of(holder, changed(holder, without, with)) - worth_[holder];
  }
  void change(std::size_t holder, std::size_t without, std::size_t with) {
    held_[holder] = changed(holder, without, with);
    if (holder != rack()) worth_[holder] = worth_of(holder, held_[holder]);
  }

  // Where that makes both together worth more; what neither gets is left in the rack.
  bool divide(std::size_t one, const RodNumbers& to_one, std::size_t other, const RodNumbers& to_other) {
    const double first = worth_of(one, to_one), second = worth_of(other, to_other);
    if (first + second <= worth_[one] + worth_[other] + kMore) return false;
    RodNumbers& on_rack = held_.back();
    for (const std::size_t boat : {one, other}) on_rack.insert(on_rack.end(), held_[boat].begin(), held_[boat].end());
    std::ranges::sort(on_rack);
    for (const RodNumbers& rods : {to_one, to_other})
      for (const std::size_t rod : rods) std::erase(on_rack, rod);
    held_[one] = to_one, worth_[one] = first;
    held_[other] = to_other, worth_[other] = second;
    return true;
  }

 private:
  [[nodiscard]] RodNumbers changed(std::size_t holder, std::size_t without, std::size_t with) const {
    RodNumbers rods = held_[holder];
    std::erase(rods, without);
    if (with != none) rods.insert(std::ranges::lower_bound(rods, with), with);
    return rods;
  }
  [[nodiscard]] double worth_of(std::size_t boat, const RodNumbers& rods) const {
    return rods.empty() ? 0.0 : sharing_.worth(boat, rods);
  }

  const Sharing& sharing_;
  std::vector<RodNumbers> held_;
  std::vector<double> worth_;
};

// The rod of the rack that brings most in any boat goes into it, again and again; of equals to the boat with fewer rods.
void hand_out_best_first(Holders& holders, const Sharing& sharing) {
  std::vector<std::vector<double>> gains(holders.boats(), std::vector<double>(sharing.rods));
  const auto look = [&](std::size_t boat) {
    for (const std::size_t rod : holders.of(holders.rack()))
      gains[boat][rod] = holders.has_room(boat) ? holders.gain(boat, Holders::none, rod) : 0.0;
  };
  for (std::size_t boat = 0; boat < holders.boats(); ++boat) look(boat);
  while (true) {
    std::size_t to = holders.rack(), best = 0;
    for (std::size_t boat = 0; boat < holders.boats(); ++boat) {
      for (const std::size_t rod : holders.of(holders.rack())) {
        const double most = to == holders.rack() ? 0.0 : gains[to][best];
        const bool fewer = to != holders.rack() && holders.of(boat).size() < holders.of(to).size();
        if (gains[boat][rod] <= most + (fewer ? -kMore : kMore) || gains[boat][rod] <= kMore) continue;
        to = boat, best = rod;
      }
    }
    if (to == holders.rack()) return;
    holders.change(holders.rack(), best, Holders::none);
    holders.change(to, Holders::none, best);
    look(to);
  }
}

// One rod of the rack for one of the boat's, or for nothing; the first such trade that makes the boat's worth more.
bool trade_with_rack(Holders& holders, std::size_t boat) {
  RodNumbers back = holders.of(boat);
  if (holders.has_room(boat)) back.push_back(Holders::none);
  for (const std::size_t rod : RodNumbers{holders.of(holders.rack())}) {
    for (const std::size_t other : back) {
      if (holders.gain(boat, other, rod) <= kMore) continue;
      holders.change(holders.rack(), rod, other);
      holders.change(boat, other, rod);
      return true;
    }
  }
  return false;
}

// What the two boats hold, and the rack where that is little, shared out anew between them as well as can be.
bool share_anew(Holders& holders, const Sharing& sharing, std::size_t one, std::size_t other) {
  RodNumbers lot = holders.of(one);
  lot.insert(lot.end(), holders.of(other).begin(), holders.of(other).end());
  const RodNumbers& rack = holders.of(holders.rack());
  if (lot.size() + rack.size() <= kMostSharedAnew) lot.insert(lot.end(), rack.begin(), rack.end());
  if (lot.size() > kMostSharedAnew) return false;
  std::ranges::sort(lot);
  const std::array<std::size_t, 2> boats{one, other};
  const auto named = [&](const RodNumbers& places) {
    RodNumbers rods;
    for (const std::size_t place : places) rods.push_back(lot[place]);
    return rods;
  };
  const auto given = shared_exactly({lot.size(), {sharing.most[one], sharing.most[other]},
                                     [&](std::size_t i, const RodNumbers& set) { return sharing.worth(boats[i], named(set)); }});
  return holders.divide(one, named(given[0]), other, named(given[1]));
}

}  // namespace

std::vector<RodNumbers> shared_by_trading(const Sharing& sharing) {
  Holders holders(sharing);
  hand_out_best_first(holders, sharing);
  bool traded = true;
  for (int round = 0; traded && round < kMostRounds; ++round) {
    traded = false;
    for (std::size_t one = 0; one < holders.boats(); ++one) {
      traded = trade_with_rack(holders, one) || traded;
      for (std::size_t other = one + 1; other < holders.boats(); ++other)
        traded = share_anew(holders, sharing, one, other) || traded;
    }
  }
  return holders.in_boats();
}

}  // namespace floatwright
