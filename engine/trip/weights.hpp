#pragma once
// The order in which cautions are printed, heaviest first: what kills, then what harms, then what the law says, then what
// spoils the plan. Judgement.
#include "engine/trip/caution.hpp"

namespace floatwright {

inline constexpr int kWadingFirst = 20;  // added where people wade: above a portage, which they do not meet

[[nodiscard]] constexpr int weight_of(CautionKind kind) {
  switch (kind) {
    case CautionKind::Portage: return 100;
    case CautionKind::Hazard: return 96;
    case CautionKind::BoatLimit: return 94;
    case CautionKind::DamRise: return 92;
    case CautionKind::FastRise: return 90;
    case CautionKind::Ice: return 88;
    case CautionKind::ColdWater: return 86;
    case CautionKind::Wading: return 84;
    case CautionKind::WoodAfterHighWater: return 82;
    case CautionKind::Dark: return 80;
    case CautionKind::Closure: return 78;
    case CautionKind::HeatStop: return 76;
    case CautionKind::UnknownFlow: return 74;
    case CautionKind::MissingGauge: return 72;
    case CautionKind::OldReading: return 70;
    case CautionKind::ClosureLikely: return 68;
    case CautionKind::ForecastDoubt: return 66;
    case CautionKind::Rain: return 65;
    case CautionKind::HeatCaution: return 64;
    case CautionKind::HeatUnknown: return 62;
    case CautionKind::DamDrop: return 60;
    case CautionKind::RulesOld: return 58;
    case CautionKind::Wind: return 56;
    case CautionKind::GuessedDepth: return 50;
  }
  return 0;
}

}  // namespace floatwright
