#pragma once
// A server on 127.0.0.1 that does to its clients what a script says: bytes as they are, then a close, a reset, silence
// or no end. Plain http, in threads of the test's own.
#include <atomic>
#include <functional>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace floatwright {

class FaultyServer {
 public:
  enum class Then { Close, Reset, KeepOpen, SayNothing, Trickle, Flood };  // Trickle: a byte now and then, without end
  struct Deed {
    std::string bytes;
    Then then = Then::Close;
    std::chrono::milliseconds after = {};
  };
  // `asked`: the request as it came, with its body; `nth`: how many were asked before.
  using Script = std::function<Deed(const std::string& asked, std::size_t nth)>;

  explicit FaultyServer(Script script);
  explicit FaultyServer(Deed always);
  ~FaultyServer();
  FaultyServer(const FaultyServer&) = delete;
  FaultyServer& operator=(const FaultyServer&) = delete;

  [[nodiscard]] std::string base() const { return "http://127.0.0.1:" + std::to_string(port_); }
  [[nodiscard]] std::vector<std::string> asked() const;
  [[nodiscard]] std::size_t connections() const;  // accepted so far
  [[nodiscard]] std::size_t most_at_once() const { return most_at_once_; }

 private:
  void accept_all();
  void serve(int client);
  Deed next_deed(const std::string& asked);
  void act(int client, const Deed& deed) const;

  Script script_;
  int listener_ = -1, port_ = 0;
  std::atomic<bool> stopping_ = false;
  std::atomic<std::size_t> at_once_ = 0, most_at_once_ = 0;
  mutable std::mutex mutex_;
  std::vector<std::string> asked_;
  std::vector<int> clients_;
  std::vector<std::thread> threads_;
  std::thread accepting_;
};

// A whole answer of status 200, as JSON, with its length.
[[nodiscard]] std::string whole_answer(const std::string& body, const std::string& more_headers = "");

// A head alone: "503 Service Unavailable", then header lines that end in CRLF.
[[nodiscard]] std::string answer_head(const std::string& status, const std::string& headers = "Content-Length: 0\r\n");

}  // namespace floatwright
