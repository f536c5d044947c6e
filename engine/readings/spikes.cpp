#include "engine/readings/spikes.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace floatwright {
namespace {

constexpr std::size_t kFewestRows = 5;
constexpr double kDeviations = 3.0;
constexpr double kNormalScale = 1.4826;  // of a normal law, standard deviation over median absolute deviation

// In the variable's SI unit. `middle`: the window's median.
double smallest_deviation(Variable variable, double middle) {
  switch (variable) {
    case Variable::Flow:
      return 0.02 * std::abs(middle);  // m3/s
    case Variable::GaugeHeight:
      return 0.01;  // m
    case Variable::WaterTemperature:
      return 0.2;  // C
    case Variable::Clarity:
      return std::max(2.0, 0.1 * std::abs(middle));  // FNU
    case Variable::AirTemperature:
    case Variable::Rain:
    case Variable::Wind:
      return std::numeric_limits<double>::infinity();  // the weather does jump
  }
  return 0.0;
}

double median(std::vector<double> values) {
  const auto half = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), half, values.end());
  if (values.size() % 2 == 1) return *half;
  return 0.5 * (*half + *std::max_element(values.begin(), half));
}

// -1, 0 or 1: under, within or over what the rows of the window [from, to) allow.
int side(const std::vector<Reading>& rows, std::size_t from, std::size_t to, std::size_t i, Variable variable) {
  if (to - from < kFewestRows) return 0;
  std::vector<double> values;
  for (std::size_t k = from; k < to; ++k) values.push_back(*rows[k].si);
  const double middle = median(values);
  for (double& value : values) value = std::abs(value - middle);
  const double allowed = kDeviations * std::max(kNormalScale * median(values), smallest_deviation(variable, middle));
  const double off = *rows[i].si - middle;
  return off > allowed ? 1 : off < -allowed ? -1 : 0;
}

std::vector<int> sides(const std::vector<Reading>& rows, Variable variable) {
  std::vector<int> out(rows.size(), 0);
  std::size_t from = 0, to = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    while (rows[from].time < rows[i].time - kSpikeWindow) ++from;
    while (to < rows.size() && rows[to].time <= rows[i].time + kSpikeWindow) ++to;
    out[i] = side(rows, from, to, i, variable);
  }
  return out;
}

}  // namespace

std::vector<std::size_t> spikes(const std::vector<Reading>& rows, Variable variable) {
  const std::vector<int> off = sides(rows, variable);
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < off.size(); ++i) {
    if (off[i] == 0) continue;
    const bool like_the_one_before = i > 0 && off[i - 1] == off[i];
    const bool like_the_one_after = i + 1 < off.size() && off[i + 1] == off[i];
    if (!like_the_one_before && !like_the_one_after) out.push_back(i);
  }
  return out;
}

}  // namespace floatwright
