#pragma once
// One try of one request, on a handle of libcurl that serves for many after each other.
#include <chrono>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "adapters/in/http/broken.hpp"
#include "adapters/in/http/http_run.hpp"
#include "adapters/in/http/unpack.hpp"

struct curl_slist;

namespace floatwright {

struct Try {
  HttpAnswer answer = {};
  std::string redirect = {}, retry_after = {}, date = {};  // as the server wrote them; the first made whole
  std::optional<Broken> broken = std::nullopt;             // then there is no answer
};

class Transfer {
 public:
  using Clock = std::chrono::steady_clock;

  explicit Transfer(const HttpManners& manners);
  Transfer(const Transfer&) = delete;
  Transfer& operator=(const Transfer&) = delete;

  [[nodiscard]] void* handle() const { return handle_.get(); }  // none where the library can't be started
  [[nodiscard]] Clock::time_point heard_at() const { return heard_at_; }
  [[nodiscard]] bool is_connected() const;

  // `request` must outlive the try. Its address may have been changed by redirects to `url`.
  void begin(const HttpRequest& request, const std::string& url, bool post);
  [[nodiscard]] Try end(int code);

  bool receive(std::string_view bytes);  // for libcurl

 private:
  struct End {
    void operator()(void* handle) const;
    void operator()(curl_slist* list) const;
  };
  void add_header(const std::string& line);
  void set_headers(const HttpRequest& request, bool post);
  void begin_body();
  [[nodiscard]] std::string header(const char* name) const;
  [[nodiscard]] Broken why_broken(int code) const;

  const HttpManners& manners_;
  std::unique_ptr<void, End> handle_;
  std::unique_ptr<curl_slist, End> headers_;
  std::string error_text_;
  std::string body_, why_bad_;
  bool begun_ = false;
  std::optional<Unpacker> unpacker_;
  Clock::time_point heard_at_;
};

}  // namespace floatwright
