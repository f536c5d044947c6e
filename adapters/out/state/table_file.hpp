#pragma once
// The tables of one order as the bytes of a file: what it is, for which model and physics, the tables, and a
// fingerprint of all that. Numbers stand as this machine has them; a mark tells one that has them otherwise.
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "engine/sinking/table_order.hpp"

namespace floatwright {

// One name for one physics and model.
[[nodiscard]] std::string table_file_name(const TableOrder& order);

// With every table there.
[[nodiscard]] std::size_t most_bytes(const TableOrder& order);
[[nodiscard]] std::string table_file(const TableOrder& order, const TableSet& tables);
// None unless every byte is as written for this order and model, and every number can be.
[[nodiscard]] std::optional<TableSet> tables_from(std::string_view bytes, const TableOrder& order);

}  // namespace floatwright
