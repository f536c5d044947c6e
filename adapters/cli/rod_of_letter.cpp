#include "adapters/cli/rod_of_letter.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <map>

#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/out/state/kept_plans.hpp"
#include "adapters/out/state/state_directory.hpp"
#include "engine/wording/clock.hpp"

namespace floatwright {
namespace {

Failure not_known(const RodLetter& asked, const std::string& why, const std::string& mend = "give the rod's id or mark") {
  return {fmt::format("rod: which rod was {} on {} is not known: {}; {}", asked.letter, short_day(asked.day), why, mend),
          kExitBadData};
}

std::string text_of(const std::string& whose) { return whose.empty() ? "the boat" : printable(whose); }

}  // namespace

bool is_rod_letter(const std::string& typed) {
  return typed.size() == 1 && lower_case(typed).front() >= 'a' && lower_case(typed).front() <= 'z';
}

Result<std::string> rod_of_letter(const RodLetter& asked, const Configuration& configuration) {
  const auto state = state_directory();
  if (!state) return tl::unexpected(not_known(asked, state.error().what));
  const auto plans = kept_plans({*state, configuration.directory}, asked.day);
  if (!plans) return tl::unexpected(not_known(asked, plans.error().what));
  const auto place = static_cast<std::size_t>(asked.letter - 'A');
  std::map<std::string, std::vector<std::string>> boats_by_rod;
  std::vector<std::string> boats;
  for (const HandedOut& plan : *plans) {
    boats.push_back(text_of(plan.whose));
    if (!asked.boat.empty() && lower_case(plan.whose) != lower_case(asked.boat)) continue;
    if (plan.stretch && place < plan.stretch->rods.size())
      boats_by_rod[plan.stretch->rods[place].rod].push_back(text_of(plan.whose));
  }
  if (boats.empty()) return tl::unexpected(not_known(asked, "no plan of that day is kept here"));
  if (boats_by_rod.empty())
    return tl::unexpected(not_known(asked, fmt::format("no such rod in the plans kept of that day, of {}", fmt::join(boats, ", "))));
  if (boats_by_rod.size() == 1) return boats_by_rod.begin()->first;
  std::vector<std::string> differ;
  for (const auto& [rod, of] : boats_by_rod) differ.push_back(fmt::format("{} of {}", printable(rod), fmt::join(of, ", ")));
  return tl::unexpected(not_known(
      asked, fmt::format("it was {}", fmt::join(differ, " and ")),
      fmt::format("say whose sheet it was, such as \"boat {}\", or give the rod's id", boats_by_rod.begin()->second.front())));
}

}  // namespace floatwright
