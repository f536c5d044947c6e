#include "engine/forecast/daily_record.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace floatwright {
namespace {

using std::chrono::days;
using std::chrono::sys_days;

constexpr double kHole = std::numeric_limits<double>::quiet_NaN();
constexpr std::size_t kLongestStanding = 10, kFewestForMean = 10;

sys_days date_of(Instant label) { return std::chrono::floor<days>(label); }

std::size_t row_of(const DailyRecord& record, sys_days date) {
  return static_cast<std::size_t>((date - record.first).count());
}

DailyRecord empty_between(sys_days first, sys_days last) {
  return {first, std::vector<double>(static_cast<std::size_t>((last - first).count()) + 1, kHole)};
}

void lay_over(DailyRecord& under, const DailyRecord& over) {
  for (std::size_t t = 0; t < over.size(); ++t) {
    const sys_days date = over.date(t);
    if (std::isnan(over.ln_flow[t]) || date < under.first || row_of(under, date) >= under.size()) continue;
    under.ln_flow[row_of(under, date)] = over.ln_flow[t];
  }
}

}  // namespace

double DailyRecord::change(std::size_t t) const { return t == 0 ? kHole : ln_flow[t] - ln_flow[t - 1]; }

double mean_size(const std::vector<double>& values, std::size_t from, std::size_t to) {
  double sum = 0.0;
  std::size_t count = 0;
  for (std::size_t i = from; i < to; ++i) {
    if (std::isnan(values[i])) continue;
    sum += std::abs(values[i]);
    ++count;
  }
  return count < kFewestForMean ? kHole : sum / static_cast<double>(count);
}

DailyRecord daily_record(const Series<Discharge>& means) {
  const auto above_zero = [](Discharge q) { return q > Discharge{}; };
  const auto first = std::find_if(means.values.begin(), means.values.end(), above_zero);
  if (first == means.values.end()) return {};
  const auto last = std::find_if(means.values.rbegin(), means.values.rend(), above_zero);
  const auto from = static_cast<std::size_t>(first - means.values.begin());
  const auto to = static_cast<std::size_t>(means.values.rend() - last);
  DailyRecord record = empty_between(date_of(means.times[from]), date_of(means.times[to - 1]));
  for (std::size_t i = from; i < to; ++i)
    if (above_zero(means.values[i]))
      record.ln_flow[row_of(record, date_of(means.times[i]))] = std::log(means.values[i].si());
  return record;
}

DailyRecord on_the_days_of(const DailyRecord& wanted, const DailyRecord& other) {
  DailyRecord out{wanted.first, std::vector<double>(wanted.size(), kHole)};
  lay_over(out, other);
  return out;
}

DailyRecord without_frozen(DailyRecord record) {
  std::size_t start = 0;
  for (std::size_t t = 1; t <= record.size(); ++t) {
    if (t < record.size() && record.ln_flow[t] == record.ln_flow[start]) continue;
    if (t - start > kLongestStanding)
      std::fill(record.ln_flow.begin() + static_cast<std::ptrdiff_t>(start + 1),
                record.ln_flow.begin() + static_cast<std::ptrdiff_t>(t), kHole);
    start = t;
  }
  return record;
}

DailyRecord joined(const FlowLibrary& kept, const DailyRecord& newer) {
  const DailyRecord older{date_of(kept.start), {kept.ln_flow.begin(), kept.ln_flow.end()}};
  if (older.size() == 0) return newer;
  if (newer.size() == 0) return older;
  DailyRecord out = empty_between(std::min(older.first, newer.first),
                                  std::max(older.date(older.size() - 1), newer.date(newer.size() - 1)));
  lay_over(out, older);
  lay_over(out, newer);
  return out;
}

FlowLibrary library_of(const DailyRecord& record) {
  FlowLibrary library{.start = record.first, .step = days{1}, .ln_flow = {}};
  for (const double y : record.ln_flow) library.ln_flow.push_back(static_cast<float>(std::round(y * 1e4) / 1e4));
  return library;
}

}  // namespace floatwright
