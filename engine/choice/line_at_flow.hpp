#pragma once
// Whether a line still is the one to use in the water at another flow. From tables where there are some, whose seconds
// are wrong by a twentieth at most, nearly always: what that leaves open is worked out, one cast after the other, until
// it is told.
#include <array>
#include <optional>
#include <vector>

#include "engine/choice/flows_ahead.hpp"

namespace floatwright {

enum class LineThere { Holds, Changes, Unknown };

class LineAtFlow {
 public:
  // What is handed in outlives it.
  LineAtFlow(const LineAsked& asked, SceneAtFlow& here, FlowsAhead& ahead);

  [[nodiscard]] LineThere finding() const { return finding_; }
  // Where it changes: all that takes over, with what it has over the line in use, fished in its best way; and the one
  // to change to.
  [[nodiscard]] std::vector<Foregone> ratios();
  [[nodiscard]] ScoredRig advised();

 private:
  struct Rival {
    const Way* way;
    bool is_read = false, is_worked_out = false;
    std::optional<ScoredRig> scored{};
  };
  [[nodiscard]] std::optional<ScoredRig> read(const Way& way) const;
  void work_out(Rival& rival);
  void read_ways_in_use();
  [[nodiscard]] bool may_take_over(Rival& rival, const ScoredRig& in_use, double leeway) const;
  [[nodiscard]] std::vector<Rival*> challengers(const ScoredRig& in_use, double leeway);
  [[nodiscard]] bool takes_over(const ScoredRig& rig, const ScoredRig& in_use, double leeway) const;
  [[nodiscard]] bool surely_holds();
  [[nodiscard]] bool holds_in_some_way();
  [[nodiscard]] bool some_takes_over();
  [[nodiscard]] std::vector<ScoredRig> better();
  [[nodiscard]] LineThere found();

  const LineAsked* asked_;
  SceneAtFlow* here_;
  FlowsAhead* ahead_;
  bool on_tables_;
  double leeway_;  // of what is read
  std::array<double, kMethods> most_worth_{};
  std::vector<Rival> ways_, rivals_;  // of the line in use, by seconds; of others
  ScoredRig in_use_;                  // the best way known of it
  LineThere finding_;
};

}  // namespace floatwright
