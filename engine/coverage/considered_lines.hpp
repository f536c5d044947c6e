#pragma once
// The lines whose coverage is asked: every line on a rod, owned or not, the first to be taken of equals first
// (engine/tackle/precedence.hpp). A looped tip makes another line of its head. Of rods that are alike with all that is on
// them the first stands for the others (engine/tackle/twins.hpp).
#include <optional>
#include <string>
#include <vector>

#include "engine/choice/angler.hpp"
#include "engine/tackle/listed_tackle.hpp"

namespace floatwright {

struct ConsideredLine {
  std::size_t line = 0;              // index into Tackle::lines
  std::optional<std::size_t> tip{};  // into Tackle::tips
  bool owned = true;
  std::string why_not{};  // why no rig with it can be in the ways that are fished; empty: some can
};

inline constexpr std::size_t kMostConsidered = 64;  // more are left out, the last to be taken of equals first

[[nodiscard]] std::vector<ConsideredLine> considered_lines(const ListedTackle& listed, const Preferences& preferences);

}  // namespace floatwright
