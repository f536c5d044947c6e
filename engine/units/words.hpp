#pragma once
// A table of the words that files and JSON use for the values of an enum: one table serves the reader and the writer.
#include <algorithm>
#include <array>
#include <optional>
#include <string_view>
#include <utility>

namespace floatwright {

template <class E, std::size_t N>
using WordTable = std::array<std::pair<E, std::string_view>, N>;

// Every value of an enum has its row; "" only for a value that is none.
template <class E, std::size_t N>
[[nodiscard]] constexpr std::string_view word_in(const WordTable<E, N>& table, E value) {
  const auto row = std::find_if(table.begin(), table.end(), [&](const auto& entry) { return entry.first == value; });
  return row == table.end() ? std::string_view{} : row->second;
}

template <class E, std::size_t N>
[[nodiscard]] constexpr std::optional<E> value_in(const WordTable<E, N>& table, std::string_view word) {
  const auto row = std::find_if(table.begin(), table.end(), [&](const auto& entry) { return entry.second == word; });
  return row == table.end() ? std::nullopt : std::optional(row->first);
}

}  // namespace floatwright
