#include "engine/coverage/considered_lines.hpp"

#include <algorithm>

#include "engine/tackle/precedence.hpp"
#include "engine/tackle/twins.hpp"

namespace floatwright {
namespace {

// Of a line that nothing can be rigged on: what the first fly for a way that is fished breaks.
std::string why_no_rig(const Tackle& tackle, const ConsideredLine& asked, const Preferences& preferences) {
  for (const auto& [method, preference] : preferences.methods) {
    if (preference <= 0.0) continue;
    for (const std::size_t fly : precedence(tackle).flies) {
      if (std::ranges::find(tackle.flies[fly].uses, method) == tackle.flies[fly].uses.end()) continue;
      if (auto verdict = rig_verdict(tackle, {asked.line, asked.tip, fly, {}}, method); verdict.ruled_out)
        return *std::move(verdict.ruled_out);
    }
  }
  return "No fly is listed for the ways in which you fish.";
}

bool can_be_rigged(const Tackle& tackle, const ConsideredLine& asked, const Preferences& preferences) {
  for (const auto& [method, preference] : preferences.methods) {
    if (preference <= 0.0) continue;
    for (const Rig& rig : rigs_for(tackle, method))
      if (rig.line == asked.line && rig.tip == asked.tip) return true;
  }
  return false;
}

}  // namespace

std::vector<ConsideredLine> considered_lines(const ListedTackle& listed, const Preferences& preferences) {
  const Tackle& tackle = listed.all;
  const std::vector<std::size_t> first = lines_of_first_twins(tackle);
  const Precedence order = precedence(tackle);
  std::vector<ConsideredLine> lines;
  const auto add = [&](std::size_t line, std::optional<std::size_t> tip) {
    if (lines.size() == kMostConsidered) return;
    ConsideredLine one{line, tip, is_owned(listed, line, tip), {}};
    if (!can_be_rigged(tackle, one, preferences)) one.why_not = why_no_rig(tackle, one, preferences);
    lines.push_back(std::move(one));
  };
  for (const std::size_t line : order.lines) {
    if (first[line] != line || tackle.lines[line].on_rod.empty()) continue;
    if (tackle.lines[line].kind != LineKind::LoopedHead) add(line, std::nullopt);
    for (const std::size_t tip : order.tips)
      if (tackle.lines[line].kind == LineKind::LoopedHead) add(line, tip);
  }
  return lines;
}

}  // namespace floatwright
