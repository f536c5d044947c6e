#include "adapters/in/http/http_run.hpp"

#include <curl/curl.h>
#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <optional>
#include <random>
#include <set>

#include "adapters/in/http/job_queue.hpp"
#include "adapters/in/http/retry.hpp"
#include "adapters/in/http/transfer.hpp"
#include "adapters/in/http/verdict.hpp"
#include "adapters/in/http/web_address.hpp"

namespace floatwright {
namespace {

using Clock = Transfer::Clock;
using Milliseconds = HttpManners::Milliseconds;
using Took = std::function<std::vector<HttpRequest>(const HttpRequest&, Result<HttpAnswer>)>;

constexpr std::size_t kMostRedirects = 5;
constexpr int kTooManyRequests = 429;

struct MultiEnd {
  void operator()(CURLM* multi) const { curl_multi_cleanup(multi); }
};

// A connection's worth of work. libcurl is never handed more: its own queue is slower (docs/decisions.md).
struct Slot {
  explicit Slot(const HttpManners& manners) : transfer(manners) {}
  Transfer transfer;
  std::optional<Job> job = std::nullopt;
};

class Run {
 public:
  Run(const HttpManners& manners, const Took& took);
  ~Run();
  Run(const Run&) = delete;
  Run& operator=(const Run&) = delete;

  void add(HttpRequest request);
  void to_the_end();

 private:
  void start_what_may();
  bool end_what_is_done();
  void end_what_stalls();
  void wait() const;
  Job released(Slot& slot);
  void judge(Job job, Try tried);
  void judge_broken(Job job, const Try& tried);
  void redirect(Job job, const std::string& to);
  void try_again(Job job, const Try& tried, const std::string& why);
  void give_up(const Job& job, const std::string& why);
  void fail(const Job& job, const std::string& why);
  void hand_over(const Job& job, Result<HttpAnswer> answer);

  const HttpManners& manners_;
  const Took& took_;
  std::unique_ptr<CURLM, MultiEnd> multi_;
  std::vector<std::unique_ptr<Slot>> slots_;
  JobQueue queue_;
  std::map<std::string, std::string> given_up_;  // servers, and why
  std::map<std::string, int> out_of_time_;       // servers, and how often
  std::mt19937_64 random_;
  bool ready_ = false;
};

Run::Run(const HttpManners& manners, const Took& took)
    : manners_(manners), took_(took), random_(manners.jitter_seed) {
  static const CURLcode kLibrary = curl_global_init(CURL_GLOBAL_DEFAULT);
  if (kLibrary == CURLE_OK) multi_.reset(curl_multi_init());
  for (std::size_t i = 0; i < std::max<std::size_t>(1, manners.connections); ++i)
    slots_.push_back(std::make_unique<Slot>(manners));
  ready_ = multi_ && std::ranges::all_of(slots_, [](const auto& slot) { return slot->transfer.handle() != nullptr; });
}

Run::~Run() {
  for (const auto& slot : slots_)
    if (slot->job) curl_multi_remove_handle(multi_.get(), slot->transfer.handle());
}

void Run::add(HttpRequest request) {
  Job job{.request = std::move(request)};
  if (!ready_) return fail(job, "the HTTP library can't be started");
  if (const auto why = why_not_fetched(job.url, "")) return fail(job, *why);
  job.server = web_address(job.url)->server();
  if (const auto lost = given_up_.find(job.server); lost != given_up_.end()) return fail(job, lost->second);
  queue_.push(std::move(job));
}

void Run::to_the_end() {
  for (int running = 0;;) {
    start_what_may();
    const bool none = std::ranges::none_of(slots_, [](const auto& slot) { return slot->job.has_value(); });
    if (none && queue_.empty()) return;
    curl_multi_perform(multi_.get(), &running);
    if (end_what_is_done()) continue;
    end_what_stalls();
    wait();
  }
}

void Run::start_what_may() {
  for (const auto& slot : slots_) {
    if (slot->job) continue;
    slot->job = queue_.next(Clock::now());
    if (!slot->job) return;
    ++slot->job->tries;
    slot->transfer.begin(slot->job->request, slot->job->url, slot->job->post);
    curl_multi_add_handle(multi_.get(), slot->transfer.handle());
  }
}

bool Run::end_what_is_done() {
  bool any = false;
  int left = 0;
  while (const CURLMsg* const message = curl_multi_info_read(multi_.get(), &left)) {
    if (message->msg != CURLMSG_DONE) continue;
    const auto slot = std::ranges::find(slots_, static_cast<void*>(message->easy_handle),
                                        [](const auto& each) { return each->transfer.handle(); });
    Try tried = (*slot)->transfer.end(message->data.result);
    judge(released(**slot), std::move(tried));
    any = true;
  }
  return any;
}

void Run::end_what_stalls() {
  for (const auto& slot : slots_) {
    if (!slot->job || Clock::now() - slot->transfer.heard_at() < manners_.stall_limit) continue;
    Try tried;
    tried.broken = stalled(manners_);
    judge(released(*slot), std::move(tried));
  }
}

void Run::wait() const {
  std::optional<Clock::time_point> until;
  const auto take = [&](Clock::time_point when) { until = until ? std::min(*until, when) : when; };
  bool all_busy = true;
  for (const auto& slot : slots_) {
    if (slot->job) take(slot->transfer.heard_at() + manners_.stall_limit);
    all_busy = all_busy && slot->job;
  }
  if (const auto next = queue_.next_time(); next && !all_busy) take(*next);
  if (!until) return;
  constexpr Milliseconds kNone{0}, kMost{60'000};
  const auto left = std::clamp(std::chrono::ceil<Milliseconds>(*until - Clock::now()), kNone, kMost);
  curl_multi_poll(multi_.get(), nullptr, 0, static_cast<int>(left.count()), nullptr);
}

Job Run::released(Slot& slot) {
  curl_multi_remove_handle(multi_.get(), slot.transfer.handle());
  Job job = std::move(*slot.job);
  slot.job.reset();
  queue_.ended(job);
  return job;
}

void Run::judge(Job job, Try tried) {
  if (tried.broken) return judge_broken(std::move(job), tried);
  const int status = tried.answer.status;
  if (!tried.redirect.empty() && status >= 300 && status < 400 && status != 304) {
    if (status == 303) job.post = false;  // RFC 9110, 15.4.4; a POST stays one else, or its question would be lost
    return redirect(std::move(job), tried.redirect);
  }
  const auto why = why_no_answer(job.request, tried.answer);
  if (!why) return hand_over(job, std::move(tried.answer));
  if (is_passing(status)) return try_again(std::move(job), tried, *why);
  fail(job, *why);
}

// One slow answer is one; a server that is slow thrice would hold up the run for hours.
void Run::judge_broken(Job job, const Try& tried) {
  const auto& [why, next] = *tried.broken;
  if (next == Broken::Next::TryAgain) return try_again(std::move(job), tried, why);
  const bool too_slow = next == Broken::Next::OutOfTime && ++out_of_time_[job.server] >= manners_.most_tries;
  if (too_slow || next == Broken::Next::GiveUpServer) return give_up(job, why);
  fail(job, why);
}

void Run::redirect(Job job, const std::string& to) {
  job.been_at.push_back(job.url);
  if (const auto why = why_not_fetched(to, job.url)) return fail(job, *why);
  if (std::ranges::find(job.been_at, to) != job.been_at.end())
    return fail(job, "its redirects go round in a circle; the service may have moved: look at its pages");
  if (job.been_at.size() > kMostRedirects)
    return fail(job, fmt::format("redirected more than {} times; look at the address", kMostRedirects));
  job.url = to;
  job.tries = 0;
  queue_.push(std::move(job));
}

// A server that asks for a pause, or is asked too often, gets it from all that goes to it.
void Run::try_again(Job job, const Try& tried, const std::string& why) {
  const auto asked = asked_wait(tried.retry_after, tried.date);
  if (asked && *asked > manners_.longest_wait)
    return give_up(job, fmt::format("{} (it wants to be left alone for {} s)", why, asked->count()));
  const bool too_many = tried.answer.status == kTooManyRequests;
  if (job.tries >= manners_.most_tries) {
    const std::string all = job.tries == 1 ? why : fmt::format("{} (tried {} times)", why, job.tries);
    return too_many ? give_up(job, all) : fail(job, all);
  }
  const double jitter = std::uniform_real_distribution<>{}(random_);
  const Milliseconds own = own_wait(job.tries, jitter, manners_.first_wait, manners_.longest_wait);
  const auto when = Clock::now() + std::max<Milliseconds>(own, asked.value_or(std::chrono::seconds{0}));
  if (asked || too_many) queue_.pause(job.server, when);
  queue_.push_at(when, std::move(job));
}

// With all that waits for its server, and what waits for a connection to it.
void Run::give_up(const Job& job, const std::string& why) {
  given_up_.emplace(job.server, why);
  fail(job, why);
  for (const auto& slot : slots_)
    if (slot->job && slot->job->server == job.server && !slot->transfer.is_connected()) fail(released(*slot), why);
  for (const Job& other : queue_.withdraw(job.server)) fail(other, why);
}

void Run::fail(const Job& job, const std::string& why) {
  hand_over(job, tl::unexpected(Failure{without_query(job.request.url) + ": " + why, kExitNothingMade}));
}

void Run::hand_over(const Job& job, Result<HttpAnswer> answer) {
  for (HttpRequest& next : took_(job.request, std::move(answer))) add(std::move(next));
}

}  // namespace

void http_run(std::vector<HttpRequest> first, const HttpManners& manners, const Took& took) {
  Run run(manners, took);
  for (HttpRequest& request : first) run.add(std::move(request));
  run.to_the_end();
}

}  // namespace floatwright
