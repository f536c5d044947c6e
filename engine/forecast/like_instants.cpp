#include "engine/forecast/like_instants.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/forecast/flow_library.hpp"
#include "engine/statistics/quantile.hpp"

namespace floatwright {
namespace {

constexpr std::array<int, kShapeTerms - 1> kBack{3, 6, 12, 24, 36, 48, 72, 96, 120};  // h
constexpr std::array<float, kShapeTerms> kWeights{1.5F, 1.3F, 1.1F, 1.0F, 0.7F, 0.6F, 0.4F, 0.3F, 0.3F, 0.15F};
constexpr double kFarthestLevel = 3.0;
constexpr std::size_t kLeastLike = 15, kMostLike = 40;
constexpr std::size_t kBlock = 2048;  // rows whose distances stay in the nearest cache

std::optional<FlowShape> shape_of(const auto& ln_flow, Instant t, double ln_median) {
  const std::optional<double> now = ln_flow(t);
  if (!now) return std::nullopt;
  FlowShape shape{};
  for (std::size_t j = 0; j < kBack.size(); ++j) {
    const std::optional<double> then = ln_flow(t - std::chrono::hours{kBack[j]});
    if (!then) return std::nullopt;
    shape[j] = kWeights[j] * static_cast<float>(*then - *now);
  }
  shape.back() = kWeights.back() * static_cast<float>(std::clamp(*now - ln_median, -kFarthestLevel, kFarthestLevel));
  return shape;
}

}  // namespace

std::optional<FlowShape> flow_shape(const FlowHistory& history, Discharge median) {
  return shape_of([&](Instant t) { return history.ln_flow(t); }, history.newest(), std::log(median.si()));
}

LikeInstants::LikeInstants(const FlowLibrary& library, Discharge median) : library_(library) {
  const std::size_t rows = library_.ln_flow.size();
  const double ln_median = std::log(median.si());
  for (auto& column : columns_) column.assign(rows, std::numeric_limits<float>::quiet_NaN());
  std::uint32_t usable = 0;
  for (std::size_t i = 0; i < rows; ++i) {
    usable_before_.push_back(usable);
    const Instant t = library_.start + library_.step * static_cast<Period::rep>(i);
    const auto shape = shape_of([&](Instant at) { return ln_flow_at(library_, at); }, t, ln_median);
    if (!shape) continue;
    ++usable;
    for (std::size_t j = 0; j < kShapeTerms; ++j) columns_[j][i] = (*shape)[j];
  }
  usable_before_.push_back(usable);
  distances_.resize(rows);
}

// A bridged outcome is known only when the row after it is: up to a bridged gap later.
std::size_t LikeInstants::rows_known(Instant t, Period lead) const {
  const Period until = t - lead - kWidestBridgedGap - library_.start;
  const auto steps = static_cast<std::size_t>(lead / library_.step);
  if (until < Period{} || library_.ln_flow.size() <= steps) return 0;
  return std::min(library_.ln_flow.size() - steps, static_cast<std::size_t>(until / library_.step) + 1);
}

void LikeInstants::measure(const FlowShape& shape, std::size_t rows) {
  for (std::size_t begin = 0; begin < rows; begin += kBlock) {
    const std::size_t end = std::min(rows, begin + kBlock);
    std::fill(distances_.begin() + static_cast<std::ptrdiff_t>(begin),
              distances_.begin() + static_cast<std::ptrdiff_t>(end), 0.0F);
    for (std::size_t j = 0; j < kShapeTerms; ++j) {
      const float* column = columns_[j].data();
      float* distances = distances_.data();
      const float here = shape[j];
      for (std::size_t i = begin; i < end; ++i) distances[i] += std::abs(column[i] - here);
    }
  }
}

std::size_t LikeInstants::keep_nearest(std::size_t from, std::size_t until, std::size_t stride, std::size_t most) {
  std::size_t i = from;
  for (; i < until; i += stride) {
    const float distance = distances_[i];
    if (std::isnan(distance)) continue;
    const bool full = nearest_.size() == most;
    if (full && distance >= nearest_.front().distance) continue;
    if (full) {
      std::pop_heap(nearest_.begin(), nearest_.end());
      nearest_.pop_back();
    }
    nearest_.push_back({distance, static_cast<std::uint32_t>(i)});
    std::push_heap(nearest_.begin(), nearest_.end());
  }
  return i;
}

std::optional<double> LikeInstants::median_change(Period lead) const {
  const auto steps = static_cast<std::size_t>(lead / library_.step);
  std::vector<double> changes;
  for (const Near& near : nearest_) {
    const double change = library_.ln_flow[near.row + steps] - library_.ln_flow[near.row];
    if (std::isfinite(change)) changes.push_back(change);
  }
  return changes.size() < kLeastLike ? std::nullopt : std::optional(median(std::move(changes)));
}

// The longest lead has the fewest known outcomes; each shorter one adds the instants since.
std::vector<std::optional<double>> LikeInstants::changes(const FlowShape& shape, const LikeInstantsAsked& asked) {
  std::vector<std::optional<double>> changes(asked.leads.size());
  if (asked.leads.empty()) return changes;
  const std::size_t rows = rows_known(asked.t, asked.leads.front());
  if (rows == 0) return changes;
  measure(shape, rows);
  const std::size_t day = static_cast<std::size_t>(std::chrono::hours{24} / library_.step);
  const std::size_t stride = asked.same_hour ? day : 1;
  const auto half_step = library_.step / 2;
  const auto now = static_cast<std::size_t>((asked.t - library_.start + half_step) / library_.step);
  std::size_t next = asked.same_hour ? now % day : 0;
  const double like = static_cast<double>(usable_before_[rows]) / static_cast<double>(stride);
  const std::size_t most = std::clamp(static_cast<std::size_t>(std::sqrt(like)), kLeastLike, kMostLike);

  nearest_.clear();
  for (std::size_t l = asked.leads.size(); l-- > 0;) {
    next = keep_nearest(next, rows_known(asked.t, asked.leads[l]), stride, most);
    changes[l] = median_change(asked.leads[l]);
  }
  return changes;
}

}  // namespace floatwright
