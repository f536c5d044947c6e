#include "adapters/out/state/table_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <limits>
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

// Every one is looked at, without a branch: there are millions.
template <std::size_t N>
bool all_can(const std::array<float, N>& values) {
  constexpr float kMost = std::numeric_limits<float>::max();
  int bad = 0;
  for (const float v : values) bad |= static_cast<int>(!(v >= 0.0f)) | static_cast<int>(!(v <= kMost));
  return bad == 0;
}

bool can_be(const CastSeries& series) {
  return std::isfinite(series.end_s) && std::isfinite(series.lies_m) && series.lies_m >= 0.0f && series.hang_s >= 0.0f &&
         series.end_s >= series.hang_s && all_can(series.fly_m) && all_can(series.tip_m) && all_can(series.pace_m_s);
}

bool can_be(const FishingTable& table) {
  return table.leader >= Length{} && std::isfinite(table.leader.si()) && std::isfinite(table.deeper_per_c) &&
         std::ranges::all_of(table.nodes, [](const CastSeries& node) { return can_be(node); });
}

// Takes a value off the front of the bytes, to where it is to be; false where they are too few.
template <class T>
bool take(std::string_view& bytes, T& value) {
  if (bytes.size() < sizeof value) return false;
  std::memcpy(static_cast<void*>(&value), bytes.data(), sizeof value);
  bytes.remove_prefix(sizeof value);
  return true;
}

}  // namespace

std::string table_file_name(const TableOrder& order) { return fmt::format("{:016x}.tables", fingerprint(head(order))); }

std::size_t most_bytes(const TableOrder& order) {
  return head(order).size() + order.techniques.size() * (sizeof(FishingTable) + 1) + sizeof(std::uint64_t);
}

std::string table_file(const TableOrder& order, const TableSet& tables) {
  std::string bytes = head(order);
  bytes.reserve(most_bytes(order));
  for (const auto& table : tables) {
    append(bytes, static_cast<char>(table ? 1 : 0));
    if (table) append(bytes, *table);
  }
  append(bytes, fingerprint_by_words(bytes));
  return bytes;
}

std::optional<TableSet> tables_from(std::string_view bytes, const TableOrder& order) {
  const std::string wanted = head(order);
  if (bytes.size() < wanted.size() + sizeof(std::uint64_t) || !bytes.starts_with(wanted)) return std::nullopt;
  std::string_view end = bytes.substr(bytes.size() - sizeof(std::uint64_t));
  bytes.remove_suffix(end.size());
  std::uint64_t kept = 0;
  if (!take(end, kept) || kept != fingerprint_by_words(bytes)) return std::nullopt;
  bytes.remove_prefix(wanted.size());
  std::optional<TableSet> tables(std::in_place, order.techniques.size());
  for (auto& table : *tables) {
    char there = 0;
    if (!take(bytes, there)) return std::nullopt;
    if (there == 1 && (!take(bytes, table.emplace()) || !can_be(*table))) return std::nullopt;
  }
  if (!bytes.empty()) tables.reset();
  return tables;
}

}  // namespace floatwright
