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
                    .port = part(all, CURLUPART_PORT, CURLU_DEFAULT_PORT),
                    .names_user = !part(all, CURLUPART_USER).empty() || !part(all, CURLUPART_PASSWORD).empty()};
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

std::optional<std::string> why_not_fetched(const std::string& url, const std::string& from) {
  const auto address = web_address(url), before = web_address(from);
  if (!address) return "not an address of the web; it must begin with https://";
  if (address->names_user) return "refused: no name or password may stand in an address";
  const bool safe = address->scheme == "https" || (address->scheme == "http" && is_loopback(address->host));
  if (!safe && before) return "refused to follow a redirect to " + without_query(url) + ": only https is fetched";
  if (!safe) return "refused: only https is fetched (plain http only from a loopback address); write https://";
  if (!before || before->server() == address->server()) return std::nullopt;
  return "refused to follow a redirect to another server (" + without_query(url) +
         "); the service may have moved: look at its pages";
}

std::string without_query(const std::string& url) {
  const std::string bare = url.substr(0, url.find_first_of("?#"));
  const auto host = bare.find("://");
  const auto begin = host == std::string::npos ? 0 : host + 3;
  const auto at = bare.substr(0, bare.find('/', begin)).rfind('@');
  return at == std::string::npos || at < begin ? bare : bare.substr(0, begin) + bare.substr(at + 1);
}

}  // namespace floatwright
