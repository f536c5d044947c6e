#include "adapters/in/http/http_get.hpp"

#include <curl/curl.h>

#include <algorithm>
#include <memory>
#include <optional>

#include "adapters/in/http/web_address.hpp"

namespace floatwright {
namespace {

constexpr int kMostRedirects = 5;
constexpr long kConnectSeconds = 30;

struct CurlEnd {
  void operator()(CURL* curl) const { curl_easy_cleanup(curl); }
  void operator()(curl_slist* list) const { curl_slist_free_all(list); }
};
using Curl = std::unique_ptr<CURL, CurlEnd>;
using HeaderList = std::unique_ptr<curl_slist, CurlEnd>;

struct Received {
  std::string body;
  std::size_t limit = 0;
  bool too_long = false;
};

// The limit counts unpacked bytes, so a small gzip can't fill the memory.
std::size_t receive(char* data, std::size_t size, std::size_t count, void* into) {
  auto& received = *static_cast<Received*>(into);
  if (size * count > received.limit - received.body.size()) {
    received.too_long = true;
    return 0;
  }
  received.body.append(data, size * count);
  return size * count;
}

Failure failure(const std::string& url, const std::string& what) {
  return {without_query(url) + ": " + what, kExitNothingMade};
}

std::optional<std::string> why_refused(const std::string& url, const std::optional<std::string>& from) {
  const auto address = web_address(url);
  if (!address) return "not an address of the web; it must begin with https://";
  if (address->scheme != "https" && !(address->scheme == "http" && is_loopback(address->host)))
    return "refused: only https is fetched (plain http only from a loopback address); write https://";
  if (!from) return std::nullopt;
  const auto before = web_address(*from);
  if (before && before->host == address->host && (address->scheme == "https" || before->port == address->port))
    return std::nullopt;
  return "refused to follow a redirect to another host (" + address->host + "); the service may have moved";
}

HeaderList headers_of(const HttpRequest& request) {
  HeaderList list;
  for (const std::string& header : request.headers) {
    curl_slist* const longer = curl_slist_append(list.get(), header.c_str());
    if (longer == nullptr) continue;
    list.release();
    list.reset(longer);
  }
  return list;
}

void set_up(CURL* curl, const HttpRequest& request, const std::string& url, Received& received, char* error_text) {
  curl_easy_setopt(curl, CURLOPT_URL, url.c_str());
  curl_easy_setopt(curl, CURLOPT_PROTOCOLS_STR, "http,https");
  curl_easy_setopt(curl, CURLOPT_FOLLOWLOCATION, 0L);
  curl_easy_setopt(curl, CURLOPT_SSLVERSION, static_cast<long>(CURL_SSLVERSION_TLSv1_2));
  curl_easy_setopt(curl, CURLOPT_ACCEPT_ENCODING, "gzip");
  curl_easy_setopt(curl, CURLOPT_NOSIGNAL, 1L);
  curl_easy_setopt(curl, CURLOPT_CONNECTTIMEOUT, kConnectSeconds);
  curl_easy_setopt(curl, CURLOPT_TIMEOUT, std::max(1L, static_cast<long>(request.time_limit.count())));
  curl_easy_setopt(curl, CURLOPT_ERRORBUFFER, error_text);
  curl_easy_setopt(curl, CURLOPT_WRITEFUNCTION, receive);
  curl_easy_setopt(curl, CURLOPT_WRITEDATA, &received);
  if (!request.user_agent.empty()) curl_easy_setopt(curl, CURLOPT_USERAGENT, request.user_agent.c_str());
  if (!request.ca_file.empty()) curl_easy_setopt(curl, CURLOPT_CAINFO, request.ca_file.c_str());
  const auto address = web_address(url);
  if (address && is_loopback(address->host)) curl_easy_setopt(curl, CURLOPT_PROXY, "");
}

std::string why_failed(CURLcode code, const Received& received, const HttpRequest& request, const char* error_text) {
  if (received.too_long)
    return "the answer is longer than " + std::to_string(request.size_limit) + " bytes; ask for a shorter time";
  if (code == CURLE_OPERATION_TIMEDOUT)
    return "no whole answer within " + std::to_string(request.time_limit.count()) + " s; try again later";
  const std::string detail = *error_text != '\0' ? error_text : curl_easy_strerror(code);
  return "not reached (" + detail + ")";
}

struct OneAnswer {
  HttpAnswer answer;
  std::optional<std::string> redirect;
};

Result<OneAnswer> get_once(const HttpRequest& request, const std::string& url) {
  static const CURLcode kReady = curl_global_init(CURL_GLOBAL_DEFAULT);
  const Curl curl{kReady == CURLE_OK ? curl_easy_init() : nullptr};
  if (!curl) return tl::unexpected(failure(url, "the HTTP library can't be started"));

  Received received{.body = {}, .limit = request.size_limit, .too_long = false};
  char error_text[CURL_ERROR_SIZE] = "";
  const HeaderList headers = headers_of(request);
  set_up(curl.get(), request, url, received, error_text);
  if (headers) curl_easy_setopt(curl.get(), CURLOPT_HTTPHEADER, headers.get());
  const CURLcode code = curl_easy_perform(curl.get());
  if (code != CURLE_OK) return tl::unexpected(failure(url, why_failed(code, received, request, error_text)));

  long status = 0;
  const char *type = nullptr, *redirect = nullptr;
  curl_easy_getinfo(curl.get(), CURLINFO_RESPONSE_CODE, &status);
  curl_easy_getinfo(curl.get(), CURLINFO_CONTENT_TYPE, &type);
  curl_easy_getinfo(curl.get(), CURLINFO_REDIRECT_URL, &redirect);
  OneAnswer out;
  out.answer = {.status = static_cast<int>(status),
                .content_type = type == nullptr ? "" : type,
                .body = std::move(received.body)};
  if (redirect != nullptr) out.redirect = redirect;
  return out;
}

}  // namespace

Result<HttpAnswer> http_get(const HttpRequest& request) {
  std::string url = request.url;
  std::optional<std::string> from;
  for (int hop = 0; hop <= kMostRedirects; ++hop) {
    if (const auto why = why_refused(url, from)) return tl::unexpected(failure(url, *why));
    auto got = get_once(request, url);
    if (!got) return tl::unexpected(got.error());
    if (!got->redirect) return got->answer;
    from = url;
    url = *got->redirect;
  }
  return tl::unexpected(failure(request.url, "redirected more than " + std::to_string(kMostRedirects) + " times"));
}

}  // namespace floatwright
