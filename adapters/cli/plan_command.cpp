// floatwright plan: readings in, the day planned, pages out.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "adapters/cli/commands.hpp"
#include "adapters/cli/common_options.hpp"
#include "adapters/cli/day_inputs.hpp"
#include "adapters/cli/day_tables.hpp"
#include "adapters/cli/gather_order.hpp"
#include "adapters/cli/hand_out.hpp"
#include "adapters/cli/kinds.hpp"
#include "adapters/cli/lock.hpp"
#include "adapters/cli/remember.hpp"
#include "adapters/cli/send.hpp"
#include "adapters/cli/side_by_side.hpp"
#include "adapters/cli/spot_asked_for.hpp"
#include "adapters/in/files/boats_file.hpp"
#include "adapters/in/fetch/gather.hpp"
#include "adapters/out/text/print_text.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/wording/choice_page.hpp"

namespace floatwright {
namespace {

struct PlanOptions : CommonOptions {
  std::vector<std::string> kinds{"plan"};
  std::string paper = "letter", at, boats;
  bool send = false;
  [[nodiscard]] bool makes(const std::string& kind) const { return std::ranges::find(kinds, kind) != kinds.end(); }
};

// What must be right before anything is fetched: the kinds, and for --send all that a letter needs on its way.
std::optional<Failure> wrong_kinds(const PlanOptions& options) {
  for (const auto& name : options.kinds) {
    if (kinds_named(name).empty()) return Failure{fmt::format("--as: found \"{}\"; the kinds are {}", name, known_kinds()), kExitUsage};
  }
  if (options.send && !options.makes("mail")) return Failure{"--send sends the kind mail; write --as mail --send", kExitUsage};
  return std::nullopt;
}

Result<std::optional<Post>> post_wanted(const PlanOptions& options, const Configuration& configuration) {
  if (options.send) return post(configuration).map([](Post ready) { return std::optional{std::move(ready)}; });
  if (!options.makes("mail")) return std::nullopt;
  return mail_settings(configuration).map([](const MailSettings&) { return std::optional<Post>{}; });
}

// A letter that is sent is not printed too; with --out it is a file as well.
std::vector<std::string> printed_kinds(const PlanOptions& options) {
  std::vector<std::string> kinds = options.kinds;
  if (options.send && options.out.empty()) std::erase(kinds, "mail");
  return kinds;
}

// Whatever fetches or writes keeps others out; to look at what is on the disk needs no lock.
Result<RunLock> locked(const PlanOptions& options, const Configuration& configuration) {
  if (options.offline && options.out.empty()) return RunLock{};
  return lock_run(configuration.directory);
}

// The day to plan and its boats; no boats without --boats.
Result<Boats> day_and_boats(const PlanOptions& options, const Configuration& configuration, Instant now) {
  const auto day = day_planned(options, configuration, now);
  if (!day) return tl::unexpected(day.error());
  if (options.boats.empty()) return Boats{*day, {}};
  const auto today = local_date(now, configuration.river.time_zone);
  const DaysAllowed ahead{today, std::chrono::sys_days{today} + days_ahead(configuration.river)};
  auto loaded = load_boats(options.boats, configuration, options.date.empty() ? ahead : DaysAllowed{*day, *day});
  for (const auto& problem : loaded.problems)
    if (!problem.warning || !options.quiet) fmt::print(stderr, "{}\n", say(problem));
  if (loaded.boats) return std::move(*loaded.boats);
  return tl::unexpected(Failure{fmt::format("{}: the boats can't be planned; mend what stands above", options.boats), loaded.exit_code});
}

void tell_what_was_read(const DayInputs& in, const DayPlan& plan) {
  for (const auto& record : in.records) {
    fmt::print(stderr, "{} ({}): {} readings of flow, {} of temperature that can be used\n", record.gauge, record.station,
               record.discharge.size(), record.temperature.size());
  }
  for (const auto& note : plan.notes) fmt::print(stderr, "{}\n", note);
}

void tell_what_was_chosen_from(const DayInputs& in, const DayPlan& plan) {
  if (plan.stretches.empty() || plan.stretches.front().verdict != Verdict::Recommended) return;
  const auto tables = choice_tables(in, plan.stretches.front(), side_by_side);
  fmt::print(stderr, "{}", as_text(choice_page(plan, in, tables)));
}

Printed planned(const PlanOptions& options, const std::vector<BoatOrder>& boats, DayInputs in, TablesAhead tables) {
  Printed printed{{}, options.paper == "a4" ? Paper::A4 : Paper::Letter};
  in.tables = tables.at_hand(in.tackle, in.judgement, {options.quiet, options.verbose});
  if (boats.empty()) {
    printed.boats.push_back(boat_day(std::move(in), side_by_side));
  } else {
    printed.boats = plan_boats(in, boats, side_by_side);
  }
  return printed;
}

int run_plan(const PlanOptions& options) {
  if (const auto wrong = wrong_kinds(options)) return tell(*wrong);
  const auto now = instant_now(options);
  if (!now) return tell(now.error());
  auto configuration = configuration_or_told(options);
  if (!configuration) return tell(configuration.error());
  const auto asked = day_and_boats(options, *configuration, *now);
  if (!asked) return tell(asked.error());
  const auto spot = spot_asked_for(configuration->river, options.at);
  if (!spot) return tell(spot.error());
  const auto letters = post_wanted(options, *configuration);
  if (!letters) return tell(letters.error());
  const auto lock = locked(options, *configuration);
  if (!lock) return tell(lock.error());
  if (const auto ready = prepare_out(options.out); !ready) return tell(ready.error());

  auto in = day_inputs(options, Configuration{*configuration}, *now, asked->day);
  in.spot = *spot;
  TablesAhead tables(in, asked->boats);
  auto gathered = gather_readings(*configuration, gather_order(options, *configuration, *now, kAskAgainAfter));
  for (const auto& trouble : gathered.troubles) say_beside(trouble);

  const std::filesystem::path directory = configuration->directory;
  const auto mail = configuration->mail;
  read_into(in, std::move(gathered));
  if (const auto no_day = day_out_of_reach(in)) return tell(*no_day);
  Printed printed = planned(options, asked->boats, std::move(in), std::move(tables));
  printed.mail = mail;
  recall(printed.boats, directory);
  const DayPlan& plan = printed.boats.front().plan;
  if (options.verbose) {
    tell_what_was_read(printed.boats.front().in, plan);
    for (const BoatDay& boat : printed.boats) tell_what_was_chosen_from(boat.in, boat.plan);
  }
  if (const auto done = hand_out(printed_kinds(options), printed, options.out); !done) return tell(done.error());
  const int sent = *letters ? send_day(printed, **letters, local_date(*now, printed.boats.front().in.river.time_zone)) : kExitFresh;
  const bool left_the_house = !options.out.empty() || (*letters && sent == kExitFresh);
  if (left_the_house) remember(printed.boats, directory, options.verbose);
  return told_how_fresh(plan, "plan", sent);  // else what became of the letter
}

}  // namespace

void add_plan_command(CLI::App& program, RunCommand& run) {
  auto options = std::make_shared<PlanOptions>();
  CLI::App* command = program.add_subcommand("plan", "the float plan for the day: which stretch, which hours, which rods and rigs");
  add_config_option(*command, *options);
  add_day_options(*command, *options);
  command->add_option("--as", options->kinds, fmt::format("what to print: {} (several with commas)", known_kinds()))
      ->delimiter(',')
      ->type_name("KIND[,KIND]");
  command->add_option("--at", options->at, "the day at one spot of river.json instead of a float")->type_name("SPOT");
  command->add_option("--boats", options->boats, "the day's boats (boats.json): a plan for each, one pool of rods")
      ->type_name("FILE")
      ->excludes("--at");
  command->add_option("--paper", options->paper, "size of the sheet: letter (8 1/2 by 11 in) or a4")
      ->type_name("letter|a4")
      ->check(CLI::IsMember({"letter", "a4"}).description(""));
  command->add_flag("--send", options->send, "send the mail (--as mail) to whom settings.json says");
  add_output_options(*command, *options);
  command->footer(
      "Example: floatwright plan --config ~/lantern --as plan,json --out ~/plans\n"
      "         floatwright plan --config ~/lantern --boats ~/lantern/boats.json --as sheet --out ~/plans");
  command->callback([options, &run] { run = [options] { return run_plan(*options); }; });
}

}  // namespace floatwright
