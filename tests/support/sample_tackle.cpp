#include "tests/support/sample_tackle.hpp"

namespace floatwright::testing {
namespace {

Line line(std::string id, std::string rod, bool spare, std::string code, LineKind kind, int number) {
  Line made;
  made.id = std::move(id);
  made.on_rod = std::move(rod);
  made.spare_spool = spare;
  made.code = std::move(code);
  made.kind = kind;
  made.line_number = number;
  return made;
}

Line tip_line(std::string id, std::string rod, bool spare, LineKind kind, int number, Length tip, Speed rate) {
  Line made = line(std::move(id), std::move(rod), spare, "WF-" + std::to_string(number) + "-F/S", kind, number);
  made.tip_length = tip;
  made.sink_rate = rate;
  return made;
}

}  // namespace

Tackle sample_tackle() {
  Tackle tackle;
  tackle.rods = {{"six", "square", 6, feet(9.0)},
                 {"five", "triangle", 5, feet(9.0)},
                 {"dry", "circle", 5, feet(9.0)},
                 {"seven", "diamond", 7, feet(9.5)}};
  Line head = line("seven_looped", "seven", true, "WF-7-F", LineKind::LoopedHead, 7);
  head.head_weight = grains(240);
  Line compensated = line("seven_tip_6", "seven", false, "WF-7-F/S", LineKind::SinkingTip, 7);
  compensated.tip_length = feet(15.0);
  compensated.sink_rate_butt = inches_per_second(5.5);
  compensated.sink_rate_end = inches_per_second(6.5);
  tackle.lines = {tip_line("six_tip_5", "six", false, LineKind::SinkingTip, 6, feet(12.5), inches_per_second(5.0)),
                  tip_line("six_tip_4", "six", true, LineKind::SinkingTip, 6, feet(10.0), inches_per_second(4.0)),
                  line("five_nymph", "five", false, "WF-5-F", LineKind::NymphTaper, 5),
                  line("dry_taper", "dry", false, "DT-5-F", LineKind::DoubleTaper, 5),
                  compensated,
                  head};
  tackle.tips = {{"tip_10_7", feet(10.0), inches_per_second(7.0), grains(100)}};
  tackle.flies = {{"streamer_weighted",
                   "weighted streamer",
                   {Method::Swing, Method::Strip},
                   grams(0.55),
                   inches_per_second(5.0),
                   "6"},
                  {"streamer_large", "large streamer", {Method::Strip}, grams(0.8), inches_per_second(4.0), "2"},
                  {"nymph_heavy", "heavy nymph", {Method::Indicator}, grams(0.5), inches_per_second(9.0), "8"},
                  {"dry_small", "mayfly dry", {Method::Dry}, grams(0.04), Speed{}, "16"}};
  tackle.shot = {grams(0.2), grams(0.4)};
  return tackle;
}

}  // namespace floatwright::testing
