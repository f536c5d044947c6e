#pragma once
// A table of a page in the tree. Every figure carries the name and unit of its column in a span that the style shows
// where the head of the table is not seen: on a phone, where a row becomes a block.
#include <pugixml.hpp>

#include "engine/wording/page.hpp"

namespace floatwright {

void add_table(pugi::xml_node parent, const PageTable& table);

}  // namespace floatwright
