#include "adapters/in/fetch/next_page.hpp"

#include <fmt/format.h>

#include "adapters/in/text/printable.hpp"
#include "adapters/in/http/web_address.hpp"

namespace floatwright {

Result<HttpRequest> next_page(const HttpRequest& request, const std::string& link) {
  const auto to = resolved(request.url, link);
  const auto there = to ? web_address(*to) : std::nullopt, here = web_address(request.url);
  if (!there || !here || there->scheme != here->scheme || there->host != here->host || there->port != here->port)
    return tl::unexpected(Failure{fmt::format("{}: the next page is on another server ({}), not followed",
                                              without_query(request.url), printable(without_query(link))),
                                  kExitNothingMade});
  HttpRequest next = request;
  next.url = *to;
  next.etag = next.last_modified = {};
  return next;
}

}  // namespace floatwright
