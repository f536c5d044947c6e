#include "engine/choice/cast_time.hpp"

#include <algorithm>

namespace floatwright {
namespace {

double mending_s(const Technique& technique, const TimesJudgement& judgement) {
  if (technique.method == Method::Indicator || technique.method == Method::Dry)
    return judgement.indicator_or_dry_mend_s;
  if (technique.method != Method::Swing) return 0.0;
  switch (technique.mending) {
    case Mending::Tight:
      return 0.0;
    case Mending::OneMend:
      return judgement.one_mend_s;
    case Mending::MendAndFeed:
      return judgement.mend_and_feed_s;
  }
  return 0.0;
}

// A strip has its line gathered already when the next cast begins; a swing has not.
double gathering_s(LineKind kind, Method method, Length cast, const TimesJudgement& judgement) {
  if (method != Method::Swing) return 0.0;
  if (kind == LineKind::ShootingHead) return judgement.shooting_head_s;
  if (kind != LineKind::FullSinking) return 0.0;
  return std::max(0.0, in_metres(cast) - judgement.full_sinking_free_m) / judgement.full_sinking_gather_m_s;
}

bool wrong_taper(LineKind kind, Method method) {
  if (method == Method::Indicator) return kind != LineKind::NymphTaper;
  return method == Method::Dry && kind != LineKind::DoubleTaper;
}

}  // namespace

Duration cast_time(LineKind kind, const SinkingPart& sinking, const Technique& technique, Length cast,
                   const TimesJudgement& judgement) {
  if (technique.method == Method::TightLine) return seconds(judgement.tight_line_s);
  double paid = judgement.cast_s + mending_s(technique, judgement);  // s
  paid += gathering_s(kind, technique.method, cast, judgement);
  // A nominal rate of exactly the limit counts, whatever the inch has done to its last digit.
  if (in_metres_per_second(sinking.sink_rate) > judgement.fast_sinking_from_m_s - 1e-9)
    paid += judgement.fast_sinking_s;
  if (wrong_taper(kind, technique.method)) paid += judgement.wrong_taper_s;
  if (technique.method == Method::Strip) paid += in_seconds(technique.count);
  return seconds(paid);
}

}  // namespace floatwright
