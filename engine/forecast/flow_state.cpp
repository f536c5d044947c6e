#include "engine/forecast/flow_state.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

constexpr double kWaveSpan = 0.03;        // ln Q
constexpr double kWaveCorrelation = 0.7;  // of neighbouring windows
constexpr double kRising = 0.02;          // ln Q in 6 h
constexpr double kFalling = -0.005;       // ln Q in 6 h
constexpr int kDaysAfterWave = 10;

using Window = std::array<double, 25>;  // hourly ln Q of 24 h, both ends

// Less the straight line from its first to its last value; none where the record has a hole.
std::optional<Window> detrended(const FlowHistory& history, Instant start) {
  Window window{};
  for (std::size_t h = 0; h < window.size(); ++h) {
    const auto y = history.ln_flow(start + std::chrono::hours{h});
    if (!y) return std::nullopt;
    window[h] = *y;
  }
  const double first = window.front(), net = window.back() - window.front();
  for (std::size_t h = 0; h < window.size(); ++h) window[h] -= first + net * static_cast<double>(h) / 24.0;
  return window;
}

double span(const Window& window) {
  const auto [least, most] = std::minmax_element(window.begin(), window.end());
  return *most - *least;
}

double mean(const Window& window) {
  double sum = 0.0;
  for (const double v : window) sum += v;
  return sum / static_cast<double>(window.size());
}

double correlation(const Window& a, const Window& b) {
  const double mean_a = mean(a), mean_b = mean(b);
  double ab = 0.0, aa = 0.0, bb = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    ab += (a[i] - mean_a) * (b[i] - mean_b);
    aa += (a[i] - mean_a) * (a[i] - mean_a);
    bb += (b[i] - mean_b) * (b[i] - mean_b);
  }
  return aa > 0.0 && bb > 0.0 ? ab / std::sqrt(aa * bb) : 0.0;
}

int percent(double ln_ratio) { return static_cast<int>(std::lround(100.0 * std::expm1(ln_ratio))); }

std::string moved(double ln_ratio) {
  const double change = 100.0 * std::expm1(ln_ratio);
  if (std::abs(change) < 0.05) return "no change in 6 h";
  const std::string size =
      std::abs(change) < 3.0 ? fmt::format("{:.1f}", std::abs(change)) : fmt::format("{:.0f}", std::abs(change));
  return fmt::format("{} {} % in 6 h", change > 0.0 ? "up" : "down", size);
}

std::string wave_sentence(const DailyWave& wave, bool snow_fed) {
  const auto [least, most] = std::minmax_element(wave.span.begin(), wave.span.end());
  const int low = percent(*least), high = percent(*most);
  const std::string size = low == high ? fmt::format("{} %", low) : fmt::format("{} to {} %", low, high);
  return fmt::format("daily {}wave of {} on each of the last three days", snow_fed ? "snowmelt " : "", size);
}

NamedState by_limb(const FlowHistory& history, const std::string& untested) {
  const auto change = history.change_6h();
  if (!change) return {FlowState::Unknown, "no reading six hours before the newest" + untested};
  const double counted = counted_change(*change, std::log(history.rows.values.back().si()), rounding_step(history));
  const std::string why = moved(*change) + untested;
  if (counted > kRising) return {FlowState::Rising, why};
  if (counted < kFalling) return {FlowState::Falling, why};
  return {FlowState::Steady, why};
}

}  // namespace

DailyWave daily_wave(const FlowHistory& history, Instant end) {
  DailyWave wave;
  std::array<Window, 3> windows{};
  for (std::size_t day = 0; day < windows.size(); ++day) {
    const auto window = detrended(history, end - std::chrono::hours{24 * (3 - day)});
    if (!window) return wave;
    windows[day] = *window;
    wave.span[day] = span(*window);
  }
  wave.tested = true;
  wave.present = std::all_of(wave.span.begin(), wave.span.end(), [](double s) { return s > kWaveSpan; }) &&
                 correlation(windows[0], windows[1]) >= kWaveCorrelation &&
                 correlation(windows[1], windows[2]) >= kWaveCorrelation;
  return wave;
}

bool wave_lately(const FlowHistory& history) {
  for (int day = 0; day <= kDaysAfterWave; ++day)
    if (daily_wave(history, history.newest() - std::chrono::hours{24 * day}).present) return true;
  return false;
}

NamedState name_state(const FlowHistory& history, bool below_ramping_dam, bool snow_fed) {
  if (below_ramping_dam) {
    const auto change = history.change_6h();
    return {FlowState::Regulated, (change ? moved(*change) + " " : std::string{}) + "below a dam that ramps"};
  }
  const DailyWave wave = daily_wave(history, history.newest());
  if (wave.present) return {FlowState::DailyWave, wave_sentence(wave, snow_fed)};
  const bool whole = history.newest() - history.rows.times.front() >= std::chrono::hours{72};
  if (wave.tested) return by_limb(history, "");
  return by_limb(history, whole ? "; a gap in the last 72 h, so no test for a daily wave"
                                : "; less than 72 h of record, so no test for a daily wave");
}

}  // namespace floatwright
