// 500 answers of 20 kB from a web server (nginx) on the loopback, near and with 50 ms added to each round trip, against
// the least that libcurl needs for them: a bare loop over eight handles, each given the next address when it is done.
#include <benchmark/benchmark.h>
#include <curl/curl.h>

#include <chrono>
#include <cstdlib>
#include <stdexcept>

#include "adapters/in/http/http_run.hpp"
#include "tests/adapters/in/http/loopback_server.hpp"
#include "tests/bench/delaying_proxy.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kAnswers = 500, kBytes = 20'000, kConnections = 8;
constexpr std::chrono::milliseconds kRoundTrip{50};

std::size_t append(char* data, std::size_t size, std::size_t count, void* body) {
  static_cast<std::string*>(body)->append(data, size * count);
  return size * count;
}

std::size_t bare_loop(const std::string& url) {
  CURLM* const multi = curl_multi_init();
  std::vector<std::string> bodies(kConnections);
  std::vector<CURL*> handles;
  for (std::string& body : bodies) {
    CURL* const curl = handles.emplace_back(curl_easy_init());
    curl_easy_setopt(curl, CURLOPT_URL, url.c_str());
    curl_easy_setopt(curl, CURLOPT_WRITEFUNCTION, append);
    curl_easy_setopt(curl, CURLOPT_WRITEDATA, &body);
    curl_easy_setopt(curl, CURLOPT_PRIVATE, &body);
    curl_multi_add_handle(multi, curl);
  }
  std::size_t bytes = 0, started = kConnections;
  for (int running = 1; running > 0;) {
    curl_multi_perform(multi, &running);
    int left = 0;
    while (const CURLMsg* const message = curl_multi_info_read(multi, &left)) {
      CURL* const curl = message->easy_handle;
      std::string* body = nullptr;
      curl_easy_getinfo(curl, CURLINFO_PRIVATE, &body);
      bytes += body->size();
      body->clear();
      curl_multi_remove_handle(multi, curl);
      if (started == kAnswers) continue;
      ++started;
      curl_multi_add_handle(multi, curl);
      running = 1;
    }
    if (running > 0) curl_multi_poll(multi, nullptr, 0, 1000, nullptr);
  }
  for (CURL* const curl : handles) curl_easy_cleanup(curl);
  curl_multi_cleanup(multi);
  return bytes;
}

std::size_t by_http_run(const std::string& url) {
  std::size_t bytes = 0;
  http_run(std::vector<HttpRequest>(kAnswers, {.url = url}), {.connections = kConnections},
           [&](const HttpRequest&, const Result<HttpAnswer>& answer) {
             bytes += answer.value().body.size();
             return std::vector<HttpRequest>{};
           });
  return bytes;
}

template <class Way>
double seconds(const Way& way, const std::string& url) {
  const auto began = std::chrono::steady_clock::now();
  if (way(url) != kAnswers * kBytes) throw std::runtime_error("not all bytes came");
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count();
}

void compare(benchmark::State& state, const std::string& url) {
  double ours = 0.0, bare = 0.0;
  for (auto _ : state) {
    const double now = seconds(by_http_run, url);
    state.SetIterationTime(now);
    ours += now;
    bare += seconds(bare_loop, url);
  }
  const double runs = static_cast<double>(state.iterations());
  state.counters["bare_ms"] = 1000.0 * bare / runs;
  state.counters["times_bare"] = ours / bare;
  state.counters["round_trips_more"] = (ours - bare) / runs / std::chrono::duration<double>(kRoundTrip).count();
}

const LoopbackServer& server() {
  static const LoopbackServer with_rows("");
  with_rows.put("a.json", std::string(kBytes, '7'));
  return with_rows;
}

void near(benchmark::State& state) { compare(state, server().base() + "/a.json"); }
BENCHMARK(near)->Unit(benchmark::kMillisecond)->UseManualTime()->MinTime(3.0);

void far(benchmark::State& state) {
  const std::string base = server().base();
  const DelayingProxy proxy(std::atoi(base.substr(base.rfind(':') + 1).c_str()), kRoundTrip);
  compare(state, "http://127.0.0.1:" + std::to_string(proxy.port()) + "/a.json");
}
BENCHMARK(far)->Unit(benchmark::kMillisecond)->UseManualTime()->Iterations(3);

}  // namespace
}  // namespace floatwright

BENCHMARK_MAIN();
