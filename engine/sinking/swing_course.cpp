#include "engine/sinking/swing_course.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

// Judgement.
constexpr Angle kCastDownstream = degrees(70.0), kCastAcross = degrees(90.0);
constexpr double kSlack = 0.05;                       // of a cast to be stripped, over its chord
constexpr double kMendSlack = 1.5, kFeedSlack = 4.5;  // s from landing until the line is tight
constexpr int kMoments = 48, kCountMoments = 12;

double slack_time(Mending mending) {
  switch (mending) {
    case Mending::Tight:
      return 0.0;
    case Mending::OneMend:
      return kMendSlack;
    case Mending::MendAndFeed:
      return kFeedSlack;
  }
  return 0.0;
}

// A line that came tight at `bearing`, seen `way` later: way is 1.5 U t / L.
double swung(double bearing, double way) { return 2.0 * std::atan(std::tan(bearing / 2.0) * std::exp(-way)); }

// Where a slack line has gone with the water: chord and bearing at the start, drift since.
struct Drifted {
  double bearing, distance;
};
Drifted drifted(double bearing, double chord, double drift) {
  const double along = chord * std::cos(bearing) + drift, across = chord * std::sin(bearing);
  return {std::atan2(across, along), std::hypot(along, across)};
}

}  // namespace

Moment moment(Duration t, Angle bearing, Length out, bool slack, Speed strip) {
  return {t, bearing, std::cos(bearing.si()), std::sin(bearing.si()), out, slack, strip};
}

Angle cast_downstream() { return kCastDownstream; }

SwingCourse swing_course(Mending mending, Speed stream, Length cast, const DriftLimits& limits) {
  const double u = stream.si();               // m/s
  const double chord = cast.si();             // m
  const double start = kCastDownstream.si();  // rad
  const double slack = slack_time(mending);   // s
  const Drifted tight = drifted(start, chord, u * slack);
  const double out = std::max(chord, tight.distance);  // m, fed line and all
  const double rate = kBellyLead * u / out;            // 1/s
  const double ways = std::log(std::tan(tight.bearing / 2.0) / std::tan(limits.hang_down.si() / 2.0));
  const double longest = limits.longest_cast.si();                                                    // s
  const double hang = ways <= 0.0 ? slack : (ways < rate * longest ? slack + ways / rate : longest);  // s
  const double end = std::min(hang + limits.hang_down_stay.si(), longest);                            // s

  SwingCourse course;
  course.hang_down = seconds(std::min(hang, end));
  for (int i = 0; i <= kMoments; ++i) {
    const double t = end * i / kMoments;
    const bool is_slack = t < slack;
    const double bearing = is_slack ? drifted(start, chord, u * t).bearing : swung(tight.bearing, rate * (t - slack));
    course.moments.push_back(moment(seconds(t), radians(bearing), metres(out), is_slack, Speed{}));
  }
  return course;
}

SwingCourse strip_course(Duration count, Speed strip, Speed stream, Length cast, Length least_out,
                         const DriftLimits& limits) {
  const double u = stream.si();                                                                   // m/s
  const double s = strip.si();                                                                    // m/s
  const double length = cast.si();                                                                // m
  const double chord = length / (1.0 + kSlack);                                                   // m
  const double counted = count.si();                                                              // s
  const double until_tight = u > 0.0 ? std::sqrt(length * length - chord * chord) / u : counted;  // s from landing
  const double slack = std::min(until_tight, counted);                                            // s
  const double tight = drifted(kCastAcross.si(), chord, u * slack).bearing;                       // rad
  const double pulled = swung(tight, kBellyLead * u * (counted - slack) / length);  // rad, at the first pull
  const double end = std::min(std::max(0.0, length - least_out.si()) / s, limits.longest_cast.si());  // s

  SwingCourse course;
  for (int i = 0; i < kCountMoments && counted > 0.0; ++i) {
    const double t = counted * i / kCountMoments;  // s from landing
    const bool is_slack = t < slack;
    const double bearing = is_slack ? drifted(kCastAcross.si(), chord, u * t).bearing
                                    : swung(tight, kBellyLead * u * (t - slack) / length);
    course.moments.push_back(moment(seconds(t - counted), radians(bearing), cast, is_slack, Speed{}));
  }
  course.landed = course.moments.size();
  for (int i = 0; i <= kMoments; ++i) {
    const double t = end * i / kMoments;
    const double out = length - s * t;                               // m
    const double way = kBellyLead * u / s * std::log(length / out);  // 1.5 U dt/L over a line that grows shorter
    course.moments.push_back(moment(seconds(t), radians(swung(pulled, way)), metres(out), false, strip));
  }
  course.hang_down = seconds(end);
  return course;
}

}  // namespace floatwright
