#include "engine/coverage/usual_lines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace floatwright {
namespace {

struct UsualLine {
  const char* code;  // taper and function; the number is the rod's
  LineKind kind;
  Length tip;       // zero: no sinking part, or all of it
  Speed sink_rate;  // zero: floats
};

constexpr std::array<UsualLine, 12> kUsualLines{{
    {"WF-{}-F/S", LineKind::SinkingTip, feet(5.0), inches_per_second(4.0)},
    {"WF-{}-F/S", LineKind::SinkingTip, feet(10.0), inches_per_second(3.0)},
    {"WF-{}-F/S", LineKind::SinkingTip, feet(10.0), inches_per_second(6.0)},
    {"WF-{}-F/S", LineKind::SinkingTip, feet(15.0), inches_per_second(3.0)},
    {"WF-{}-F/S", LineKind::SinkingTip, feet(15.0), inches_per_second(6.0)},
    {"WF-{}-F/S", LineKind::SinkingTip, feet(24.0), inches_per_second(6.0)},
    {"WF-{}-F/S", LineKind::ClearTip, feet(10.0), inches_per_second(1.5)},
    {"WF-{}-I", LineKind::FullSinking, Length{}, inches_per_second(1.5)},
    {"WF-{}-S", LineKind::FullSinking, Length{}, inches_per_second(3.0)},
    {"WF-{}-S", LineKind::FullSinking, Length{}, inches_per_second(6.0)},
    {"WF-{}-F", LineKind::NymphTaper, Length{}, Speed{}},
    {"DT-{}-F", LineKind::DoubleTaper, Length{}, Speed{}},
}};

bool near(double a, double b) { return std::abs(a - b) <= 0.25 * std::max(a, b); }

bool is_like(const Line& owned, const Line& usual) {
  const auto length = [](const Line& line) { return in_metres(line.tip_length.value_or(Length{})); };
  const auto rate = [](const Line& line) { return in_metres_per_second(line.sink_rate.value_or(Speed{})); };
  return owned.kind == usual.kind && near(length(owned), length(usual)) && near(rate(owned), rate(usual));
}

Line line_on(const Rod& rod, const UsualLine& usual) {
  Line line;
  line.id = fmt::format("usual_{}", &usual - kUsualLines.data() + 1);
  line.on_rod = rod.id;
  line.spare_spool = true;
  line.code = fmt::format(fmt::runtime(usual.code), rod.line_number);
  line.kind = usual.kind;
  line.line_number = rod.line_number;
  if (usual.tip > Length{}) line.tip_length = usual.tip;
  if (usual.sink_rate > Speed{}) line.sink_rate = usual.sink_rate;
  return line;
}

}  // namespace

ListedTackle with_usual_lines(const ListedTackle& listed) {
  ListedTackle more = listed;
  const bool some_typed = !(listed.rods_thought_of.empty() && listed.lines_thought_of.empty() && listed.tips_thought_of.empty());
  if (some_typed || listed.all.rods.empty()) return more;
  const auto [lightest, heaviest] = std::ranges::minmax_element(listed.all.rods, {}, &Rod::line_number);
  for (const UsualLine& usual : kUsualLines) {
    const Line line = line_on(usual.sink_rate > Speed{} ? *heaviest : *lightest, usual);
    if (std::ranges::any_of(listed.all.lines, [&](const Line& own) { return is_like(own, line); })) continue;
    more.lines_thought_of.insert(more.all.lines.size());
    more.all.lines.push_back(line);
  }
  return more;
}

}  // namespace floatwright
