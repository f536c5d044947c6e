#include "adapters/in/http/web_address.hpp"

#include <curl/curl.h>

#include <algorithm>
#include <memory>

namespace floatwright {
namespace {

struct UrlEnd {
  void operator()(CURLU* url) const { curl_url_cleanup(url); }
};
using Url = std::unique_ptr<CURLU, UrlEnd>;

Url parsed(const std::string& text) {
  Url url{curl_url()};
  if (url && curl_url_set(url.get(), CURLUPART_URL, text.c_str(), 0) != CURLUE_OK) url.reset();
  return url;
}

std::string part(const Url& url, CURLUPart which, unsigned flags = 0) {
  char* text = nullptr;
  if (curl_url_get(url.get(), which, &text, flags) != CURLUE_OK || text == nullptr) return {};
  std::string out{text};
  curl_free(text);
  return out;
}

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return text;
}

}  // namespace

std::optional<WebAddress> web_address(const std::string& url) {
  const Url all = parsed(url);
  if (!all) return std::nullopt;
  return WebAddress{.scheme = lower(part(all, CURLUPART_SCHEME)),
                    .host = lower(part(all, CURLUPART_HOST)),
                    .port = part(all, CURLUPART_PORT, CURLU_DEFAULT_PORT)};
}

bool is_loopback(const std::string& host) {
  if (host == "[::1]" || host == "::1") return true;
  return host.rfind("127.", 0) == 0 && std::count(host.begin(), host.end(), '.') == 3 &&
         host.find_first_not_of("0123456789.") == std::string::npos;
}

std::optional<std::string> resolved(const std::string& base, const std::string& href) {
  const Url url = parsed(base);
  if (!url || curl_url_set(url.get(), CURLUPART_URL, href.c_str(), 0) != CURLUE_OK) return std::nullopt;
  return part(url, CURLUPART_URL);
}

std::string without_query(const std::string& url) { return url.substr(0, url.find('?')); }

}  // namespace floatwright
