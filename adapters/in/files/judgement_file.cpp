#include "adapters/in/files/judgement_file.hpp"

#include <fmt/format.h>

namespace floatwright {
namespace {

constexpr double kMost = 1000.0;    // of any unit that occurs
constexpr double kOverZero = 1e-3;  // for what is divided by

void take(TypedObject& in, std::string_view key, double& value, double least = 0.0) {
  value = in.plain_number(key, least, kMost, Need::Optional).value_or(value);
}

template <class Filler>
void within(TypedObject& in, std::string_view key, Filler filler) {
  auto object = in.object(key, Need::Optional);
  if (!object) return;
  filler(*object);
  object->finish();
}

template <std::size_t N>
void take_table(TypedObject& in, std::string_view key, std::string_view at, Table<N>& table) {
  std::vector<TypedObject> items = in.objects(key, Need::Optional);
  if (!in.has(key)) return;
  if (items.size() != N) {
    in.tell(key, describe(*in.find(key)), fmt::format("a list of {} points", N), "Keep the number of points.");
    return;
  }
  for (std::size_t i = 0; i < N; ++i) {
    table[i].at = items[i].plain_number(at, -kMost, kMost, Need::Required).value_or(table[i].at);
    table[i].share = items[i].plain_number("share", 0.0, kMost, Need::Required).value_or(table[i].share);
    items[i].finish();
    if (i > 0 && table[i].at <= table[i - 1].at) {
      items[i].tell(at, fmt::format("{}", table[i].at), "more than in the point before", "Sort the points.");
    }
  }
}

template <std::size_t N>
void take_row(TypedObject& in, std::string_view key, std::array<double, N>& row, double least) {
  const LocatedJson* list = in.find(key);
  if (list == nullptr) return;
  bool fits = list->kind == JsonKind::List && list->items.size() == N;
  for (std::size_t i = 0; fits && i < N; ++i) {
    const LocatedJson& item = list->items[i];
    fits = item.kind == JsonKind::Number && item.number >= least && item.number <= kMost;
    if (fits) row[i] = item.number;
  }
  if (!fits) {
    const std::string allowed = fmt::format("a list of {} numbers from {} to {}", N, least, kMost);
    in.tell(key, describe(*list), allowed, "Write " + allowed + ".");
  }
}

void take_beds(TypedObject& in, std::string_view key, BedNumbers& beds) {
  within(in, key, [&](TypedObject& o) {
    take(o, "sand", beds.sand);
    take(o, "gravel", beds.gravel);
    take(o, "cobble", beds.cobble);
    take(o, "boulder", beds.boulder);
    take(o, "wood", beds.wood);
  });
}

void take_methods(TypedObject& in, std::string_view key, MethodNumbers& methods) {
  within(in, key, [&](TypedObject& o) {
    take(o, "swing", methods.swing, kOverZero);
    take(o, "strip", methods.strip, kOverZero);
    take(o, "indicator", methods.indicator, kOverZero);
    take(o, "tight_line", methods.tight_line, kOverZero);
    take(o, "dry", methods.dry, kOverZero);
  });
}

template <class Waters>
void take_waters(TypedObject& o, Waters& waters) {
  take(o, "riffle", waters.riffle);
  take(o, "run", waters.run);
  take(o, "pool", waters.pool);
  take(o, "tailout", waters.tailout);
  take(o, "bank", waters.bank);
  take(o, "eddy", waters.eddy);
  take(o, "pocket", waters.pocket);
}

void take_zone(TypedObject& o, ZoneJudgement& zone) {
  take(o, "hold_height_m", zone.hold_height_m);
  take(o, "hold_share_of_depth", zone.hold_share_of_depth);
  take_beds(o, "shelter", zone.shelter);
  take(o, "focal_speed_m_s", zone.focal_speed_m_s, kOverZero);
  take(o, "least_reach_m", zone.least_reach_m, kOverZero);
  take_methods(o, "reach_m", zone.reach_m);
  take(o, "full_share_of_reach", zone.full_share_of_reach);
  take(o, "near_bed_m", zone.near_bed_m);
  take(o, "near_bed_share", zone.near_bed_share);
  take(o, "leaves_from", zone.leaves_from);
  take(o, "gone_at", zone.gone_at);
  take_table(o, "reach_by_temperature", "at_c", zone.reach_by_temperature);
  take_table(o, "speed_by_temperature", "at_c", zone.speed_by_temperature);
  take_table(o, "reach_by_clarity", "at_fnu", zone.reach_by_clarity);
}

void take_pace(TypedObject& o, PaceJudgement& pace) {
  take(o, "swim_m_s", pace.swim_m_s, kOverZero);
  take(o, "swim_fall_m_s", pace.swim_fall_m_s, kOverZero);
  take_table(o, "swim_by_temperature", "at_c", pace.swim_by_temperature);
  take(o, "drag_half_m_s", pace.drag_half_m_s, kOverZero);
  take(o, "tight_line_drag_m_s", pace.tight_line_drag_m_s);
  take(o, "hang_down_share", pace.hang_down_share);
  take(o, "hang_down_deg", pace.hang_down_deg);
  take(o, "hang_down_stay_s", pace.hang_down_stay_s);
}

void take_times(TypedObject& o, TimesJudgement& times) {
  take(o, "cast_s", times.cast_s, kOverZero);
  take(o, "one_mend_s", times.one_mend_s);
  take(o, "mend_and_feed_s", times.mend_and_feed_s);
  take(o, "indicator_or_dry_mend_s", times.indicator_or_dry_mend_s);
  take(o, "fast_sinking_s", times.fast_sinking_s);
  take(o, "fast_sinking_from_m_s", times.fast_sinking_from_m_s);
  take(o, "tight_line_s", times.tight_line_s, kOverZero);
  take(o, "full_sinking_free_m", times.full_sinking_free_m);
  take(o, "full_sinking_gather_m_s", times.full_sinking_gather_m_s, kOverZero);
  take(o, "shooting_head_s", times.shooting_head_s);
  take(o, "wrong_taper_s", times.wrong_taper_s);
  take(o, "longest_cast_s", times.longest_cast_s, 1.0);
}

void take_snag(TypedObject& o, SnagJudgement& snag) {
  take(o, "within_m", snag.within_m);
  take(o, "cost_s", snag.cost_s);
  take_beds(o, "rate_per_s", snag.rate_per_s);
}

void take_mends(TypedObject& o, MendsJudgement& mends) {
  take(o, "floating", mends.floating);
  take(o, "sinking_leader", mends.sinking_leader);
  take(o, "sinking_tip", mends.sinking_tip);
  take(o, "full_sinking", mends.full_sinking);
  take(o, "dry", mends.dry);
  take(o, "slack_m", mends.slack_m);
  take(o, "drag_anchored", mends.drag_anchored, kOverZero);
  take(o, "drag_drifting", mends.drag_drifting, kOverZero);
  take(o, "longest_drift_s", mends.longest_drift_s, 1.0);
  take(o, "longest_dry_s", mends.longest_dry_s, 1.0);
  take(o, "casts_of_drift", mends.casts_of_drift, kOverZero);
}

void take_scatter(TypedObject& o, ScatterJudgement& scatter) {
  take(o, "tight", scatter.tight);
  take(o, "mended", scatter.mended);
  take(o, "drifted", scatter.drifted);
  take(o, "of_speed", scatter.of_speed);
  take_row(o, "members", scatter.members, -10.0);
}

void take_boat(TypedObject& o, BoatJudgement& boat) {
  take(o, "hold_drifting", boat.hold_drifting);
  take(o, "hold_held", boat.hold_held);
  take(o, "hold_anchored", boat.hold_anchored);
  take(o, "most_pace", boat.most_pace, kOverZero);
  take(o, "most_strip_pace", boat.most_strip_pace, kOverZero);
}

void take_techniques(TypedObject& o, TechniquesJudgement& techniques) {
  take_row(o, "strip_count_s", techniques.strip_count_s, 0.0);
  take_row(o, "strip_m_s", techniques.strip_m_s, kOverZero);
  take(o, "thin_line_cast_m", techniques.thin_line_cast_m, 1.0);
}

void take_choice(TypedObject& o, ChoiceJudgement& choice) {
  take(o, "tie", choice.tie);
  take(o, "worth_changing", choice.worth_changing);
  take(o, "least_seconds", choice.least_seconds);
  take(o, "least_efficiency", choice.least_efficiency);
  take(o, "enough_efficiency", choice.enough_efficiency, kOverZero);
  take(o, "exactly_scored", choice.exactly_scored, 1.0);
}

void take_flow(TypedObject& o, FlowJudgement& flow) {
  take(o, "steps_per_doubling", flow.steps_per_doubling, 1.0);
  take(o, "steps", flow.steps);
  take(o, "least_of_noted", flow.least_of_noted, kOverZero);
  take(o, "most_of_noted", flow.most_of_noted, 1.0);
}

void take_changes(TypedObject& o, ChangesJudgement& changes) {
  take(o, "fly_min", changes.fly_min);
  take(o, "leader_min", changes.leader_min);
  take(o, "tip_min", changes.tip_min);
  take(o, "spool_min", changes.spool_min);
}

void take_bands(TypedObject& o, BandsJudgement& bands) {
  take(o, "tight_below", bands.tight_below);
  take(o, "tight_above", bands.tight_above);
  take(o, "mended_below", bands.mended_below);
  take(o, "mended_above", bands.mended_above);
  take(o, "least_m", bands.least_m);
}

void take_suit(TypedObject& in, std::string_view key, MethodSuits& suits) {
  within(in, key, [&](TypedObject& o) {
    take_waters(o, suits);
    take_table(o, "by_temperature", "at_c", suits.by_temperature);
    take_table(o, "by_clarity", "at_fnu", suits.by_clarity);
    take(o, "low_light", suits.low_light);
  });
}

void take_suits(TypedObject& o, SuitsJudgement& suits) {
  take_suit(o, "swing", suits.swing);
  take_suit(o, "strip", suits.strip);
  take_suit(o, "indicator", suits.indicator);
  take_suit(o, "tight_line", suits.tight_line);
  take_suit(o, "dry", suits.dry);
  take(o, "low_light_under_deg", suits.low_light_under_deg);
  take(o, "hatch_dry", suits.hatch_dry);
  take(o, "hatch_others", suits.hatch_others);
  take(o, "cold_from_c", suits.cold_from_c);
  take(o, "cold_full_c", suits.cold_full_c);
  within(o, "cold", [&](TypedObject& cold) { take_waters(cold, suits.cold); });
}

}  // namespace

Judgement read_judgement(const LocatedJson& root, FileReading& reading) {
  Judgement judgement;
  auto in = object_root(root, reading);
  if (!in) return judgement;
  within(*in, "zone", [&](TypedObject& o) { take_zone(o, judgement.zone); });
  within(*in, "pace", [&](TypedObject& o) { take_pace(o, judgement.pace); });
  within(*in, "times", [&](TypedObject& o) { take_times(o, judgement.times); });
  within(*in, "snag", [&](TypedObject& o) { take_snag(o, judgement.snag); });
  within(*in, "mends", [&](TypedObject& o) { take_mends(o, judgement.mends); });
  within(*in, "scatter", [&](TypedObject& o) { take_scatter(o, judgement.scatter); });
  within(*in, "boat", [&](TypedObject& o) { take_boat(o, judgement.boat); });
  within(*in, "techniques", [&](TypedObject& o) { take_techniques(o, judgement.techniques); });
  within(*in, "choice", [&](TypedObject& o) { take_choice(o, judgement.choice); });
  within(*in, "flow", [&](TypedObject& o) { take_flow(o, judgement.flow); });
  within(*in, "changes", [&](TypedObject& o) { take_changes(o, judgement.changes); });
  within(*in, "bands", [&](TypedObject& o) { take_bands(o, judgement.bands); });
  within(*in, "suits", [&](TypedObject& o) { take_suits(o, judgement.suits); });
  in->finish();
  return judgement;
}

}  // namespace floatwright
