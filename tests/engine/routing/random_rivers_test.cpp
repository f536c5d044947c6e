// What holds for river_flows on any river a person could type: drawn rivers with tributaries, ditches, side channels,
// dams, lakes and gauges of which some are silent.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>

#include "small_river.hpp"

namespace floatwright {
namespace {

using Deal = std::mt19937_64;

double even(Deal& deal, double low, double high) { return std::uniform_real_distribution(low, high)(deal); }
bool one_in(Deal& deal, int n) { return std::uniform_int_distribution(1, n)(deal) == 1; }
std::size_t up_to(Deal& deal, std::size_t most) { return std::uniform_int_distribution<std::size_t>(0, most)(deal); }

// Places half a mile apart, each given out once.
class Miles {
 public:
  explicit Miles(Deal& deal) {
    for (int i = 1; i < 80; ++i) left_.push_back(i / 2.0);
    std::ranges::shuffle(left_, deal);
  }
  double next() {
    const double mile = left_.back();
    left_.pop_back();
    return mile;
  }

 private:
  std::vector<double> left_;
};

void add_works(River& river, Miles& miles, Deal& deal) {
  for (std::size_t i = 0, n = up_to(deal, 2); i < n; ++i) {
    Dam dam = heron_dam();
    dam.id = "dam" + std::to_string(i);
    dam.place = river_mile(miles.next());
    if (one_in(deal, 2))
      dam.schedule = {{kNow - std::chrono::hours{200}, cubic_metres_per_second(even(deal, 10, 60))},
                      {kNow + std::chrono::hours{5}, cubic_metres_per_second(even(deal, 10, 60))}};
    river.dams.push_back(dam);
  }
  for (std::size_t i = 0, n = up_to(deal, 2); i < n; ++i) {
    const double a = miles.next(), b = miles.next();
    river.side_channels.push_back({"side" + std::to_string(i),
                                   "Side",
                                   river_mile(std::max(a, b)),
                                   river_mile(std::min(a, b)),
                                   {{cubic_metres_per_second(20), even(deal, 0.0, 0.4)}}});
  }
  for (std::size_t i = 0, n = up_to(deal, 2); i < n; ++i)
    river.diversions.push_back({"ditch" + std::to_string(i), "Ditch", river_mile(miles.next()),
                                cubic_metres_per_second(std::exp(even(deal, -1, 4))), std::nullopt});
  if (one_in(deal, 3)) {
    const double a = miles.next(), b = miles.next();
    Lake lake;
    lake.from = river_mile(std::max(a, b));
    lake.to = river_mile(std::min(a, b));
    river.lakes = {lake};
    if (one_in(deal, 2)) river.wave_times = {{*lake.from, *lake.to, cubic_metres_per_second(30), hours(6)}};
  }
}

River drawn_river(Deal& deal) {
  River river = bare_river();
  river.gauges.clear();
  river.accesses = {access_at("top", 40.0), access_at("mouth", 0.0)};
  river.notes = {note_between(40.0, 0.0)};
  Miles miles(deal);
  for (std::size_t i = 0, n = up_to(deal, 4); i < n; ++i)
    river.accesses.push_back(access_at("access" + std::to_string(i), miles.next()));
  const bool areas = one_in(deal, 2);
  for (std::size_t i = 0, n = 1 + up_to(deal, 3); i < n; ++i) {
    const double mile = miles.next();
    river.gauges.push_back(gauge_site("gauge" + std::to_string(i), mile, areas ? 900 - 10 * mile : 0));
  }
  for (std::size_t i = 0, n = up_to(deal, 3); i < n; ++i) {
    const std::string gauge = one_in(deal, 2) ? "creek_gauge" + std::to_string(i) : "";
    if (!gauge.empty()) river.gauges.push_back(gauge_site(gauge, std::nullopt, even(deal, 50, 70)));
    river.tributaries.push_back({"creek" + std::to_string(i), "Creek " + std::to_string(i), river_mile(miles.next()),
                                 one_in(deal, 3) ? std::nullopt : std::optional{square_miles(even(deal, 40, 400))},
                                 gauge});
  }
  add_works(river, miles, deal);
  return river;
}

GaugeOutlook drawn_outlook(const GaugeSite& gauge, Deal& deal) {
  if (one_in(deal, 5)) return silent(gauge.id);
  const double base = gauge.place ? even(deal, 15, 80) : even(deal, 0, 8), swing = even(deal, 0, 0.5);
  return outlook_of(
      gauge.id, [=](double h) { return base * (1.0 + swing * std::sin(h / 4.0)); }, even(deal, 0, 0.6),
      one_in(deal, 4) ? FlowMethod::SameHour : FlowMethod::Hold);
}

struct Drawn {
  River river;
  std::vector<GaugeOutlook> outlooks;
};
struct DrawnRun : Drawn, Routed {};

// Each computed once for all tests here.
const std::vector<DrawnRun>& runs() {
  static const std::vector<DrawnRun> kRuns = [] {
    std::vector<DrawnRun> all;
    for (unsigned seed = 0; seed < 30; ++seed) {
      Deal deal(seed);
      Drawn d{drawn_river(deal), {}};
      for (const GaugeSite& gauge : d.river.gauges) d.outlooks.push_back(drawn_outlook(gauge, deal));
      Routed run = run_of(d.river, d.outlooks);
      all.push_back({std::move(d), std::move(run)});
    }
    return all;
  }();
  return kRuns;
}

TEST(RandomRivers, HaveNoNegativeFlowInAnyCase) {
  std::size_t known = 0;
  for (const DrawnRun& run : runs()) {
    known += static_cast<std::size_t>(std::ranges::count(run.flows.known, true));
    for (const FlowRows* rows : {&run.flows.flow.low, &run.flows.flow.middle, &run.flows.flow.high})
      for (const auto& row : *rows)
        for (const Discharge q : row) ASSERT_TRUE(q.si() >= 0.0 && std::isfinite(q.si()));
  }
  EXPECT_GT(known, runs().size() * 3);
}

// Beside a side channel a gauge sees the main thread, whose share is another in each case.
bool in_one_thread(const DrawnRun& run, RiverPlace place) {
  return std::ranges::none_of(run.river.side_channels,
                              [&](const SideChannel& side) { return side.leaves > place && side.returns <= place; });
}
// There the outlook stands, so the cases lie as it has them.
TEST(RandomRivers, ShowAtEveryGaugeItsOwnOutlookInOrder) {
  std::size_t looked_at = 0;
  for (const DrawnRun& run : runs()) {
    for (std::size_t g = 0; g < run.river.gauges.size(); ++g) {
      const auto reach = run.graph.gauge_reach[g];
      if (!reach || !run.outlooks[g].flow || run.flows.follows_dam[g]) continue;
      if (run.flows.source[*reach].origin != FlowOrigin::At || !in_one_thread(run, *run.river.gauges[g].place))
        continue;
      const PerCase<Discharge> flow = flow_at(run.flows, *reach, kNow + std::chrono::hours{9});
      EXPECT_NEAR(flow.middle.si(), run.outlooks[g].flow->middle[105].si(), 1e-9);
      EXPECT_LE(flow.low, flow.middle);
      EXPECT_LE(flow.middle, flow.high);
      ++looked_at;
    }
  }
  EXPECT_GT(looked_at, runs().size() / 2);
}

template <class T>
void shuffle(std::vector<T>& list, unsigned seed) {
  Deal deal(seed);
  std::ranges::shuffle(list, deal);
}
// The gauges and their outlooks change places together.
Drawn dealt_anew(Drawn d, unsigned seed) {
  shuffle(d.river.gauges, seed);
  shuffle(d.outlooks, seed);
  shuffle(d.river.accesses, seed);
  shuffle(d.river.tributaries, seed);
  shuffle(d.river.side_channels, seed);
  shuffle(d.river.diversions, seed);
  shuffle(d.river.dams, seed);
  return d;
}
std::map<std::string, std::vector<Discharge>> by_id(const Routed& run) {
  std::map<std::string, std::vector<Discharge>> flows;
  for (std::size_t r = 0; r < run.graph.reaches.size(); ++r) {
    const Reach& reach = run.graph.reaches[r];
    flows.emplace(reach.id, run.flows.known[r] ? run.flows.flow.high[r] : std::vector<Discharge>{});
  }
  return flows;
}
TEST(RandomRivers, DoNotDependOnTheOrderOfTheListsInTheFile) {
  for (unsigned seed = 0; seed < runs().size(); ++seed) {
    const Drawn anew = dealt_anew(runs()[seed], seed + 1000);
    const auto one = by_id(runs()[seed]), other = by_id(run_of(anew.river, anew.outlooks));
    ASSERT_EQ(one.size(), other.size()) << "river " << seed;
    for (const auto& [id, flow] : one) {
      const auto& again = other.at(id);
      ASSERT_EQ(flow.size(), again.size()) << id << ", river " << seed;
      for (std::size_t i = 0; i < flow.size(); ++i)
        ASSERT_NEAR(flow[i].si(), again[i].si(), 1e-9) << id << ", river " << seed;
    }
  }
}

GaugeOutlook flood(const std::string& gauge, const TimeGrid& grid, double base, double peak, double at_step) {
  GaugeOutlook outlook = silent(gauge);
  PerCase<std::vector<Discharge>> flow;
  for (std::size_t i = 0; i < grid.count; ++i) {
    const double t = (static_cast<double>(i) - at_step) / 20.0, q = base + peak * std::exp(-t * t);
    flow.low.push_back(cubic_metres_per_second(0.7 * q));
    flow.middle.push_back(cubic_metres_per_second(q));
    flow.high.push_back(cubic_metres_per_second(1.5 * q));
  }
  outlook.flow = std::move(flow);
  outlook.forecast_from = kNow;
  return outlook;
}
double sum_of(const std::vector<Discharge>& flow) {
  double sum = 0.0;
  for (const Discharge q : flow) sum += q.si();
  return sum;
}

// A flood passes while the river is steady before and after: what passed the gauge and what joined, less what was
// taken, comes out at the mouth.
TEST(RandomRivers, BalanceBelowAGaugeToRoundOffInEachCase) {
  const TimeGrid grid{kNow - std::chrono::hours{150}, std::chrono::minutes{15}, 960};
  for (unsigned seed = 0; seed < 10; ++seed) {
    Deal deal(seed);
    River river = bare_river(0, 0);
    river.gauges = {gauge_site("heron", 45.2, 0), gauge_site("alder", std::nullopt, 0)};
    river.tributaries = {{"alder", "Alder Creek", river_mile(even(deal, 30, 40)), std::nullopt, "alder"}};
    river.diversions = {{"ditch", "Ditch", river_mile(even(deal, 30, 40)), cubic_metres_per_second(3), std::nullopt}};
    for (int i = 0; i < 6; ++i) river.accesses.push_back(access_at("more", even(deal, 24, 45)));
    const RiverGraph graph = river_graph(river);
    const std::vector<GaugeOutlook> outlooks{flood("heron", grid, 40, even(deal, 5, 90), 150),
                                             flood("alder", grid, 6, even(deal, 1, 20), 200)};
    const RiverFlows flows = river_flows(river, graph, outlooks, grid, kNow);
    const std::size_t mouth = *graph.at(river_mile(22.5));
    const auto balances = [&](const FlowRows& rows, const std::vector<Discharge>& heron,
                              const std::vector<Discharge>& alder) {
      const double entered = sum_of(heron) + sum_of(alder) - 3.0 * static_cast<double>(grid.count);
      EXPECT_NEAR(sum_of(rows[mouth]), entered, 1e-9 * entered) << "river " << seed;
    };
    balances(flows.flow.low, outlooks[0].flow->low, outlooks[1].flow->low);
    balances(flows.flow.middle, outlooks[0].flow->middle, outlooks[1].flow->middle);
    balances(flows.flow.high, outlooks[0].flow->high, outlooks[1].flow->high);
  }
}

// A river of which the truth is known: what passes the upper gauge arrives below it hours later, the ground between
// adds its part, and tomorrow's errors are shared by both and wander. Every gauge's band is what the draws say it is.
struct Truth {
  static constexpr std::size_t kDraws = 500;
  static constexpr double kGround = 50.0 * (1180.0 - 980.0) / 980.0;  // m3/s
  std::vector<double> shared, phase;                                  // by draw

  explicit Truth(Deal& deal) {
    for (std::size_t i = 0; i < kDraws; ++i) {
      shared.push_back(std::normal_distribution<>()(deal));
      phase.push_back(even(deal, 0, 6.283));
    }
  }
  // ln of true over expected flow, h hours after now.
  [[nodiscard]] double error(std::size_t draw, double h) const {
    if (h <= 0) return 0.0;
    const double wander = std::sqrt(2.0) * std::sin(h / 8.0 + phase[draw]);
    return 0.25 * std::sqrt(std::min(h / 24.0, 1.0)) * (0.9 * shared[draw] + 0.44 * wander);
  }
  // `along` is 0 at the upper gauge and 1 at the lower one.
  [[nodiscard]] double flow(std::size_t draw, double h, double along) const {
    const double travel = 5.0;  // h
    return 50.0 * std::exp(error(draw, h - along * travel)) + along * kGround * std::exp(1.3 * error(draw, h));
  }
  [[nodiscard]] GaugeOutlook outlook(const std::string& gauge, double along) const {
    GaugeOutlook out = outlook_of(gauge, steady(50));
    for (std::size_t i = 0; i < small_grid().count; ++i) {
      std::vector<double> q;
      for (std::size_t draw = 0; draw < kDraws; ++draw) q.push_back(flow(draw, static_cast<double>(i) - 96.0, along));
      std::ranges::sort(q);
      out.flow.value().low[i] = cubic_metres_per_second(q[kDraws / 10]);
      out.flow.value().middle[i] = cubic_metres_per_second(q[kDraws / 2]);
      out.flow.value().high[i] = cubic_metres_per_second(q[kDraws * 9 / 10]);
    }
    return out;
  }
};

TEST(RandomRivers, HoldEightTruthsOfTenInTheirBandAtAGaugeAndBetweenGauges) {
  Deal deal(9);
  const Truth truth(deal);
  River river = bare_river(980, 1180);
  river.wave_times = {{river_mile(45.2), river_mile(28.9), cubic_metres_per_second(52), hours(5)}};
  const Routed run = run_of(river, {truth.outlook("heron", 0.0), truth.outlook("ferry", 1.0)});
  for (const double mile : {40.2, 34.4, 28.9}) {
    const double along = (45.2 - mile) / (45.2 - 28.9);
    std::size_t held = 0, all = 0;
    for (int h = 6; h <= 36; h += 3) {
      const auto flow = flow_at(run.flows, run.at(mile + 0.05), kNow + std::chrono::hours{h});
      for (std::size_t draw = 0; draw < Truth::kDraws; ++draw, ++all) {
        const double q = truth.flow(draw, h, along);
        if (q >= flow.low.si() && q <= flow.high.si()) ++held;
      }
    }
    EXPECT_NEAR(static_cast<double>(held) / static_cast<double>(all), 0.80, 0.03) << "mile " << mile;
  }
}

}  // namespace
}  // namespace floatwright
