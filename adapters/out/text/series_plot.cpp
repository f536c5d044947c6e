#include "adapters/out/text/series_plot.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace floatwright {
namespace {

constexpr std::size_t kColumns = 60, kLines = 9, kMargin = 14;

struct Column {
  double sum = 0.0;
  std::size_t usable = 0, others = 0;
};

std::vector<Column> columns_of(const std::vector<Reading>& readings, const PlotScale& scale) {
  std::vector<Column> out(kColumns);
  const Period span = scale.to - scale.from;
  for (const Reading& row : readings) {
    if (row.time < scale.from || row.time > scale.to) continue;
    const auto at = static_cast<std::size_t>((row.time - scale.from) * (kColumns - 1) / span);
    if (!scale.is_usable(row)) {
      ++out[at].others;
      continue;
    }
    out[at].sum += *row.si;
    ++out[at].usable;
  }
  return out;
}

// Each where it begins, if the one before has ended.
std::string marks(const PlotScale& scale) {
  std::string out(kColumns, ' '), last = scale.mark(scale.from);
  std::size_t free_from = 0;
  for (std::size_t i = 1; i < kColumns; ++i) {
    const std::string name = scale.mark(scale.from + (scale.to - scale.from) * static_cast<int>(i) / (kColumns - 1));
    if (name == last) continue;
    last = name;
    if (i < free_from || i + name.size() > kColumns) continue;
    out.replace(i, name.size(), name);
    free_from = i + name.size() + 1;
  }
  return out;
}

std::string line(const std::string& label, char edge, std::string drawn) {
  drawn.erase(drawn.find_last_not_of(' ') + 1);
  return fmt::format("{:>{}} {}{}", label, kMargin, edge, drawn);
}

}  // namespace

std::vector<std::string> series_plot(const std::vector<Reading>& readings, const PlotScale& scale) {
  if (scale.to <= scale.from) return {};
  const auto columns = columns_of(readings, scale);
  std::optional<double> least, most;
  bool some = false;
  for (const Column& column : columns) {
    some = some || column.usable + column.others > 0;
    if (column.usable == 0) continue;
    const double mean = column.sum / static_cast<double>(column.usable);
    least = std::min(least.value_or(mean), mean);
    most = std::max(most.value_or(mean), mean);
  }
  if (!some) return {};

  std::vector<std::string> grid(kLines, std::string(kColumns, ' '));
  for (std::size_t i = 0; i < kColumns; ++i) {
    const Column& column = columns[i];
    if (column.usable > 0) {
      const double share = *most > *least ? (column.sum / static_cast<double>(column.usable) - *least) / (*most - *least) : 0.5;
      grid[static_cast<std::size_t>((1.0 - share) * (kLines - 1) + 0.5)][i] = '*';
    } else if (column.others > 0) {
      grid.back()[i] = 'x';
    }
  }
  std::vector<std::string> out;
  for (std::size_t i = 0; i < kLines; ++i) {
    const bool top = i == 0, foot = i + 1 == kLines;
    const std::string label = !most ? "" : top ? scale.value(*most) : foot ? scale.value(*least) : "";
    out.push_back(line(most == least && !top ? "" : label, '|', grid[i]));
  }
  out.push_back(line("", '+', std::string(kColumns, '-')));
  out.push_back(line("", ' ', marks(scale)));
  return out;
}

}  // namespace floatwright
