#pragma once
// The requests that wait, by server: for a free connection, for the time of their next try, or for the end of a pause
// that the server has asked for.
#include <chrono>
#include <deque>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "adapters/in/http/http_run.hpp"

namespace floatwright {

// A request on its way: where redirects have brought it, and how often it was tried.
struct Job {
  HttpRequest request;
  std::string url = request.url;
  std::string server = {};                 // "https://host:port"
  std::vector<std::string> been_at = {};   // addresses that redirected it
  bool post = !request.body.empty();
  int tries = 0;
};

class JobQueue {
 public:
  using Clock = std::chrono::steady_clock;

  void push(Job job) { servers_[job.server].waiting.push_back(std::move(job)); }
  // Before all that waits then.
  void push_at(Clock::time_point when, Job job) { later_.emplace(when, std::move(job)); }

  // Takes the next that may start now, of the server with least under way: a slow one does not hold up the others.
  [[nodiscard]] std::optional<Job> next(Clock::time_point now);
  void ended(const Job& job) { --servers_[job.server].under_way; }

  void pause(const std::string& server, Clock::time_point until);
  // Takes what waits for a server out.
  [[nodiscard]] std::vector<Job> withdraw(const std::string& server);

  [[nodiscard]] bool empty() const;
  // When something that does not wait for a connection may start; none: nothing waits for the clock.
  [[nodiscard]] std::optional<Clock::time_point> next_time() const;

 private:
  struct Server {
    std::deque<Job> waiting = {};
    std::size_t under_way = 0;
    Clock::time_point paused_until = {};
  };
  std::map<std::string, Server> servers_;
  std::multimap<Clock::time_point, Job> later_;
};

}  // namespace floatwright
