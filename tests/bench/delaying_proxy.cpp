#include "tests/bench/delaying_proxy.hpp"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <netinet/tcp.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <stdexcept>
#include <vector>

namespace floatwright {
namespace {

sockaddr_in on_loopback(int port) {
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  address.sin_port = htons(static_cast<std::uint16_t>(port));
  return address;
}

void send_small_parcels_at_once(int end) {
  const int yes = 1;
  setsockopt(end, IPPROTO_TCP, TCP_NODELAY, &yes, sizeof yes);
}

}  // namespace

DelayingProxy::DelayingProxy(int to_port, std::chrono::milliseconds round_trip)
    : to_port_(to_port), listener_(socket(AF_INET, SOCK_STREAM, 0)), one_way_(round_trip / 2) {
  sockaddr_in address = on_loopback(0);
  socklen_t size = sizeof address;
  const bool ok = bind(listener_, reinterpret_cast<sockaddr*>(&address), size) == 0 && listen(listener_, 64) == 0 &&
                  getsockname(listener_, reinterpret_cast<sockaddr*>(&address), &size) == 0;
  if (!ok) throw std::runtime_error("no proxy on 127.0.0.1");
  port_ = ntohs(address.sin_port);
  thread_ = std::thread([this] { work(); });
}

DelayingProxy::Socket::~Socket() { close(number); }

DelayingProxy::~DelayingProxy() {
  stopping_ = true;
  thread_.join();
  close(listener_);
}

void DelayingProxy::work() {
  while (!stopping_) {
    std::vector<pollfd> watched{{.fd = listener_, .events = POLLIN, .revents = 0}};
    for (const auto& [number, way] : ways_) watched.push_back({.fd = number, .events = POLLIN, .revents = 0});
    using std::chrono::milliseconds;
    const auto left = on_the_way_.empty() ? milliseconds{20}
                                          : std::chrono::ceil<milliseconds>(on_the_way_.front().due - Clock::now());
    poll(watched.data(), watched.size(), std::clamp(static_cast<int>(left.count()), 0, 20));
    send_what_is_due();
    if (watched[0].revents != 0) connect_through();
    for (std::size_t i = 1; i < watched.size(); ++i)
      if (watched[i].revents != 0) take_in(Way{ways_.at(watched[i].fd)});
  }
}

void DelayingProxy::connect_through() {
  const auto near = std::make_shared<Socket>(accept(listener_, nullptr, nullptr));
  const auto far = std::make_shared<Socket>(socket(AF_INET, SOCK_STREAM, 0));
  const sockaddr_in address = on_loopback(to_port_);
  if (connect(far->number, reinterpret_cast<const sockaddr*>(&address), sizeof address) != 0)
    throw std::runtime_error("nobody to hand on to");
  for (const auto& end : {near, far}) send_small_parcels_at_once(end->number);
  ways_[near->number] = {near, far};
  ways_[far->number] = {far, near};
}

void DelayingProxy::take_in(const Way& way) {
  std::string bytes(65536, '\0');
  const ssize_t got = recv(way.from->number, bytes.data(), bytes.size(), 0);
  bytes.resize(got > 0 ? static_cast<std::size_t>(got) : 0);
  if (bytes.empty()) ways_.erase(way.from->number);
  on_the_way_.push_back({Clock::now() + one_way_, way.to, bytes});
}

void DelayingProxy::send_what_is_due() {
  for (; !on_the_way_.empty() && on_the_way_.front().due <= Clock::now(); on_the_way_.pop_front()) {
    const Parcel& parcel = on_the_way_.front();
    if (parcel.bytes.empty()) shutdown(parcel.to->number, SHUT_WR);
    for (std::size_t sent = 0; sent < parcel.bytes.size();) {
      const ssize_t now =
          send(parcel.to->number, parcel.bytes.data() + sent, parcel.bytes.size() - sent, MSG_NOSIGNAL);
      if (now <= 0) break;
      sent += static_cast<std::size_t>(now);
    }
  }
}

}  // namespace floatwright
