#include "engine/tackle/tackle_problems.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string_view>

#include "engine/tackle/line_code.hpp"
#include "engine/tackle/names.hpp"

namespace floatwright {
namespace {

constexpr Length kShortestRod = metres(1.5), kLongestRod = metres(6.0);
constexpr Length kLongestTip = metres(15.0);
constexpr Speed kFastestLine = inches_per_second(15.0), kFastestFly = metres_per_second(1.5);
constexpr Mass kHeaviestFly = grams(10.0), kHeaviestShot = grams(10.0);

class Report {
 public:
  void add(std::string pointer, std::string found, std::string allowed, std::string mend) {
    problems_.push_back({{}, 0, std::move(pointer), std::move(found), std::move(allowed), std::move(mend), false});
  }
  void warn(std::string pointer, std::string found, std::string allowed, std::string mend) {
    add(std::move(pointer), std::move(found), std::move(allowed), std::move(mend));
    problems_.back().warning = true;
  }
  [[nodiscard]] Problems take() { return std::move(problems_); }

 private:
  Problems problems_;
};

std::string at(std::string_view list, std::size_t i, std::string_view key = "") {
  return key.empty() ? fmt::format("/{}/{}", list, i) : fmt::format("/{}/{}/{}", list, i, key);
}

template <class Thing>
void check_ids(Report& report, std::string_view list, const std::vector<Thing>& things) {
  std::map<std::string, std::size_t> seen;
  for (std::size_t i = 0; i < things.size(); ++i) {
    const std::string& id = things[i].id;
    if (id.empty()) report.add(at(list, i, "id"), "no id", "a short name of its own", "Give it an id.");
    const auto [first, fresh] = seen.emplace(id, i);
    if (fresh || id.empty()) continue;
    report.add(at(list, i, "id"), fmt::format("\"{}\", which /{}/{} has already", id, list, first->second),
               "an id of its own", "Rename one of the two.");
  }
}

void check_rod(Report& report, std::size_t i, const Rod& rod) {
  if (!standard_mass(rod.line_number)) {
    report.add(at("rods", i, "line_number"), fmt::format("{}", rod.line_number), "1 to 15",
               "Give the line number written over the rod's grip.");
  }
  if (rod.length < kShortestRod || rod.length > kLongestRod) {
    report.add(at("rods", i, "length_ft"), fmt::format("{:.4g} ft", in_feet(rod.length)), "5 to 19.7 ft",
               "Give the rod's length.");
  }
}

void check_rate(Report& report, const std::string& pointer, Speed rate, Speed most) {
  if (rate > Speed{} && rate <= most) return;
  report.add(pointer, fmt::format("{:.4g} in/s", in_inches_per_second(rate)),
             fmt::format("over 0, at most {:.3g} in/s", in_inches_per_second(most)), "Give the rate in still water.");
}

void check_rates(Report& report, std::size_t i, const Line& line) {
  const std::pair<const char*, const std::optional<Speed>*> rates[] = {{"sink_rate_in_s", &line.sink_rate},
                                                                       {"sink_rate_butt_in_s", &line.sink_rate_butt},
                                                                       {"sink_rate_end_in_s", &line.sink_rate_end}};
  for (const auto& [key, rate] : rates) {
    if (*rate) check_rate(report, at("lines", i, key), **rate, kFastestLine);
  }
  if (line.sink_rate_butt.has_value() != line.sink_rate_end.has_value()) {
    report.add(at("lines", i), "the sink rate of one end alone", "both ends, or one rate for all",
               "Give both sink_rate_butt and sink_rate_end, or sink_rate.");
  } else if (line.sink_rate_butt && *line.sink_rate_end < *line.sink_rate_butt) {
    report.warn(at("lines", i, "sink_rate_end_in_s"), "an end that sinks slower than the butt",
                "in a density-compensated line the fly's end sinks fastest", "See whether the two are swapped.");
  }
  if (!line.sink_rate && !line.sink_rate_butt && !line.sink_rate_end) {
    report.add(at("lines", i), "a sinking line without a sink rate", "sink_rate, or sink_rate_butt and sink_rate_end",
               "Give the rate in still water, in inches per second.");
  }
}

void check_tip_length(Report& report, const std::string& pointer, const std::optional<Length>& length) {
  if (length && *length > Length{} && *length <= kLongestTip) return;
  report.add(pointer, length ? fmt::format("{:.4g} ft", in_feet(*length)) : std::string("no length"),
             "over 0, at most 49 ft", "Give the length of the part that sinks.");
}

bool tip_fits(const Line& line, const LoopedTip& tip) {
  if (!tip.weight) return true;
  return !(line.least_tip && *tip.weight < *line.least_tip) && !(line.most_tip && *tip.weight > *line.most_tip);
}

void check_looped(Report& report, std::size_t i, const Line& line, const std::vector<LoopedTip>& tips) {
  if (line.least_tip && line.most_tip && *line.most_tip < *line.least_tip) {
    report.add(at("lines", i, "most_tip_gr"), "a heaviest tip under the lightest", "most_tip at least least_tip",
               "Swap the two.");
  } else if (std::none_of(tips.begin(), tips.end(), [&](const LoopedTip& tip) { return tip_fits(line, tip); })) {
    report.warn(at("lines", i), "a looped head with no tip that it carries", "a tip within least_tip and most_tip",
                "Add the tip to /tips, or leave the head out.");
  }
}

void check_code(Report& report, std::size_t i, const Line& line) {
  const auto code = read_line_code(line.code);
  if (!code) {
    report.add(at("lines", i, "code"), fmt::format("\"{}\"", line.code),
               "taper L, DT, WF, ST or SH; number 1 to 15; function F, S, I or F/S, such as WF-6-F",
               "Write the code printed on the line's box.");
    return;
  }
  const bool sinks_all = line.kind == LineKind::FullSinking;
  const bool says_sinking = code->function == LineFunction::Sinking || code->function == LineFunction::Intermediate;
  const bool tipped = line.kind == LineKind::SinkingTip || line.kind == LineKind::ClearTip;
  if (sinks_all != says_sinking && !tipped) {
    report.warn(at("lines", i, "code"), fmt::format("\"{}\" on a line of this kind", line.code),
                "S or I on a full sinking line and on no other", "See which of code and kind is right.");
  }
}

void check_line(Report& report, std::size_t i, const Line& line, const Tackle& tackle) {
  const bool known =
      std::any_of(tackle.rods.begin(), tackle.rods.end(), [&](const Rod& r) { return r.id == line.on_rod; });
  if (!line.on_rod.empty() && !known) {
    report.add(at("lines", i, "on_rod"), fmt::format("\"{}\"", line.on_rod), "the id of one of /rods",
               "Name the rod that carries it.");
  }
  check_code(report, i, line);
  switch (line.kind) {
    case LineKind::SinkingTip:
    case LineKind::ClearTip:
    case LineKind::FloatingWithSinkingLeader:
      check_tip_length(report, at("lines", i, "tip_length_ft"), line.tip_length);
      check_rates(report, i, line);
      break;
    case LineKind::FullSinking:
      check_rates(report, i, line);
      break;
    case LineKind::LoopedHead:
      check_looped(report, i, line, tackle.tips);
      break;
    default:
      break;
  }
}

void check_main_spools(Report& report, const std::vector<Line>& lines) {
  std::map<std::string, std::size_t> main;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].spare_spool || lines[i].on_rod.empty()) continue;
    const auto [first, fresh] = main.emplace(lines[i].on_rod, i);
    if (fresh) continue;
    report.add(at("lines", i, "spool"), fmt::format("a second main spool on rod \"{}\"", lines[i].on_rod),
               fmt::format("one main spool a rod; /lines/{} is it", first->second), "Make one of them a spare.");
  }
}

void check_fly(Report& report, std::size_t i, const FlyClass& fly) {
  if (fly.uses.empty())
    report.add(at("flies", i, "use"), "no method", "at least one method", "Say what it is fished with.");
  if (!fly.mass) {
    report.warn(at("flies", i), "no mass", "the mass of one fly",
                "Weigh ten of them: without it the fly is left out of the choice.");
  } else if (!(*fly.mass > Mass{}) || *fly.mass > kHeaviestFly) {
    report.add(at("flies", i, "mass_g"), fmt::format("{:.4g} g", in_grams(*fly.mass)), "over 0, at most 10 g",
               "Weigh ten of them.");
  }
  const bool only_dry = std::all_of(fly.uses.begin(), fly.uses.end(), [](Method m) { return m == Method::Dry; });
  if (!only_dry) check_rate(report, at("flies", i, "sink_rate_in_s"), fly.sink_rate, kFastestFly);
}

void check_uses(Report& report, const std::vector<FlyClass>& flies, const std::set<Method>& fished) {
  std::string missing;
  for (const Method method : fished) {
    const auto used = [&](const FlyClass& fly) {
      return std::find(fly.uses.begin(), fly.uses.end(), method) != fly.uses.end();
    };
    if (std::any_of(flies.begin(), flies.end(), used)) continue;
    missing += (missing.empty() ? "" : ", ") + std::string{word_for(method)};
  }
  if (missing.empty()) return;
  report.warn("/flies", "no fly for " + missing, "a fly for every method that is fished",
              "Add one, or leave the method out of the settings.");
}

}  // namespace

Problems tackle_problems(const Tackle& tackle, const std::set<Method>& fished) {
  Report report;
  if (tackle.rods.empty()) report.add("/rods", "no rod", "at least one", "Add the rods aboard.");
  if (tackle.lines.empty()) report.add("/lines", "no line", "at least one", "Add the lines on the rods.");
  if (tackle.flies.empty()) report.add("/flies", "no fly", "at least one", "Add the classes of fly in the boxes.");
  check_ids(report, "rods", tackle.rods);
  check_ids(report, "lines", tackle.lines);
  check_ids(report, "tips", tackle.tips);
  check_ids(report, "flies", tackle.flies);
  for (std::size_t i = 0; i < tackle.rods.size(); ++i) check_rod(report, i, tackle.rods[i]);
  for (std::size_t i = 0; i < tackle.lines.size(); ++i) check_line(report, i, tackle.lines[i], tackle);
  check_main_spools(report, tackle.lines);
  for (std::size_t i = 0; i < tackle.tips.size(); ++i) {
    check_tip_length(report, at("tips", i, "length_ft"), tackle.tips[i].length);
    check_rate(report, at("tips", i, "sink_rate_in_s"), tackle.tips[i].sink_rate, kFastestLine);
  }
  for (std::size_t i = 0; i < tackle.flies.size(); ++i) check_fly(report, i, tackle.flies[i]);
  if (!tackle.flies.empty()) check_uses(report, tackle.flies, fished);
  for (std::size_t i = 0; i < tackle.shot.size(); ++i) {
    if (tackle.shot[i] > Mass{} && tackle.shot[i] <= kHeaviestShot) continue;
    report.add(at("shot_g", i), fmt::format("{:.4g} g", in_grams(tackle.shot[i])), "over 0, at most 10 g",
               "Give the mass of one piece.");
  }
  return report.take();
}

}  // namespace floatwright
