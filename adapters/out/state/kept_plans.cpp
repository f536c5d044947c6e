#include "adapters/out/state/kept_plans.hpp"

#include <date/date.h>
#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "adapters/out/state/fingerprint.hpp"
#include "adapters/out/state/handed_out_json.hpp"

namespace floatwright {
namespace {

using Json = nlohmann::json;

constexpr int kVersion = 1;
constexpr std::chrono::days kKept{7};

std::string name_of(const PlanDrawer& drawer) {
  std::error_code error;
  const auto whole = std::filesystem::weakly_canonical(drawer.configuration, error);
  return fmt::format("{:016x}", fingerprint(error ? drawer.configuration.string() : whole.string()));
}

std::filesystem::path folder_of(const PlanDrawer& drawer) { return drawer.state / "plans"; }

std::filesystem::path file_of(const PlanDrawer& drawer, std::chrono::year_month_day day) {
  const date::sys_days written{std::chrono::sys_days{day}.time_since_epoch()};
  return folder_of(drawer) / (name_of(drawer) + "-" + date::format("%F", written) + ".json");
}

void throw_away_before(const PlanDrawer& drawer, std::chrono::year_month_day day) {
  const std::string oldest = file_of(drawer, std::chrono::sys_days{day} - kKept).filename().string();
  const std::string mine = name_of(drawer) + "-";
  std::error_code error;
  for (const auto& entry : std::filesystem::directory_iterator{folder_of(drawer), error}) {
    const std::string name = entry.path().filename().string();
    if (name.starts_with(mine) && name.size() == oldest.size() && name < oldest) std::filesystem::remove(entry.path(), error);
  }
}

}  // namespace

Result<std::vector<HandedOut>> kept_plans(const PlanDrawer& drawer, std::chrono::year_month_day day) {
  const auto path = file_of(drawer, day);
  std::ifstream in{path, std::ios::binary};
  if (!in) return std::vector<HandedOut>{};
  std::ostringstream text;
  text << in.rdbuf();
  try {
    const Json all = Json::parse(text.str());
    if (all.at("schema_version").get<int>() != kVersion) throw std::runtime_error("another version");
    std::vector<HandedOut> plans;
    for (const Json& plan : all.at("plans")) plans.push_back(handed_out_from(plan));
    return plans;
  } catch (const std::exception& error) {
    return tl::unexpected(Failure{
        fmt::format("{}: is not the plan that was kept here; what changed since can't be told. Remove the file.", path.string()),
        kExitBadData});
  }
}

Result<Written> keep_plans(const PlanDrawer& drawer, const std::vector<HandedOut>& plans) {
  if (plans.empty()) return Written{};
  const auto day = plans.front().day;
  auto all = kept_plans(drawer, day).value_or(std::vector<HandedOut>{});
  for (const HandedOut& plan : plans) {
    std::erase_if(all, [&](const HandedOut& kept) { return kept.whose == plan.whose; });
    all.push_back(plan);
  }
  Json written = Json::array();
  for (const HandedOut& plan : all) written.push_back(as_json(plan));
  std::error_code error;
  std::filesystem::create_directories(folder_of(drawer), error);
  throw_away_before(drawer, day);
  const Json document{{"schema_version", kVersion}, {"plans", std::move(written)}};
  return write_whole_file(file_of(drawer, day), document.dump(1, ' ', false, Json::error_handler_t::replace) + "\n");
}

}  // namespace floatwright
