#include "adapters/out/state/table_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <type_traits>

#include "adapters/out/state/fingerprint.hpp"

namespace floatwright {
namespace {

static_assert(std::is_trivially_copyable_v<FishingTable>);

template <class T>
void append(std::string& bytes, const T& value) {
  bytes.append(reinterpret_cast<const char*>(&value), sizeof value);
}

// What stands before the tables: another machine, model or physics has another head.
std::string head(const TableOrder& order) {
  constexpr std::uint32_t kByteOrder = 0x01020304;
  std::string bytes = "floatwright fishing tables\n";
  append(bytes, kByteOrder);
  append(bytes, kTableModel);
  append(bytes, std::uint64_t{order.physics.size()});
  for (const double value : order.physics) append(bytes, value);
  append(bytes, std::uint64_t{order.techniques.size()});
  return bytes;
}

bool can_be(const CastSeries& series) {
  const auto all_can = [](const auto& values) {
    return std::ranges::all_of(values, [](float v) { return std::isfinite(v) && v >= 0.0f; });
  };
  return std::isfinite(series.end_s) && std::isfinite(series.lies_m) && series.lies_m >= 0.0f && series.hang_s >= 0.0f &&
         series.end_s >= series.hang_s && all_can(series.fly_m) && all_can(series.tip_m) && all_can(series.pace_m_s);
}

bool can_be(const FishingTable& table) {
  return table.leader >= Length{} && std::isfinite(table.leader.si()) && std::isfinite(table.deeper_per_c) &&
         std::ranges::all_of(table.nodes, [](const CastSeries& node) { return can_be(node); });
}

// Takes a value off the front of the bytes; none where they are too few.
template <class T>
std::optional<T> taken(std::string_view& bytes) {
  if (bytes.size() < sizeof(T)) return std::nullopt;
  T value;
  std::memcpy(static_cast<void*>(&value), bytes.data(), sizeof value);
  bytes.remove_prefix(sizeof value);
  return value;
}

}  // namespace

std::string table_file_name(const TableOrder& order) { return fmt::format("{:016x}.tables", fingerprint(head(order))); }

std::string table_file(const TableOrder& order, const TableSet& tables) {
  std::string bytes = head(order);
  bytes.reserve(bytes.size() + tables.size() * (sizeof(FishingTable) + 1) + sizeof(std::uint64_t));
  for (const auto& table : tables) {
    append(bytes, static_cast<char>(table ? 1 : 0));
    if (table) append(bytes, *table);
  }
  append(bytes, fingerprint(bytes));
  return bytes;
}

std::optional<TableSet> tables_from(std::string_view bytes, const TableOrder& order) {
  const std::string wanted = head(order);
  if (bytes.size() < wanted.size() + sizeof(std::uint64_t) || !bytes.starts_with(wanted)) return std::nullopt;
  std::string_view end = bytes.substr(bytes.size() - sizeof(std::uint64_t));
  bytes.remove_suffix(end.size());
  if (taken<std::uint64_t>(end) != fingerprint(bytes)) return std::nullopt;
  bytes.remove_prefix(wanted.size());
  TableSet tables;
  for (std::size_t i = 0; i < order.techniques.size(); ++i) {
    const auto there = taken<char>(bytes);
    if (!there) return std::nullopt;
    auto table = *there == 1 ? taken<FishingTable>(bytes) : std::nullopt;
    if (*there == 1 && (!table || !can_be(*table))) return std::nullopt;
    tables.push_back(std::move(table));
  }
  return bytes.empty() ? std::optional(std::move(tables)) : std::nullopt;
}

}  // namespace floatwright
