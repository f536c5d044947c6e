#pragma once
// Words into the tree of an HTML page; the tree escapes them.
#include <pugixml.hpp>
#include <string>

#include "adapters/out/html/html_text.hpp"

namespace floatwright {

// An element that holds nothing still holds an empty text, or it would be written as if it were void ("<td/>").
inline void add_words(pugi::xml_node parent, const std::string& words) {
  parent.append_child(pugi::node_pcdata).set_value(html_text(words).c_str());
}

inline pugi::xml_node add_element(pugi::xml_node parent, const char* name, const std::string& words) {
  pugi::xml_node element = parent.append_child(name);
  add_words(element, words);
  return element;
}

}  // namespace floatwright
