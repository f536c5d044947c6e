#include "engine/choice/key_list.hpp"

namespace floatwright {
namespace {

void add_beds(KeyList& keys, BedNumbers& beds, const char* sentence, double least, double most) {
  keys.number("sand", beds.sand, sentence, least, most);
  keys.number("gravel", beds.gravel, sentence, least, most);
  keys.number("cobble", beds.cobble, sentence, least, most);
  keys.number("boulder", beds.boulder, sentence, least, most);
  keys.number("wood", beds.wood, sentence, least, most);
}

void add_zone(KeyList& keys, ZoneJudgement& zone) {
  keys.section("/zone");
  keys.number("hold_height_m", zone.hold_height_m, "A fish holds no higher over the bed than this.", 0.01, 1);
  keys.number("hold_share_of_depth", zone.hold_share_of_depth, "Nor higher than this share of the depth.", 0.01, 0.5);
  keys.number("focal_speed_m_s", zone.focal_speed_m_s, "Speed that a fish can hold in, at its best temperature.", 0.1,
              2);
  keys.number("least_reach_m", zone.least_reach_m, "A fish always comes this far for a fly.", 0.01, 1);
  keys.number("full_share_of_reach", zone.full_share_of_reach, "Within this share of its reach it comes for certain.",
              0, 0.95);
  keys.number("near_bed_m", zone.near_bed_m, "Lower than this a fly is among the stones.", 0, 0.2);
  keys.number("near_bed_share", zone.near_bed_share, "A fly among the stones counts so much.", 0, 1);
  keys.number("leaves_from", zone.leaves_from, "Fish begin to leave at this share of the speed they can hold in.", 0.5,
              2);
  keys.number("gone_at", zone.gone_at, "And are gone at this share of it.", 0.6, 3);
  keys.table("reach_by_temperature", zone.reach_by_temperature, "c", "A cold or hot fish comes less far for a fly.",
             40);
  keys.table("speed_by_temperature", zone.speed_by_temperature, "c", "A cold or hot fish holds in slower water.", 40);
  keys.table("reach_by_clarity", zone.reach_by_clarity, "fnu", "In coloured water a fish sees less far.", 2000);
  keys.section("/zone/shelter");
  add_beds(keys, zone.shelter, "Speed where the fish lies, behind such a bed, over that of the open water.", 0.1, 1);
  keys.section("/zone/reach_m");
  const char* reach = "How far a fish comes for a fly fished so, in clear slow water at 10 to 16 C.";
  keys.number("swing", zone.reach_m.swing, reach, 0.05, 5);
  keys.number("strip", zone.reach_m.strip, reach, 0.05, 5);
  keys.number("indicator", zone.reach_m.indicator, reach, 0.05, 5);
  keys.number("tight_line", zone.reach_m.tight_line, reach, 0.05, 5);
  keys.number("dry", zone.reach_m.dry, reach, 0.05, 5);
}

void add_pace(KeyList& keys, PaceJudgement& pace) {
  keys.section("/pace");
  keys.number("swim_m_s", pace.swim_m_s, "A swung or stripped fly up to this speed is taken fully.", 0.05, 3);
  keys.number("swim_fall_m_s", pace.swim_fall_m_s, "So much faster and it is taken a third as often.", 0.02, 3);
  keys.table("swim_by_temperature", pace.swim_by_temperature, "c", "A cold or hot fish takes only a slower fly.", 40);
  keys.number("drag_half_m_s", pace.drag_half_m_s, "A drifted nymph that drags so much is taken half as often.", 0.02,
              2);
  keys.number("tight_line_drag_m_s", pace.tight_line_drag_m_s, "A led nymph drags so much.", 0, 2);
  keys.number("hang_down_share", pace.hang_down_share, "A fly hanging below the rod is taken so much as often.", 0, 1);
  keys.number("hang_down_deg", pace.hang_down_deg, "It hangs when it is so near to straight downstream.", 0, 45);
  keys.number("hang_down_stay_s", pace.hang_down_stay_s, "It is left hanging so long.", 0, 30);
}

void add_times(KeyList& keys, TimesJudgement& times) {
  keys.section("/times");
  keys.number("cast_s", times.cast_s, "A cast takes so long.", 1, 60);
  keys.number("one_mend_s", times.one_mend_s, "One mend takes so long.", 0, 30);
  keys.number("mend_and_feed_s", times.mend_and_feed_s, "A mend and feeding line take so long.", 0, 30);
  keys.number("indicator_or_dry_mend_s", times.indicator_or_dry_mend_s,
              "Mending for an indicator or a dry fly takes so long.", 0, 30);
  keys.number("fast_sinking_s", times.fast_sinking_s, "Lifting a fast sinking part takes so long.", 0, 30);
  keys.number("fast_sinking_from_m_s", times.fast_sinking_from_m_s, "A sinking part is fast from this rate, 5 in/s.",
              0.01, 0.5);
  keys.number("tight_line_s", times.tight_line_s, "A cast with a led line takes so long in all.", 0.5, 60);
  keys.number("full_sinking_free_m", times.full_sinking_free_m,
              "A full sinking line longer than this is gathered before it is swung again.", 0, 30);
  keys.number("full_sinking_gather_m_s", times.full_sinking_gather_m_s, "It is gathered at this speed.", 0.1, 5);
  keys.number("shooting_head_s", times.shooting_head_s, "Gathering the running line of a shooting head takes so long.",
              0, 60);
  keys.number("wrong_taper_s", times.wrong_taper_s, "A taper not made for the method costs so much a cast.", 0, 30);
  keys.number("longest_cast_s", times.longest_cast_s, "No cast fishes longer.", 5, 600);
}

void add_snag(KeyList& keys, SnagJudgement& snag) {
  keys.section("/snag");
  keys.number("within_m", snag.within_m, "So near to the bed fly, shot or tip may snag.", 0, 0.2);
  keys.number("cost_s", snag.cost_s, "A snag costs so long.", 0, 600);
  keys.section("/snag/rate_per_s");
  add_beds(keys, snag.rate_per_s, "Snags per second on such a bed.", 0, 2);
}

void add_mends(KeyList& keys, MendsJudgement& mends) {
  keys.section("/mends");
  keys.number("floating", mends.floating, "Mends that a floating line allows.", 0, 10);
  keys.number("sinking_leader", mends.sinking_leader, "Mends that a floating line with a sinking leader allows.", 0,
              10);
  keys.number("sinking_tip", mends.sinking_tip, "Mends that a sinking tip allows, before it is under.", 0, 10);
  keys.number("shooting_head", mends.shooting_head,
              "Mends that a shooting head allows: its thin running line has little to mend with.", 0, 10);
  keys.number("full_sinking", mends.full_sinking, "Mends that a full sinking line allows.", 0, 10);
  keys.number("dry", mends.dry, "Mends that a dry fly's drift is given.", 0, 10);
  keys.number("slack_m", mends.slack_m, "Slack that a mend gives.", 0.1, 10);
  keys.number("drag_anchored", mends.drag_anchored,
              "From anchor, line and fly part at this share of the surface speed.", 0.01, 2);
  keys.number("drag_drifting", mends.drag_drifting, "From a drifting boat, at this share.", 0.01, 2);
  keys.number("longest_drift_s", mends.longest_drift_s, "From a drifting boat an indicator goes along so long.", 1,
              600);
  keys.number("longest_dry_s", mends.longest_dry_s, "No dry fly drifts longer.", 1, 600);
  keys.number("casts_of_drift", mends.casts_of_drift,
              "Past a boat that does not drift, the drift is so many casts long.", 0.1, 5);
}

void add_scatter(KeyList& keys, ScatterJudgement& scatter) {
  keys.section("/scatter");
  keys.number("tight", scatter.tight, "Scatter of fly depth on a tight line, standard deviation in logs.", 0, 1.5);
  keys.number("mended", scatter.mended, "After a mend or a count.", 0, 1.5);
  keys.number("drifted", scatter.drifted, "On the leader of an indicator or of a led line.", 0, 1.5);
  keys.number("of_speed", scatter.of_speed, "So much of the scatter of speed is scatter of fly depth.", 0, 3);
  keys.list("members", scatter.members, "Five equally likely standard deviations.", -4, 4);
}

void add_boat(KeyList& keys, BoatJudgement& boat) {
  keys.section("/boat");
  const char* held = "The share of the stream that such a boat does not go along with.";
  keys.number("hold_drifting", boat.hold_drifting, held, 0, 1);
  keys.number("hold_held", boat.hold_held, held, 0, 1);
  keys.number("hold_anchored", boat.hold_anchored, held, 0, 1);
  keys.number("most_pace", boat.most_pace, "The boat is never taken to go faster than so many times the water fished.",
              0.5, 5);
  keys.number("most_strip_pace", boat.most_strip_pace,
              "From a boat that outruns the water by more nothing is stripped.", 0.5, 5);
  keys.number("most_wind_m_s", boat.most_wind_m_s,
              "Over so much wind, 20 mph, the boat does not drift a line: it is held or anchored.", 0, 40);
}

}  // namespace

void add_keys_of_fishing(KeyList& keys, Judgement& judgement) {
  add_zone(keys, judgement.zone);
  add_pace(keys, judgement.pace);
  add_times(keys, judgement.times);
  add_snag(keys, judgement.snag);
  add_mends(keys, judgement.mends);
  add_scatter(keys, judgement.scatter);
  add_boat(keys, judgement.boat);
}

}  // namespace floatwright
