#pragma once
// The tables of a box of tackle: which are needed, and, once they are there, which one a rig reads.
#include <map>
#include <span>
#include <tuple>
#include <vector>

#include "engine/sinking/table_order.hpp"

namespace floatwright {

// Orders, each once, and the rigs that read them.
struct TablesNeeded {
  struct Use {
    Rig rig;
    Method method = Method::Swing;
    Length cast;
    std::size_t order = 0;
  };
  std::vector<TableOrder> orders;
  std::vector<Use> uses;
};

class FishingTables {
 public:
  // `sets` by order.
  FishingTables(TablesNeeded needed, std::vector<TableSet> sets);

  // The same number for rigs that the water cannot tell apart; none for those without tables.
  [[nodiscard]] std::optional<std::size_t> build(const Rig& rig, Method method, Length cast) const;

  // The cast read from the tables, in a line between the two paces beside the boat's; beyond the last the last. None
  // where there is no table to read it from, so that it is to be worked out: another rig, technique or cast.
  [[nodiscard]] std::optional<CastPath> cast(const Rig& rig, const Technique& technique, Length cast, double pace,
                                             const GridPoint& at) const;
  // The same in water of several temperatures, `at` but for how much warmer it is than the tables; empty where there is
  // none.
  [[nodiscard]] std::vector<CastPath> casts(const Rig& rig, const Technique& technique, Length cast, double pace,
                                            const GridPoint& at, std::span<const double> warmer_c) const;

 private:
  using Key = std::tuple<Method, std::size_t, std::optional<std::size_t>, std::size_t, Mass, Length>;
  static Key key(const Rig& rig, Method method, Length cast) {
    return {method, rig.line, rig.tip, rig.fly, rig.shot, cast};
  }
  [[nodiscard]] const FishingTable* table(std::size_t order, const Technique& technique) const;
  TablesNeeded needed_;
  std::vector<TableSet> sets_;
  std::map<Key, std::map<double, std::size_t>> orders_by_pace_;
};

}  // namespace floatwright
