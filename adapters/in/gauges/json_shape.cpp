#include "adapters/in/gauges/json_shape.hpp"

#include <algorithm>

namespace floatwright {

JsonShape::JsonShape(const std::vector<JsonPath>& values, const std::vector<JsonPath>& rows) : nodes_(1) {
  for (const JsonPath& row : rows) at(made_at(row.path)).row = row.number;
  for (const JsonPath& value : values) {
    at(made_at(value.path)).slot = value.number;
    slots_ = std::max(slots_, static_cast<std::size_t>(value.number) + 1);
  }
  share_out_slots(0, 0);
}

int JsonShape::child(int node_index, std::string_view key) const {
  const Node& parent = node(node_index);
  for (const int child : parent.children)
    if (node(child).key == key) return child;
  return parent.any_child;
}

int JsonShape::made_at(std::string_view path) {
  int node = 0;
  while (!path.empty()) {
    path.remove_prefix(1);
    const std::string_view key = path.substr(0, path.find('/'));
    node = made_child(node, key);
    path.remove_prefix(key.size());
  }
  return node;
}

int JsonShape::made_child(int parent, std::string_view key) {
  const bool any = key == "*";
  const int known = any ? at(parent).any_child : child(parent, key);
  if (known >= 0 && (any || known != at(parent).any_child)) return known;
  const int made = static_cast<int>(nodes_.size());
  nodes_.emplace_back().key = key;
  if (any)
    at(parent).any_child = made;
  else
    at(parent).children.push_back(made);
  return made;
}

void JsonShape::share_out_slots(int from, int row) {
  if (node(from).row >= 0) row = from;
  if (node(from).slot >= 0) at(row).slots_to_empty.push_back(node(from).slot);
  if (node(from).any_child >= 0) share_out_slots(node(from).any_child, row);
  for (const int child : node(from).children) share_out_slots(child, row);
}

}  // namespace floatwright
