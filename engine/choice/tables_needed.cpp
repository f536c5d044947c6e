#include "engine/choice/tables_needed.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "engine/choice/limits.hpp"
#include "engine/choice/techniques.hpp"

namespace floatwright {
namespace {

double pace_of(Platform platform, const DriftLimits& limits) { return 1.0 - hold(platform, limits); }

// A boat that moves goes at its own share of the stream, or, over a bank, eddy or pocket that is fished from the thread
// beside it, at any pace at which there is something to strip.
std::set<double> paces_on(const std::vector<Platform>& platforms, Method method, const Judgement& judgement) {
  const DriftLimits limits = drift_limits(judgement);
  std::set<double> paces;
  for (const Platform platform : platforms)
    if (stands(platform)) paces.insert(pace_of(platform, limits));
  if (method == Method::Strip && !std::ranges::all_of(platforms, stands))
    paces.insert(
        {pace_of(Platform::Held, limits), pace_of(Platform::Drifting, limits), judgement.boat.most_strip_pace});
  return paces;
}

// Ways of fishing it at a pace, whatever platform goes so fast.
std::vector<Technique> ways_at(double pace, Method method, LineKind kind, const Judgement& judgement) {
  return techniques(method, kind, Platform::Anchored, pace, judgement);
}

class Orders {
 public:
  explicit Orders(TablesNeeded& needed) : needed_(needed) {
    for (std::size_t i = 0; i < needed.orders.size(); ++i) known_.emplace(needed.orders[i].physics, i);
  }
  void add(TableOrder order, Method method) {
    const auto [known, is_new] = known_.emplace(order.physics, needed_.orders.size());
    needed_.uses.push_back({order.rig, method, order.cast, known->second});
    if (is_new) needed_.orders.push_back(std::move(order));
  }

 private:
  TablesNeeded& needed_;
  std::map<std::vector<double>, std::size_t> known_;
};

}  // namespace

void add_tables_needed(TablesNeeded& needed, const Tackle& tackle, const Preferences& preferences,
                       const std::vector<Platform>& platforms, const Judgement& judgement) {
  const DriftLimits limits = drift_limits(judgement);
  Orders orders(needed);
  for (const auto& [method, preference] : preferences.methods) {
    if (preference <= 0.0 || (method != Method::Swing && method != Method::Strip)) continue;
    for (const Rig& rig : rigs_for(tackle, method)) {
      const LineKind kind = tackle.lines[rig.line].kind;
      const Length cast = cast_length(kind, preferences, judgement.techniques);
      for (const double pace : paces_on(platforms, method, judgement)) {
        auto order = table_order(tackle, rig, cast, pace, ways_at(pace, method, kind, judgement), limits);
        if (order) orders.add(std::move(order.value()), method);
      }
    }
  }
}

}  // namespace floatwright
