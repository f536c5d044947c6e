#pragma once
// The rows of long XML texts. A tree of a whole text is several times as long as the text and slow to walk, so runs of
// rows are left out of it, and are parsed in pieces of some hundred rows of which each takes the memory of the one
// before.
//
// Where runs are is guessed by their text and proved in reading: a run begins at an element of the tree, and each of
// its pieces is a well-formed fragment of rows alone. Where that fails (rows in a comment, other elements between rows,
// an end tag in character data), the text is read again, as one tree.
#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "adapters/in/gauges/xml_tree.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

struct XmlRow {
  pugi::xml_node node;  // it and its texts last until the next row
  const XmlTree& tree;
  std::optional<std::size_t> piece;  // where in the text the piece begins that it was read from; none: it is in the tree

  [[nodiscard]] std::string place() const;  // "line 3, column 14"
};

// By local names: a row, and the block whose children the rows are.
struct XmlRowNames {
  std::string_view row, block;
};

// Calls `take` with each child of that local name, those that are not in the tree too.
void for_each_row(XmlTree& tree, const pugi::xml_node& block, std::string_view name,
                  const std::function<void(const XmlRow&)>& take);
[[nodiscard]] std::size_t rows_in(XmlTree& tree, const pugi::xml_node& block, std::string_view name);

// What `read` makes of the text. It may be called twice, and must take or count all rows by the functions above.
[[nodiscard]] Result<GaugeAnswer> read_xml(std::string_view bytes, const std::string& where, XmlRowNames names,
                                           const std::function<Result<GaugeAnswer>(XmlTree&)>& read);

}  // namespace floatwright
