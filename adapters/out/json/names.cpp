#include "adapters/out/json/names.hpp"

namespace floatwright::plan_names {

const char* of(Verdict value) {
  switch (value) {
    case Verdict::Recommended:
      return "recommended";
    case Verdict::Possible:
      return "possible";
    case Verdict::RuledOut:
      return "ruled_out";
  }
  return "unknown";
}

const char* of(WaterType value) {
  switch (value) {
    case WaterType::Riffle:
      return "riffle";
    case WaterType::Run:
      return "run";
    case WaterType::Pool:
      return "pool";
    case WaterType::Tailout:
      return "tailout";
    case WaterType::Bank:
      return "bank";
    case WaterType::Eddy:
      return "eddy";
    case WaterType::Pocket:
      return "pocket";
  }
  return "unknown";
}

const char* of(Bed value) {
  switch (value) {
    case Bed::Unknown:
      return "unknown";
    case Bed::Sand:
      return "sand";
    case Bed::Gravel:
      return "gravel";
    case Bed::Cobble:
      return "cobble";
    case Bed::Boulder:
      return "boulder";
    case Bed::Wood:
      return "wood";
  }
  return "unknown";
}

const char* of(DepthSource value) {
  switch (value) {
    case DepthSource::Noted:
      return "noted";
    case DepthSource::Surveyed:
      return "surveyed";
    case DepthSource::Guessed:
      return "guessed";
  }
  return "unknown";
}

const char* of(LineKind value) {
  switch (value) {
    case LineKind::Floating:
      return "floating";
    case LineKind::NymphTaper:
      return "nymph_taper";
    case LineKind::DoubleTaper:
      return "double_taper";
    case LineKind::ShootingHead:
      return "shooting_head";
    case LineKind::FloatingWithSinkingLeader:
      return "floating_with_sinking_leader";
    case LineKind::SinkingTip:
      return "sinking_tip";
    case LineKind::LoopedHead:
      return "looped_head";
    case LineKind::ClearTip:
      return "clear_tip";
    case LineKind::FullSinking:
      return "full_sinking";
    case LineKind::ThinNymphLine:
      return "thin_nymph_line";
    case LineKind::MonoRig:
      return "mono_rig";
  }
  return "unknown";
}

const char* of(Method value) {
  switch (value) {
    case Method::Swing:
      return "swing";
    case Method::Strip:
      return "strip";
    case Method::Indicator:
      return "indicator";
    case Method::TightLine:
      return "tight_line";
    case Method::Dry:
      return "dry";
  }
  return "unknown";
}

const char* of(Mending value) {
  switch (value) {
    case Mending::Tight:
      return "tight";
    case Mending::OneMend:
      return "one_mend";
    case Mending::MendAndFeed:
      return "mend_and_feed";
  }
  return "unknown";
}

const char* of(Platform value) {
  switch (value) {
    case Platform::Drifting:
      return "drifting";
    case Platform::Held:
      return "held";
    case Platform::Anchored:
      return "anchored";
    case Platform::Wading:
      return "wading";
  }
  return "unknown";
}

const char* of(FlowState value) {
  switch (value) {
    case FlowState::Unknown:
      return "unknown";
    case FlowState::Ice:
      return "ice";
    case FlowState::Regulated:
      return "regulated";
    case FlowState::DailyWave:
      return "daily_wave";
    case FlowState::Rising:
      return "rising";
    case FlowState::Falling:
      return "falling";
    case FlowState::Steady:
      return "steady";
  }
  return "unknown";
}

const char* of(FlowMethod value) {
  switch (value) {
    case FlowMethod::None:
      return "none";
    case FlowMethod::Schedule:
      return "schedule";
    case FlowMethod::SameHour:
      return "same_hour";
    case FlowMethod::WaveShape:
      return "wave_shape";
    case FlowMethod::Hold:
      return "hold";
    case FlowMethod::FadingFall:
      return "fading_fall";
  }
  return "unknown";
}

const char* of(Mark value) {
  switch (value) {
    case Mark::Provisional:
      return "provisional";
    case Mark::Approved:
      return "approved";
    case Mark::Revised:
      return "revised";
    case Mark::Estimated:
      return "estimated";
    case Mark::Ice:
      return "ice";
    case Mark::Equipment:
      return "equipment";
    case Mark::Backwater:
      return "backwater";
    case Mark::Discontinued:
      return "discontinued";
    case Mark::Unavailable:
      return "unavailable";
    case Mark::Stale:
      return "stale";
    case Mark::SuspectSpike:
      return "suspect_spike";
    case Mark::Unknown:
      return "unknown";
  }
  return "unknown";
}

const char* of(CautionKind value) {
  switch (value) {
    case CautionKind::OldReading:
      return "old_reading";
    case CautionKind::MissingGauge:
      return "missing_gauge";
    case CautionKind::GuessedDepth:
      return "guessed_depth";
    case CautionKind::UnknownFlow:
      return "unknown_flow";
    case CautionKind::Ice:
      return "ice";
    case CautionKind::HeatCaution:
      return "heat_caution";
    case CautionKind::HeatStop:
      return "heat_stop";
    case CautionKind::HeatUnknown:
      return "heat_unknown";
    case CautionKind::ColdWater:
      return "cold_water";
    case CautionKind::Wading:
      return "wading";
    case CautionKind::DamRise:
      return "dam_rise";
    case CautionKind::DamDrop:
      return "dam_drop";
    case CautionKind::FastRise:
      return "fast_rise";
    case CautionKind::BoatLimit:
      return "boat_limit";
    case CautionKind::Hazard:
      return "hazard";
    case CautionKind::Portage:
      return "portage";
    case CautionKind::Closure:
      return "closure";
    case CautionKind::RulesOld:
      return "rules_old";
    case CautionKind::ForecastDoubt:
      return "forecast_doubt";
    case CautionKind::Dark:
      return "dark";
    case CautionKind::NoLine:
      return "no_line";
    case CautionKind::ClosureLikely:
      return "closure_likely";
    case CautionKind::WoodAfterHighWater:
      return "wood_after_high_water";
  }
  return "unknown";
}

const char* of(LimitKind value) {
  switch (value) {
    case LimitKind::AccessClosed:
      return "access_closed";
    case LimitKind::NoTrailer:
      return "no_trailer";
    case LimitKind::TooShort:
      return "too_short";
    case LimitKind::TooLong:
      return "too_long";
    case LimitKind::ClosedWater:
      return "closed_water";
    case LimitKind::FlowBelowBoat:
      return "flow_below_boat";
    case LimitKind::FlowAboveBoat:
      return "flow_above_boat";
    case LimitKind::HazardFlow:
      return "hazard_flow";
    case LimitKind::OffTooLate:
      return "off_too_late";
    case LimitKind::AfterDark:
      return "after_dark";
    case LimitKind::TooWarm:
      return "too_warm";
  }
  return "unknown";
}

const char* of(Variable value) {
  switch (value) {
    case Variable::Flow:
      return "discharge";
    case Variable::GaugeHeight:
      return "stage";
    case Variable::WaterTemperature:
      return "water_temperature";
    case Variable::Clarity:
      return "turbidity";
  }
  return "unknown";
}

const char* unit_of(Variable value) {
  switch (value) {
    case Variable::Flow:
      return "m3/s";
    case Variable::GaugeHeight:
      return "m";
    case Variable::WaterTemperature:
      return "C";
    case Variable::Clarity:
      return "FNU";
  }
  return "unknown";
}

}  // namespace floatwright::plan_names
