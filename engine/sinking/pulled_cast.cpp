#include "engine/sinking/pulled_cast.hpp"

#include <algorithm>
#include <cmath>

#include "engine/sinking/cast_run.hpp"
#include "engine/sinking/rigged_line.hpp"

namespace floatwright {
namespace {

using Paths = std::vector<std::vector<Measured<CastPath>>>;

// Judgement.
constexpr Angle kSwingBearing = degrees(70.0), kStripBearing = degrees(90.0);
constexpr double kMendSlack = 0.10, kStripSlack = 0.05;  // of the body over its chord, less 1
constexpr Duration kFeed = seconds(3.0);

constexpr double kSteadySpeed = 0.6;  // m/s past the rod, from which steps are as short as they get
constexpr double kLongestStep = 2.0;  // in still water, over that
constexpr double kRowEvery = 0.12;    // s
constexpr int kSamples = 64;          // and one

double sample_time(double end, int i) { return end * i / kSamples; }

CastRow between(const CastRow& a, const CastRow& b, double t) {
  const double span = (b.t - a.t).si();
  const double way = span > 0.0 ? std::clamp((t - a.t.si()) / span, 0.0, 1.0) : 0.0;
  const auto mix = [way](auto x, auto y) { return x + way * (y - x); };
  return {seconds(t),
          mix(a.tip_depth, b.tip_depth),
          mix(a.fly_depth, b.fly_depth),
          mix(a.bearing, b.bearing),
          mix(a.over_ground, b.over_ground),
          mix(a.through_water, b.through_water)};
}

// Rows from landing on, in time; samples even from `from` to `end`.
std::vector<CastSample> sampled(const std::vector<CastRow>& rows, double from, double end, bool has_bearing) {
  std::vector<CastSample> samples;
  samples.reserve(kSamples + 1);
  std::size_t i = 0;
  for (int k = 0; k <= kSamples; ++k) {
    const double t = from + sample_time(end - from, k);
    while (i + 2 < rows.size() && rows[i + 1].t.si() < t) ++i;
    const CastRow row = between(rows[i], rows[std::min(i + 1, rows.size() - 1)], t);
    samples.push_back({seconds(t - from), row.fly_depth, row.tip_depth, row.over_ground, row.through_water,
                       has_bearing ? row.bearing : degrees(90.0)});
  }
  return samples;
}

Angle turned(const CastRow& row) { return std::max(row.bearing, -row.bearing); }

// When a swing first hangs within `limit` of straight downstream; none: not yet.
std::optional<double> hang_down(const std::vector<CastRow>& rows, Angle limit) {
  const auto hangs = std::ranges::find_if(rows, [&](const CastRow& row) { return turned(row) <= limit; });
  if (hangs == rows.end()) return std::nullopt;
  if (hangs == rows.begin()) return 0.0;
  const double before = turned(*(hangs - 1)).si(), after = turned(*hangs).si();
  const double way = before > after ? (before - limit.si()) / (before - after) : 1.0;
  return (hangs - 1)->t.si() + way * (hangs->t - (hangs - 1)->t).si();
}

bool all_finite(const std::vector<CastRow>& rows) {
  return std::ranges::all_of(rows, [](const CastRow& row) {
    return std::isfinite(row.fly_depth.si()) && std::isfinite(row.tip_depth.si()) &&
           std::isfinite(row.over_ground.si());
  });
}

// Casts under way, and the rows of each lane.
template <class Real>
class Watched {
 public:
  Watched(const CastCase& in, std::span<const WaterAndBoat> places)
      : run_(in, places, pulled_resolution(places)), rows_(places.size()) {
    note();
  }
  // On to time `t`; false where the strip is over before.
  bool go_on(double t) {
    constexpr double kSameTime = 1e-6;  // s
    while (run_.time() + kSameTime < t) {
      if (!run_.advance()) {
        note();
        return false;
      }
      if (run_.time() + kSameTime >= noted_ + kRowEvery) note();
    }
    return true;
  }
  void strip(Speed speed, Length least_out) { run_.strip(speed, least_out); }
  [[nodiscard]] double time() const { return run_.time(); }
  [[nodiscard]] const std::vector<CastRow>& rows(std::size_t lane) const { return rows_[lane]; }
  [[nodiscard]] bool all_hang(Angle limit) const {
    return std::ranges::all_of(rows_, [&](const auto& rows) { return turned(rows.back()) <= limit; });
  }

 private:
  void note() {
    noted_ = run_.time();
    for (std::size_t lane = 0; lane < rows_.size(); ++lane) rows_[lane].push_back(run_.row(lane));
  }
  CastRun<Real> run_;
  double noted_ = 0.0;  // s
  std::vector<std::vector<CastRow>> rows_;
};

Measured<CastPath> swung(const std::vector<CastRow>& rows, Length leader, const DriftLimits& limits) {
  if (!all_finite(rows)) return Absent{"the simulated cast found no answer"};
  const double last = std::min(limits.longest_cast.si(), rows.back().t.si());
  const double hang = std::min(hang_down(rows, limits.hang_down).value_or(last), last);
  const double end = std::min(hang + limits.hang_down_stay.si(), last);
  return CastPath{sampled(rows, 0.0, end, true), seconds(hang), leader, Length{}};
}

template <class Real>
void swing(const CastCase& in, const PulledSetting& setting, Length leader, Paths& paths) {
  const double longest = setting.limits.longest_cast.si();
  const double stay = setting.limits.hang_down_stay.si();
  Watched<Real> watched(in, setting.places);
  double until = 0.0;  // s
  while (until < longest && !watched.all_hang(setting.limits.hang_down))
    watched.go_on(until = std::min(longest, until + 1.0));
  watched.go_on(std::min(longest, until + stay));
  for (std::size_t i = 0; i < paths.size(); ++i) paths[i].push_back(swung(watched.rows(i), leader, setting.limits));
}

Measured<CastPath> stripped(const std::vector<CastRow>& rows, double count, Length leader) {
  if (!all_finite(rows)) return Absent{"the simulated cast found no answer"};
  const double end = rows.back().t.si();
  return CastPath{sampled(rows, count, end, false), seconds(end - count), leader, Length{}};
}

// One line that sinks, and from each count on one that is stripped.
template <class Real>
void strip(const CastCase& in, std::span<const Technique> techniques, const PulledSetting& setting, Length leader,
           Length least_out, Paths& paths) {
  for (auto& of_place : paths) of_place.assign(techniques.size(), Absent{"no speed of stripping is given"});
  std::vector<std::size_t> order(techniques.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::ranges::stable_sort(order, {}, [&](std::size_t i) { return techniques[i].count; });
  Watched<Real> counting(in, setting.places);
  for (const std::size_t i : order) {
    const Technique& technique = techniques[i];
    if (!(technique.strip > Speed{})) continue;
    counting.go_on(technique.count.si());
    Watched<Real> pulling = counting;
    const double count = counting.time();
    pulling.strip(technique.strip, least_out);
    pulling.go_on(count + setting.limits.longest_cast.si());
    for (std::size_t place = 0; place < paths.size(); ++place)
      paths[place][i] = stripped(pulling.rows(place), count, leader);
  }
}

struct Laid {
  std::vector<LinePart> parts;
  HungWeight hung;
  Length leader, least_out;
};
Measured<Laid> laid_line(const Tackle& tackle, const Rig& rig, Method method, Length cast, const TabledWater& water) {
  const auto hung = hung_weight(tackle.flies[rig.fly], rig.shot, water.properties);
  if (!hung) return Absent{hung.why_absent()};
  const auto line = rigged_line(tackle, rig, method, cast);
  if (!line) return Absent{line.why_absent()};
  if (!(cast > line->least_out)) return Absent{"the cast is no longer than the line that stays out"};
  return Laid{parts_out(*line, cast), *hung, line->leader.length, line->least_out};
}

CastCase laid(const Laid& rigged, const Technique& technique) {
  CastCase in;
  in.parts = rigged.parts;
  LinePart& body = in.parts.back();
  in.line_out = body.length;
  body.length = metres(1e3);  // there is always more on the spool
  in.fly = rigged.hung.towed;
  in.has_bed = false;
  const bool strips = technique.method == Method::Strip;
  in.bearing = strips ? kStripBearing : kSwingBearing;
  in.slack = strips ? kStripSlack : (technique.mending == Mending::Tight ? 0.0 : kMendSlack);
  in.feed = technique.mending == Mending::MendAndFeed && !strips ? kFeed : Duration{};
  return in;
}

template <class Real>
Paths casts_of(const Laid& rigged, std::span<const Technique> techniques, const PulledSetting& setting) {
  Paths paths(setting.places.size());
  const Length leader = rigged.leader;
  if (techniques.front().method == Method::Strip) {
    strip<Real>(laid(rigged, techniques.front()), techniques, setting, leader, rigged.least_out, paths);
  } else {
    for (const Technique& technique : techniques) swing<Real>(laid(rigged, technique), setting, leader, paths);
  }
  return paths;
}

}  // namespace

Resolution pulled_resolution(std::span<const WaterAndBoat> places) {
  double past = 0.0;  // m/s
  for (const WaterAndBoat& place : places)
    past = std::max(past, std::abs((place.water->stream.at_surface() - place.boat).si()));
  Resolution resolution = kCoarse;
  resolution.step = resolution.step * std::clamp(kSteadySpeed / std::max(past, 1e-3), 1.0, kLongestStep);
  return resolution;
}

Measured<CastCase> pulled_case(const Tackle& tackle, const Rig& rig, const Technique& technique, Length cast,
                               const WaterAndBoat& place) {
  const auto line = laid_line(tackle, rig, technique.method, cast, *place.water);
  if (!line) return Absent{line.why_absent()};
  CastCase in = laid(*line, technique);
  in.depth = place.water->depth;
  in.surface_speed = place.water->surface_speed;
  in.boat = place.boat;
  if (technique.method == Method::Strip) {
    if (!(technique.strip > Speed{})) return Absent{"no speed of stripping is given"};
    in.count = technique.count;
    in.strip = technique.strip;
    in.least_out = line->least_out;
  }
  return in;
}

Paths pulled_casts(const Tackle& tackle, const Rig& rig, std::span<const Technique> techniques,
                   const PulledSetting& setting) {
  const Method method = techniques.front().method;
  const auto line = laid_line(tackle, rig, method, setting.cast, *setting.places.front().water);
  if (!line)
    return Paths(setting.places.size(), std::vector<Measured<CastPath>>(techniques.size(), Absent{line.why_absent()}));
  constexpr std::size_t kWorthAbreast = 2;  // waters: one is sooner done alone
  Paths paths;
  for (std::size_t from = 0; from < setting.places.size();) {
    const std::size_t left = setting.places.size() - from;
    const std::size_t some = left < kWorthAbreast ? 1 : std::min(left, kWatersAbreast);
    const PulledSetting there{setting.cast, setting.limits, setting.places.subspan(from, some)};
    std::ranges::move(
        some == 1 ? casts_of<Alone>(*line, techniques, there) : casts_of<Abreast>(*line, techniques, there),
        std::back_inserter(paths));
    from += some;
  }
  return paths;
}

}  // namespace floatwright
