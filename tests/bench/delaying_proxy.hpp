#pragma once
// Hands bytes on between 127.0.0.1 and a port of it, both ways, each half a round trip late: the wait of a far network
// without its limits of speed.
#include <atomic>
#include <chrono>
#include <deque>
#include <map>
#include <memory>
#include <string>
#include <thread>

namespace floatwright {

class DelayingProxy {
 public:
  DelayingProxy(int to_port, std::chrono::milliseconds round_trip);
  ~DelayingProxy();
  DelayingProxy(const DelayingProxy&) = delete;
  DelayingProxy& operator=(const DelayingProxy&) = delete;

  [[nodiscard]] int port() const { return port_; }

 private:
  using Clock = std::chrono::steady_clock;
  struct Socket {
    int number = -1;
    explicit Socket(int of) : number(of) {}
    ~Socket();
    Socket(const Socket&) = delete;
    Socket& operator=(const Socket&) = delete;
  };
  // Parcels hold the socket, so that its number is not another's before the last has gone.
  struct Parcel {
    Clock::time_point due;
    std::shared_ptr<Socket> to;
    std::string bytes;  // empty: the end
  };
  struct Way {
    std::shared_ptr<Socket> from, to;
  };

  void work();
  void take_in(const Way& way);
  void send_what_is_due();
  void connect_through();

  int to_port_, listener_ = -1, port_ = 0;
  Clock::duration one_way_;
  std::map<int, Way> ways_;  // by the number of `from`
  std::deque<Parcel> on_the_way_;
  std::atomic<bool> stopping_ = false;
  std::thread thread_;
};

}  // namespace floatwright
