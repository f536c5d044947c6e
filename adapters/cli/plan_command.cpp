// floatwright plan: readings in, the day planned, pages out.
#include <date/date.h>
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "adapters/cli/commands.hpp"
#include "adapters/cli/common_options.hpp"
#include "adapters/cli/lock.hpp"
#include "adapters/in/gauges/gather.hpp"
#include "adapters/out/calendar/plan_ics.hpp"
#include "adapters/out/files/whole_file.hpp"
#include "adapters/out/json/plan_json.hpp"
#include "adapters/out/map/plan_geojson.hpp"
#include "adapters/out/map/plan_gpx.hpp"
#include "adapters/out/pdf/print_pdf.hpp"
#include "adapters/out/text/print_text.hpp"
#include "engine/wording/float_plan.hpp"
#include "engine/wording/left_ashore.hpp"
#include "engine/wording/rig_sheet.hpp"

namespace floatwright {
namespace {

struct PlanOptions : CommonOptions {
  std::vector<std::string> kinds{"plan"};
  std::string paper = "letter";
};

struct Printed {
  const DayPlan& plan;
  const DayInputs& in;
  Paper paper;
};

struct Kind {
  const char* name;
  const char* ending;  // of its file, behind the day
  Result<std::string> (*print)(const Printed&);
};

Result<std::string> sheet_pdf(const Printed& day) {
  PdfOptions options;
  options.paper = day.paper;
  options.made_at = day.plan.made_at;
  return as_pdf({rig_sheet(day.plan, day.in)}, options);
}

// To add an output: its printer, and its row here. A kind with several rows is several files side by side; on standard
// output it is its first.
const Kind kKinds[] = {
    {"plan", "-plan.txt", [](const Printed& day) -> Result<std::string> { return as_text(float_plan(day.plan, day.in)); }},
    {"sheet", "-sheet.pdf", sheet_pdf},
    {"ashore", "-ashore.txt",
     [](const Printed& day) -> Result<std::string> { return as_text(left_ashore(day.plan, day.in)); }},
    {"json", "-plan.json", [](const Printed& day) -> Result<std::string> { return plan_json(day.plan, day.in); }},
    {"calendar", "-plan.ics", [](const Printed& day) -> Result<std::string> { return plan_ics(day.plan, day.in); }},
    {"map", "-map.geojson", [](const Printed& day) -> Result<std::string> { return plan_geojson(day.plan, day.in); }},
    {"map", "-map.gpx", [](const Printed& day) -> Result<std::string> { return plan_gpx(day.plan, day.in); }},
};

const Kind* kind_named(const std::string& name) {
  for (const auto& kind : kKinds) {
    if (name == kind.name) return &kind;
  }
  return nullptr;
}

std::string known_kinds() {
  std::string all;
  for (const auto& kind : kKinds) {
    if (&kind == kind_named(kind.name)) all += (all.empty() ? "" : ", ") + std::string{kind.name};
  }
  return all;
}

Result<Written> print_out(const std::string& text) {
  if (std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0) return Written{};
  return tl::unexpected(Failure{"standard output could not be written", kExitWriteFailed});
}

Result<Written> write_files(const std::string& name, const std::string& out, const Printed& printed) {
  const auto day = date::format("%F", date::sys_days{std::chrono::sys_days{printed.in.day}.time_since_epoch()});
  for (const auto& kind : kKinds) {
    if (name != kind.name) continue;
    const auto path = std::filesystem::path{out} / fmt::format("{}{}", day, kind.ending);
    const auto text = kind.print(printed);
    if (!text) return tl::unexpected(text.error());
    if (auto written = write_whole_file(path, *text); !written) return written;
  }
  return Written{};
}

Result<Written> hand_out(const PlanOptions& options, const DayPlan& plan, const DayInputs& in) {
  const Printed printed{plan, in, options.paper == "a4" ? Paper::A4 : Paper::Letter};
  for (const auto& name : options.kinds) {
    auto done = options.out.empty() ? kind_named(name)->print(printed).and_then(print_out)
                                    : write_files(name, options.out, printed);
    if (!done) return done;
  }
  return Written{};
}

// Whatever fetches or writes keeps others out; to look at what is on the disk needs no lock.
Result<RunLock> locked(const PlanOptions& options, const Configuration& configuration) {
  if (options.offline && options.out.empty()) return RunLock{};
  return lock_run(configuration.directory);
}

Result<Written> prepare_out(const PlanOptions& options) {
  if (options.out.empty()) return Written{};
  std::error_code error;
  std::filesystem::create_directories(options.out, error);
  if (error) {
    return tl::unexpected(Failure{fmt::format("--out {}: the directory can't be made ({})", options.out, error.message()),
                                  kExitCantCreate});
  }
  return Written{};
}

Result<DayInputs> day_inputs(const PlanOptions& options, Configuration&& configuration, Instant now, Gathered&& gathered) {
  const auto day = day_planned(options, configuration, now);
  if (!day) return tl::unexpected(day.error());
  DayInputs in{std::move(configuration.river),     std::move(configuration.tackle), std::move(configuration.settings),
               std::move(configuration.judgement), std::move(gathered.records),     *day,
               now};
  if (!options.units.empty()) in.settings.units = options.units == "us" ? UnitSystem::Us : UnitSystem::Metric;
  return in;
}

void tell_what_was_read(const DayInputs& in, const DayPlan& plan) {
  for (const auto& record : in.records) {
    fmt::print(stderr, "{} ({}): {} readings of flow, {} of temperature that can be used\n", record.gauge, record.station,
               record.discharge.size(), record.temperature.size());
  }
  for (const auto& note : plan.notes) fmt::print(stderr, "{}\n", note);
}

int run_plan(const PlanOptions& options) {
  for (const auto& name : options.kinds) {
    if (kind_named(name) == nullptr) {
      return tell({fmt::format("--as: found \"{}\"; the kinds are {}", name, known_kinds()), kExitUsage});
    }
  }
  const auto now = instant_now(options);
  if (!now) return tell(now.error());
  auto configuration = configuration_or_told(options);
  if (!configuration) return tell(configuration.error());
  if (const auto day = day_planned(options, *configuration, *now); !day) return tell(day.error());
  const auto lock = locked(options, *configuration);
  if (!lock) return tell(lock.error());
  if (const auto ready = prepare_out(options); !ready) return tell(ready.error());

  auto gathered = gather_readings(*configuration, *now, options.offline);
  for (const auto& trouble : gathered.troubles) fmt::print(stderr, "floatwright: {}\n", trouble);

  const auto in = day_inputs(options, std::move(*configuration), *now, std::move(gathered));
  if (!in) return tell(in.error());
  const DayPlan plan = plan_day(*in);
  if (options.verbose) tell_what_was_read(*in, plan);
  if (const auto done = hand_out(options, plan, *in); !done) return tell(done.error());

  if (plan.nothing) {
    return tell({"no plan: no gauge of this river has a reading that can be used; see the page for what was tried", kExitNothingMade});
  }
  if (!plan.stale) return kExitFresh;
  std::string missing;
  for (const auto& gauge : plan.missing_gauges) missing += (missing.empty() ? "" : ", ") + gauge;
  return tell({missing.empty() ? "made from readings older than 6 h" : "made without fresh readings of: " + missing,
               kExitOldReadings});
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
  command->add_option("--paper", options->paper, "size of the sheet: letter (8 1/2 by 11 in) or a4")
      ->type_name("letter|a4")
      ->check(CLI::IsMember({"letter", "a4"}));
  add_output_options(*command, *options);
  command->footer("Example: floatwright plan --config ~/lantern --as plan,json --out ~/plans");
  command->callback([options, &run] { run = [options] { return run_plan(*options); }; });
}

}  // namespace floatwright
