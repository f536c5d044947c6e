#pragma once
// A page as HTML5 for a mail: one style element, no script, nothing fetched from anywhere. It reads with pictures off (alt
// texts), without the style (every figure of a table carries its own name), on a phone (a row of a table becomes a block)
// and in dark mode. Pencil boxes are for paper and left out.
#include <map>
#include <string>

#include "engine/wording/page.hpp"

namespace floatwright {

struct HtmlOptions {
  std::string language = "en";                    // BCP 47
  std::map<std::string, std::string> pictures{};  // by figure name, its address: "cid:..." or "data:..."
};

// A figure without a picture, or with an address that would be fetched, is left out.
[[nodiscard]] std::string as_html(const Page& page, const HtmlOptions& options = {});

}  // namespace floatwright
