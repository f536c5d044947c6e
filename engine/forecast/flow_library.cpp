#include "engine/forecast/flow_library.hpp"

#include <cmath>
#include <limits>

namespace floatwright {
namespace {

constexpr Period kFrozen = std::chrono::hours{240};  // judgement

float rounded(double ln_flow) { return static_cast<float>(std::round(ln_flow * 1e4) / 1e4); }

}  // namespace

FlowLibrary flow_library(const FlowHistory& history) {
  FlowLibrary library;
  if (history.rows.empty()) return library;
  library.start = std::chrono::ceil<std::chrono::days>(history.rows.times.front());
  for (Instant t = library.start; t <= history.newest(); t += library.step) {
    const auto y = history.ln_flow(t);
    library.ln_flow.push_back(y ? rounded(*y) : std::numeric_limits<float>::quiet_NaN());
  }
  return library;
}

std::optional<double> ln_flow_at(const FlowLibrary& library, Instant t) {
  const Period since = t - library.start;
  if (since < Period{} || since % library.step != Period{}) return std::nullopt;
  const auto i = static_cast<std::size_t>(since / library.step);
  if (i >= library.ln_flow.size() || std::isnan(library.ln_flow[i])) return std::nullopt;
  return library.ln_flow[i];
}

std::size_t leave_out_frozen(FlowHistory& history) {
  const auto& rows = history.rows;
  Series<Discharge> kept;
  for (std::size_t first = 0, next = 0; first < rows.size(); first = next) {
    while (next < rows.size() && rows.values[next] == rows.values[first]) ++next;
    if (rows.times[next - 1] - rows.times[first] >= kFrozen) continue;
    for (std::size_t i = first; i < next; ++i) {
      kept.times.push_back(rows.times[i]);
      kept.values.push_back(rows.values[i]);
    }
  }
  const std::size_t left_out = rows.size() - kept.size();
  history.rows = std::move(kept);
  return left_out;
}

}  // namespace floatwright
