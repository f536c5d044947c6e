#include "adapters/out/json/names.hpp"

#include "engine/units/words.hpp"

namespace floatwright::plan_names {
namespace {

constexpr WordTable<Verdict, 3> kVerdicts{
    {{Verdict::Recommended, "recommended"}, {Verdict::Possible, "possible"}, {Verdict::RuledOut, "ruled_out"}}};
constexpr WordTable<Mending, 3> kMendings{
    {{Mending::Tight, "tight"}, {Mending::OneMend, "one_mend"}, {Mending::MendAndFeed, "mend_and_feed"}}};
constexpr WordTable<FlowMethod, 11> kFlowMethods{{{FlowMethod::None, "none"},
                                                 {FlowMethod::Official, "official"},
                                                 {FlowMethod::FromAbove, "from_above"},
                                                 {FlowMethod::Tuned, "tuned"},
                                                 {FlowMethod::Schedule, "schedule"},
                                                 {FlowMethod::SameHour, "same_hour"},
                                                 {FlowMethod::WaveShape, "wave_shape"},
                                                 {FlowMethod::Hold, "hold"},
                                                 {FlowMethod::FadingFall, "fading_fall"},
                                                 {FlowMethod::DailyMeans, "daily_means"},
                                                 {FlowMethod::OfficialAlone, "official_alone"}}};
constexpr WordTable<CautionKind, 24> kCautions{{{CautionKind::Wind, "wind"},
                                                {CautionKind::Rain, "rain"},
                                                {CautionKind::OldReading, "old_reading"},
                                                {CautionKind::MissingGauge, "missing_gauge"},
                                                {CautionKind::GuessedDepth, "guessed_depth"},
                                                {CautionKind::UnknownFlow, "unknown_flow"},
                                                {CautionKind::Ice, "ice"},
                                                {CautionKind::HeatCaution, "heat_caution"},
                                                {CautionKind::HeatStop, "heat_stop"},
                                                {CautionKind::HeatUnknown, "heat_unknown"},
                                                {CautionKind::ColdWater, "cold_water"},
                                                {CautionKind::Wading, "wading"},
                                                {CautionKind::DamRise, "dam_rise"},
                                                {CautionKind::DamDrop, "dam_drop"},
                                                {CautionKind::FastRise, "fast_rise"},
                                                {CautionKind::BoatLimit, "boat_limit"},
                                                {CautionKind::Hazard, "hazard"},
                                                {CautionKind::Portage, "portage"},
                                                {CautionKind::Closure, "closure"},
                                                {CautionKind::RulesOld, "rules_old"},
                                                {CautionKind::ForecastDoubt, "forecast_doubt"},
                                                {CautionKind::Dark, "dark"},
                                                {CautionKind::ClosureLikely, "closure_likely"},
                                                {CautionKind::WoodAfterHighWater, "wood_after_high_water"}}};
constexpr WordTable<LimitKind, 12> kLimits{{{LimitKind::AccessClosed, "access_closed"},
                                            {LimitKind::NoTrailer, "no_trailer"},
                                            {LimitKind::TooShort, "too_short"},
                                            {LimitKind::TooLong, "too_long"},
                                            {LimitKind::ClosedWater, "closed_water"},
                                            {LimitKind::FlowBelowBoat, "flow_below_boat"},
                                            {LimitKind::FlowAboveBoat, "flow_above_boat"},
                                            {LimitKind::HazardFlow, "hazard_flow"},
                                            {LimitKind::OffTooLate, "off_too_late"},
                                            {LimitKind::AfterDark, "after_dark"},
                                            {LimitKind::NoHours, "no_hours"},
                                            {LimitKind::TooWarm, "too_warm"}}};

}  // namespace

std::string_view of(Verdict value) { return word_in(kVerdicts, value); }
std::string_view of(Mending value) { return word_in(kMendings, value); }
std::string_view of(FlowState value) { return word_in(kFlowStateWords, value); }
std::string_view of(FlowMethod value) { return word_in(kFlowMethods, value); }
std::string_view of(CautionKind value) { return word_in(kCautions, value); }
std::string_view of(LimitKind value) { return word_in(kLimits, value); }

}  // namespace floatwright::plan_names
