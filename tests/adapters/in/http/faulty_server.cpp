#include "tests/adapters/in/http/faulty_server.hpp"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <sys/socket.h>
#include <unistd.h>

#include <cstdlib>
#include <optional>
#include <stdexcept>

namespace floatwright {
namespace {

bool send_all(int client, const std::string& bytes) {
  for (std::size_t sent = 0; sent < bytes.size();) {
    const ssize_t now = send(client, bytes.data() + sent, bytes.size() - sent, MSG_NOSIGNAL);
    if (now <= 0) return false;
    sent += static_cast<std::size_t>(now);
  }
  return true;
}

std::size_t body_length(const std::string& head) {
  const std::string name = "Content-Length: ";
  const auto at = head.find(name);
  return at == std::string::npos ? 0 : static_cast<std::size_t>(std::atol(head.c_str() + at + name.size()));
}

// None: the client has gone.
std::optional<std::string> read_request(int client) {
  std::string text;
  char piece[4096];
  for (;;) {
    const auto end = text.find("\r\n\r\n");
    if (end != std::string::npos && text.size() >= end + 4 + body_length(text)) return text;
    const ssize_t got = recv(client, piece, sizeof piece, 0);
    if (got <= 0) return std::nullopt;
    text.append(piece, static_cast<std::size_t>(got));
  }
}

void reset_on_close(int client) {
  const linger at_once{.l_onoff = 1, .l_linger = 0};
  setsockopt(client, SOL_SOCKET, SO_LINGER, &at_once, sizeof at_once);
}

}  // namespace

FaultyServer::FaultyServer(Deed always)
    : FaultyServer([always](const std::string&, std::size_t) { return always; }) {}

FaultyServer::FaultyServer(Script script) : script_(std::move(script)), listener_(socket(AF_INET, SOCK_STREAM, 0)) {
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  socklen_t size = sizeof address;
  const bool ok = bind(listener_, reinterpret_cast<sockaddr*>(&address), size) == 0 && listen(listener_, 64) == 0 &&
                  getsockname(listener_, reinterpret_cast<sockaddr*>(&address), &size) == 0;
  if (!ok) throw std::runtime_error("no server on 127.0.0.1");
  port_ = ntohs(address.sin_port);
  accepting_ = std::thread([this] { accept_all(); });
}

FaultyServer::~FaultyServer() {
  stopping_ = true;
  shutdown(listener_, SHUT_RDWR);
  accepting_.join();
  close(listener_);
  for (const int client : clients_) shutdown(client, SHUT_RDWR);
  for (std::thread& thread : threads_) thread.join();
  for (const int client : clients_) close(client);
}

std::vector<std::string> FaultyServer::asked() const {
  const std::lock_guard lock(mutex_);
  return asked_;
}

std::size_t FaultyServer::connections() const {
  const std::lock_guard lock(mutex_);
  return clients_.size();
}

void FaultyServer::accept_all() {
  for (;;) {
    const int client = accept(listener_, nullptr, nullptr);
    if (client < 0) return;
    const std::lock_guard lock(mutex_);
    clients_.push_back(client);
    threads_.emplace_back([this, client] { serve(client); });
  }
}

FaultyServer::Deed FaultyServer::next_deed(const std::string& asked) {
  const std::lock_guard lock(mutex_);
  asked_.push_back(asked);
  return script_(asked, asked_.size() - 1);
}

// Sockets are closed with the server, so that no number is used twice; the client sees the end at once all the same.
void FaultyServer::serve(int client) {
  while (const auto asked = read_request(client)) {
    const std::size_t now = ++at_once_;
    for (std::size_t most = most_at_once_; now > most && !most_at_once_.compare_exchange_weak(most, now);) continue;
    const Deed deed = next_deed(*asked);
    std::this_thread::sleep_for(deed.after);
    --at_once_;
    act(client, deed);
    if (deed.then != Then::KeepOpen) return;
  }
}

void FaultyServer::act(int client, const Deed& deed) const {
  using namespace std::chrono_literals;
  if (!send_all(client, deed.bytes)) return;
  switch (deed.then) {
    case Then::KeepOpen:
      return;
    case Then::Close:
      shutdown(client, SHUT_RDWR);
      return;
    case Then::Reset: {
      const int nowhere = socket(AF_INET, SOCK_STREAM, 0);
      reset_on_close(client);
      dup2(nowhere, client);  // closes the connection, keeps its number
      close(nowhere);
      return;
    }
    case Then::SayNothing:
      read_request(client);
      return;
    case Then::Trickle:
      while (!stopping_ && send_all(client, "7")) std::this_thread::sleep_for(5ms);
      return;
    case Then::Flood:
      while (!stopping_ && send_all(client, std::string(65536, '7'))) continue;
      return;
  }
}

std::string answer_head(const std::string& status, const std::string& headers) {
  return "HTTP/1.1 " + status + "\r\n" + headers + "\r\n";
}

std::string whole_answer(const std::string& body, const std::string& more_headers) {
  return answer_head("200 OK", "Content-Type: application/json\r\nContent-Length: " + std::to_string(body.size()) +
                                   "\r\n" + more_headers) +
         body;
}

}  // namespace floatwright
