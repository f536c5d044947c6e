#pragma once
// Which values of a JSON text are wanted and which parts of it are rows, declared as data.
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace floatwright {

// A JSON pointer (RFC 6901) in which "*" stands for every key and every place in a list that is not declared itself:
// "/features/*/properties/time", "/siteCode/0/value". "" is the whole. Keys with / or ~ can't be declared.
struct JsonPath {
  std::string path;
  int number = 0;  // of the slot or the row: the reader's own, from 0
};

class JsonShape {
 public:
  // `values`: what fills each slot; two paths may fill one slot, where a service writes now a text, now a list of
  // texts. `rows`: the values whose end is told. The innermost row around a slot empties it where the row begins.
  JsonShape(const std::vector<JsonPath>& values, const std::vector<JsonPath>& rows);

  struct Node {
    std::string key;
    int slot = -1, row = -1, any_child = -1;  // -1: none
    std::vector<int> children;                // those with a key
    std::vector<int> slots_to_empty;          // where this row begins
  };
  [[nodiscard]] const Node& node(int index) const { return nodes_[static_cast<std::size_t>(index)]; }  // 0: the whole
  [[nodiscard]] std::size_t nodes() const { return nodes_.size(); }
  [[nodiscard]] std::size_t slots() const { return slots_; }
  // Of the value under `key`; -1: nothing is wanted of it.
  [[nodiscard]] int child(int node, std::string_view key) const;

 private:
  [[nodiscard]] Node& at(int index) { return nodes_[static_cast<std::size_t>(index)]; }
  int made_at(std::string_view path);
  int made_child(int parent, std::string_view key);
  void share_out_slots(int from, int row);

  std::vector<Node> nodes_;
  std::size_t slots_ = 0;
};

}  // namespace floatwright
