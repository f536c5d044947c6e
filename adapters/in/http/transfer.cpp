#include "adapters/in/http/transfer.hpp"

#include <curl/curl.h>

#include "adapters/in/text/printable.hpp"
#include "adapters/in/http/web_address.hpp"

namespace floatwright {
namespace {

std::size_t hand_over(char* data, std::size_t size, std::size_t count, void* transfer) {
  return static_cast<Transfer*>(transfer)->receive({data, size * count}) ? size * count : 0;
}

}  // namespace

void Transfer::End::operator()(void* handle) const { curl_easy_cleanup(handle); }
void Transfer::End::operator()(curl_slist* list) const { curl_slist_free_all(list); }

Transfer::Transfer(const HttpManners& manners)
    : manners_(manners), handle_(curl_easy_init()), error_text_(CURL_ERROR_SIZE, '\0') {}

// A line break in a value would begin another header.
void Transfer::add_header(const std::string& line) {
  if (has_control_characters(line)) return;
  if (curl_slist* const longer = curl_slist_append(headers_.get(), line.c_str())) {
    headers_.release();
    headers_.reset(longer);
  }
}

void Transfer::set_headers(const HttpRequest& request, bool post) {
  headers_.reset();
  add_header("Accept-Encoding: gzip");
  for (const std::string& line : request.headers) add_header(line);
  if (!request.secret_header.empty()) add_header(request.secret_header);
  if (post) add_header("Content-Type: " + request.body_type);
  if (!request.etag.empty()) add_header("If-None-Match: " + request.etag);
  if (!request.last_modified.empty()) add_header("If-Modified-Since: " + request.last_modified);
  curl_easy_setopt(handle(), CURLOPT_HTTPHEADER, headers_.get());
}

void Transfer::begin(const HttpRequest& request, const std::string& url, bool post) {
  CURL* const curl = handle();
  curl_easy_reset(curl);
  curl_easy_setopt(curl, CURLOPT_URL, url.c_str());
  curl_easy_setopt(curl, CURLOPT_PRIVATE, this);
  curl_easy_setopt(curl, CURLOPT_PROTOCOLS_STR, "http,https");
  curl_easy_setopt(curl, CURLOPT_FOLLOWLOCATION, 0L);
  curl_easy_setopt(curl, CURLOPT_SSLVERSION, static_cast<long>(CURL_SSLVERSION_TLSv1_2));
  curl_easy_setopt(curl, CURLOPT_CONNECTTIMEOUT_MS, static_cast<long>(manners_.connect_limit.count()));
  curl_easy_setopt(curl, CURLOPT_TIMEOUT_MS, static_cast<long>(manners_.total_limit.count()));
  curl_easy_setopt(curl, CURLOPT_MAXFILESIZE_LARGE, static_cast<curl_off_t>(manners_.size_limit));
  curl_easy_setopt(curl, CURLOPT_ERRORBUFFER, error_text_.data());
  curl_easy_setopt(curl, CURLOPT_WRITEFUNCTION, hand_over);
  curl_easy_setopt(curl, CURLOPT_WRITEDATA, this);
  curl_easy_setopt(curl, CURLOPT_USERAGENT, manners_.user_agent.c_str());
  if (!manners_.ca_file.empty()) curl_easy_setopt(curl, CURLOPT_CAINFO, manners_.ca_file.c_str());
  if (post) {
    curl_easy_setopt(curl, CURLOPT_POSTFIELDSIZE_LARGE, static_cast<curl_off_t>(request.body.size()));
    curl_easy_setopt(curl, CURLOPT_POSTFIELDS, request.body.c_str());
  }
  const auto address = web_address(url);
  if (address && address->scheme == "https") curl_easy_setopt(curl, CURLOPT_PIPEWAIT, 1L);  // one HTTP/2 for all
  if (address && is_loopback(address->host)) curl_easy_setopt(curl, CURLOPT_PROXY, "");
  set_headers(request, post);
  body_.clear();
  why_bad_.clear();
  begun_ = false;
  unpacker_.reset();
  error_text_[0] = '\0';
  heard_at_ = Clock::now();
}

void Transfer::begin_body() {
  begun_ = true;
  const std::string packing = header("Content-Encoding");
  curl_off_t announced = 0;
  curl_easy_getinfo(handle(), CURLINFO_CONTENT_LENGTH_DOWNLOAD_T, &announced);
  const auto is = [&](const char* name) { return curl_strequal(packing.c_str(), name) != 0; };
  if (is("gzip") || is("x-gzip")) {  // the same by RFC 9110, 8.4.1.3
    unpacker_.emplace();
  } else if (!packing.empty() && !is("identity")) {
    why_bad_ = "the answer is packed as \"" + printable(packing) + "\", which was not asked for; tell the service";
  } else if (announced > 0 && static_cast<std::size_t>(announced) <= manners_.size_limit) {
    body_.reserve(static_cast<std::size_t>(announced));
  }
}

// The limit counts unpacked bytes, so a small gzip can't fill the memory.
bool Transfer::receive(std::string_view bytes) {
  heard_at_ = Clock::now();
  if (!begun_) begin_body();
  if (!why_bad_.empty()) return false;
  if (unpacker_) {
    const auto state = unpacker_->take(bytes, body_, manners_.size_limit);
    if (state == Unpacker::State::Broken) why_bad_ = "the answer's gzip can't be unpacked; try again later";
    if (state == Unpacker::State::TooLong) why_bad_ = too_long(manners_);
  } else if (bytes.size() > manners_.size_limit - body_.size()) {
    why_bad_ = too_long(manners_);
  } else {
    body_.append(bytes);
  }
  return why_bad_.empty();
}

std::string Transfer::header(const char* name) const {
  curl_header* found = nullptr;
  if (curl_easy_header(handle(), name, 0, CURLH_HEADER, -1, &found) != CURLHE_OK) return {};
  return found->value;
}

bool Transfer::is_connected() const {
  curl_off_t ready_after = 0;
  curl_easy_getinfo(handle(), CURLINFO_PRETRANSFER_TIME_T, &ready_after);
  return ready_after > 0;
}

Broken Transfer::why_broken(int code) const {
  if (!why_bad_.empty()) return {why_bad_, Broken::Next::GiveUp};
  BrokenTry what{.code = code, .connected = is_connected()};
  curl_easy_getinfo(handle(), CURLINFO_OS_ERRNO, &what.system_error);
  curl_easy_getinfo(handle(), CURLINFO_SSL_VERIFYRESULT, &what.certificate_error);
  what.detail = error_text_[0] != '\0' ? error_text_.c_str() : curl_easy_strerror(static_cast<CURLcode>(code));
  return broken(what, manners_);
}

Try Transfer::end(int code) {
  Try out;
  if (code != CURLE_OK) {
    out.broken = why_broken(code);
    return out;
  }
  if (unpacker_ && !unpacker_->is_whole()) {
    out.broken = {"the answer's gzip was cut short; try again later", Broken::Next::TryAgain};
    return out;
  }
  long status = 0;
  const char *type = nullptr, *redirect = nullptr;
  curl_easy_getinfo(handle(), CURLINFO_RESPONSE_CODE, &status);
  curl_easy_getinfo(handle(), CURLINFO_CONTENT_TYPE, &type);
  curl_easy_getinfo(handle(), CURLINFO_REDIRECT_URL, &redirect);
  out.answer.status = static_cast<int>(status);
  out.answer.body = std::move(body_);
  out.answer.etag = header("ETag");
  out.answer.last_modified = header("Last-Modified");
  out.retry_after = header("Retry-After");
  out.date = header("Date");
  if (type != nullptr) out.answer.content_type = type;
  if (redirect != nullptr) out.redirect = redirect;
  return out;
}

}  // namespace floatwright
