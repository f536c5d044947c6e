#include "adapters/in/http/job_queue.hpp"

#include <algorithm>
#include <iterator>

namespace floatwright {

std::optional<Job> JobQueue::next(Clock::time_point now) {
  for (; !later_.empty() && later_.begin()->first <= now; later_.erase(later_.begin()))
    servers_[later_.begin()->second.server].waiting.push_front(std::move(later_.begin()->second));
  Server* best = nullptr;
  for (auto& [name, server] : servers_)
    if (!server.waiting.empty() && server.paused_until <= now &&
        (best == nullptr || server.under_way < best->under_way))
      best = &server;
  if (best == nullptr) return std::nullopt;
  Job job = std::move(best->waiting.front());
  best->waiting.pop_front();
  ++best->under_way;
  return job;
}

void JobQueue::pause(const std::string& server, Clock::time_point until) {
  Clock::time_point& paused_until = servers_[server].paused_until;
  paused_until = std::max(paused_until, until);
}

std::vector<Job> JobQueue::withdraw(const std::string& server) {
  std::deque<Job>& waiting = servers_[server].waiting;
  std::vector<Job> out{std::make_move_iterator(waiting.begin()), std::make_move_iterator(waiting.end())};
  waiting.clear();
  for (auto job = later_.begin(); job != later_.end();) {
    const bool same = job->second.server == server;
    if (same) out.push_back(std::move(job->second));
    job = same ? later_.erase(job) : std::next(job);
  }
  return out;
}

bool JobQueue::empty() const {
  return later_.empty() && std::ranges::all_of(servers_, [](const auto& each) { return each.second.waiting.empty(); });
}

std::optional<JobQueue::Clock::time_point> JobQueue::next_time() const {
  std::optional<Clock::time_point> first;
  const auto take = [&](Clock::time_point when) { first = first ? std::min(*first, when) : when; };
  if (!later_.empty()) take(later_.begin()->first);
  for (const auto& [name, server] : servers_)
    if (!server.waiting.empty()) take(server.paused_until);
  return first;
}

}  // namespace floatwright
