#include "engine/choice/key_list.hpp"

namespace floatwright {
namespace {

template <class Numbers>
void add_waters(KeyList& keys, Numbers& waters, const char* sentence) {
  keys.number("riffle", waters.riffle, sentence, 0, 2);
  keys.number("run", waters.run, sentence, 0, 2);
  keys.number("pool", waters.pool, sentence, 0, 2);
  keys.number("tailout", waters.tailout, sentence, 0, 2);
  keys.number("bank", waters.bank, sentence, 0, 2);
  keys.number("eddy", waters.eddy, sentence, 0, 2);
  keys.number("pocket", waters.pocket, sentence, 0, 2);
}

void add_techniques(KeyList& keys, TechniquesJudgement& techniques) {
  keys.section("/techniques");
  keys.list("strip_count_s", techniques.strip_count_s, "Counts that are tried before the first strip.", 0, 120);
  keys.list("strip_m_s", techniques.strip_m_s, "Speeds of strip that are tried.", 0.05, 2);
  keys.number("thin_line_cast_m", techniques.thin_line_cast_m, "A thin nymphing line or mono rig is cast no farther.",
              2, 30);
}

void add_choice(KeyList& keys, ChoiceJudgement& choice) {
  keys.section("/choice");
  keys.number("tie", choice.tie, "Rigs or methods nearer than this are as good as each other.", 0, 0.5);
  keys.number("worth_changing", choice.worth_changing, "A change is advised only for so much more.", 0, 2);
  keys.number("least_seconds", choice.least_seconds, "Under so many seconds a minute a rig fishes nothing.", 0, 60);
  keys.number("least_efficiency", choice.least_efficiency, "Nor under this share of its time.", 0, 1);
  keys.number("enough_efficiency", choice.enough_efficiency, "A method that fishes this share of its time fishes well.",
              0.05, 1);
  keys.number("exactly_scored", choice.exactly_scored,
              "So many ways of each method are computed in all cases, beside the best of each rig.", 1, 1000);
}

void add_flow(KeyList& keys, FlowJudgement& flow) {
  keys.section("/flow");
  keys.number("steps_per_doubling", flow.steps_per_doubling, "Flows tried between one and its double.", 1, 32);
  keys.number("steps", flow.steps, "Flows tried each way.", 1, 64);
  keys.number("least_of_noted", flow.least_of_noted, "No lower than this share of the flow of the note.", 0.05, 1);
  keys.number("most_of_noted", flow.most_of_noted, "No higher than so many times the flow of the note.", 1, 10);
}

void add_changes(KeyList& keys, ChangesJudgement& changes) {
  keys.section("/changes");
  keys.number("fly_min", changes.fly_min, "Another fly takes so long.", 0, 60);
  keys.number("leader_min", changes.leader_min, "Another leader, its fly tied on, takes so long.", 0, 60);
  keys.number("tip_min", changes.tip_min, "Another looped tip takes so long.", 0, 60);
  keys.number("spool_min", changes.spool_min, "Another spool, strung and rigged, takes so long.", 0, 120);
}

void add_bands(KeyList& keys, BandsJudgement& bands) {
  keys.section("/bands");
  keys.number("tight_below", bands.tight_below, "A tight line may run so much shallower than said.", 0, 0.9);
  keys.number("tight_above", bands.tight_above, "Or so much deeper.", 0, 3);
  keys.number("mended_below", bands.mended_below, "A mended or counted line may run so much shallower than said.", 0,
              0.9);
  keys.number("mended_above", bands.mended_above, "Or so much deeper.", 0, 3);
  keys.number("least_m", bands.least_m, "No depth of fly is known better than this.", 0, 2);
}

void add_method(KeyList& keys, const char* pointer, MethodSuits& method) {
  keys.section(pointer);
  add_waters(keys, method, "How well the method suits such water.");
  keys.table("by_temperature", method.by_temperature, "c", "How well it suits water so warm.", 40);
  keys.table("by_clarity", method.by_clarity, "fnu", "How well it suits water so coloured.", 2000);
  keys.number("low_light", method.low_light, "And in low light.", 0, 2);
}

void add_suits(KeyList& keys, SuitsJudgement& suits) {
  add_method(keys, "/suits/swing", suits.swing);
  add_method(keys, "/suits/strip", suits.strip);
  add_method(keys, "/suits/indicator", suits.indicator);
  add_method(keys, "/suits/tight_line", suits.tight_line);
  add_method(keys, "/suits/dry", suits.dry);
  keys.section("/suits");
  keys.number("low_light_under_deg", suits.low_light_under_deg, "The light is low with the sun under this height.", -6,
              45);
  keys.number("hatch_dry", suits.hatch_dry, "In a listed hatch a dry fly suits so many times as well.", 0, 10);
  keys.number("hatch_others", suits.hatch_others, "And the other methods so much.", 0, 10);
  keys.number("windy_from_m_s", suits.windy_from_m_s, "Over so much wind, 15 mph, a dry fly is thrown badly and blown about.", 0, 40);
  keys.number("windy_dry", suits.windy_dry, "And suits so much.", 0, 1);
  keys.number("cold_from_c", suits.cold_from_c, "In water colder than this fish begin to leave the fast parts.", 0, 20);
  keys.number("cold_full_c", suits.cold_full_c, "And have left them at this.", -1, 19);
  keys.section("/suits/cold");
  add_waters(keys, suits.cold, "What is left of such water in the cold.");
}

}  // namespace

void add_keys_of_choosing(KeyList& keys, Judgement& judgement) {
  add_techniques(keys, judgement.techniques);
  add_choice(keys, judgement.choice);
  add_flow(keys, judgement.flow);
  add_changes(keys, judgement.changes);
  add_bands(keys, judgement.bands);
  add_suits(keys, judgement.suits);
}

}  // namespace floatwright
