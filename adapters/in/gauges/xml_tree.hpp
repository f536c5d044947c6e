#pragma once
// An XML tree out of bytes that nobody vouches for: not empty, no web page, whole, UTF-8 (or ISO-8859-1 where it says
// so), one root. Entities of a document type are never expanded, so a bomb of them is harmless; so are elements nested
// without end, which nothing here walks down. Elements and attributes are found by their local names: prefixes are the
// writer's own.
#include <cstddef>
#include <pugixml.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/result.hpp"

namespace floatwright {

// Rows that are left out of a tree but for the first (xml_rows.hpp).
struct XmlRun {
  std::size_t start = 0;                // in the text
  std::vector<std::size_t> piece_ends;  // in the text: behind the first row, behind some hundred more and so on
  std::size_t left_out_before = 0;      // bytes, by the runs before
  bool is_read = false;
};

struct XmlTree {
  pugi::xml_document document;
  pugi::xml_node root;
  std::string_view bytes;
  std::vector<XmlRun> runs;

  [[nodiscard]] std::string place_of(const pugi::xml_node& node) const;  // "line 3, column 14"
};

// By the first sign that is neither blank nor byte order mark; of a web page, too.
[[nodiscard]] bool begins_as_xml(std::string_view bytes);

// `where`: file or address, named in the failure with line and column. The bytes outlive the tree. Of `runs` only the
// first rows are in it, and a failure's place is then not certain; there are none in a text that is not UTF-8, of which
// the tree's places are not the text's.
[[nodiscard]] Result<XmlTree> xml_tree(std::string_view bytes, const std::string& where, std::vector<XmlRun> runs = {});

[[nodiscard]] std::string_view local_name(const pugi::xml_node& node);
// The same as comparing local names, for a million of them: inline, so that the length of `name` is known.
[[nodiscard]] inline bool is_local_name(std::string_view full, std::string_view name) {
  const std::size_t prefix = full.size() - name.size();
  return full.size() >= name.size() && full.substr(prefix) == name && (prefix == 0 || full[prefix - 1] == ':');
}
[[nodiscard]] inline bool is_named(const pugi::xml_node& node, std::string_view name) {
  return is_local_name(node.name(), name);
}
[[nodiscard]] inline bool is_named(const pugi::xml_attribute& attribute, std::string_view name) {
  return is_local_name(attribute.name(), name);
}
// What the root's own prefix stands for.
[[nodiscard]] std::string_view name_space(const pugi::xml_node& root);

// The first child element of that name; an empty node where there is none, of which all below is empty too.
[[nodiscard]] pugi::xml_node child_of(const pugi::xml_node& parent, std::string_view name);
[[nodiscard]] pugi::xml_node last_child_of(const pugi::xml_node& parent, std::string_view name);
[[nodiscard]] std::string_view attribute_of(const pugi::xml_node& node, std::string_view name);
// Without blanks and line breaks around it.
[[nodiscard]] std::string_view text_of(const pugi::xml_node& node);

}  // namespace floatwright
