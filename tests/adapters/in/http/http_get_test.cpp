#include "adapters/in/http/http_get.hpp"

#include <gmock/gmock.h>

#include "tests/adapters/in/http/loopback_server.hpp"

namespace floatwright {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

HttpRequest asking(const std::string& url) {
  HttpRequest request;
  request.url = url;
  request.user_agent = "floatwright-test";
  request.time_limit = std::chrono::seconds{10};
  return request;
}

std::string failure_of(const HttpRequest& request) {
  const auto answer = http_get(request);
  return answer ? "an answer of status " + std::to_string(answer->status) : answer.error().what;
}

TEST(HttpGet, BringsTheBodyWithItsTypeAndStatus) {
  const LoopbackServer server("");
  server.put("a.json", "{}");
  HttpRequest request = asking(server.base() + "/a.json");
  request.headers = {"X-Api-Key: secret"};
  const auto answer = http_get(request);
  ASSERT_TRUE(answer.has_value()) << answer.error().what;
  EXPECT_EQ(answer->status, 200);
  EXPECT_EQ(answer->content_type, "application/geo+json");
  EXPECT_EQ(answer->body, "{}");
  EXPECT_EQ(server.log(1), "GET /a.json \"floatwright-test\" \"secret\" \"gzip\"\n");
}

TEST(HttpGet, BringsAMissingPageAsAnAnswer) {
  const LoopbackServer server("");
  const auto answer = http_get(asking(server.base() + "/none.json"));
  ASSERT_TRUE(answer.has_value());
  EXPECT_EQ(answer->status, 404);
  EXPECT_THAT(answer->content_type, StartsWith("text/html"));
}

TEST(HttpGet, UnpacksGzip) {
  const LoopbackServer server("gzip on;");
  const std::string body(20000, '7');
  server.put("a.json", body);
  const auto answer = http_get(asking(server.base() + "/a.json"));
  ASSERT_TRUE(answer.has_value());
  EXPECT_EQ(answer->body, body);
}

TEST(HttpGet, GivesUpOnAServerThatStalls) {
  const LoopbackServer server("location /slow { limit_rate 10; alias {ROOT}/; }");
  server.put("a.json", std::string(5000, '7'));
  HttpRequest request = asking(server.base() + "/slow/a.json");
  request.time_limit = std::chrono::seconds{1};
  EXPECT_THAT(failure_of(request), HasSubstr("no whole answer within 1 s"));
}

TEST(HttpGet, StopsAtTheSizeLimitCountedUnpacked) {
  const LoopbackServer server("gzip on;");
  server.put("a.json", std::string(100000, '7'));
  HttpRequest request = asking(server.base() + "/a.json");
  request.size_limit = 99999;
  EXPECT_THAT(failure_of(request), HasSubstr("longer than 99999 bytes"));
  request.size_limit = 100000;
  EXPECT_EQ(failure_of(request), "an answer of status 200");
}

TEST(HttpGet, FollowsARedirectOnTheSameHost) {
  const LoopbackServer server("location /old { return 302 {BASE}/a.json; }");
  server.put("a.json", "{}");
  EXPECT_EQ(http_get(asking(server.base() + "/old")).value().body, "{}");
}

TEST(HttpGet, RefusesARedirectToAnotherHost) {
  const LoopbackServer server("location /old { return 301 https://blog.example.org/moved; }");
  EXPECT_THAT(failure_of(asking(server.base() + "/old")),
              HasSubstr("refused to follow a redirect to another host (blog.example.org)"));
}

TEST(HttpGet, RefusesARedirectToAnotherPortOfTheLoopback) {
  const LoopbackServer other("");
  const LoopbackServer server("location /old { return 301 " + other.base() + "/a.json; }");
  EXPECT_THAT(failure_of(asking(server.base() + "/old")), HasSubstr("refused to follow"));
  EXPECT_EQ(other.log(), "");
}

TEST(HttpGet, EndsAnEndlessRedirect) {
  const LoopbackServer server("location /old { return 302 {BASE}/old; }");
  EXPECT_THAT(failure_of(asking(server.base() + "/old")), HasSubstr("redirected more than 5 times"));
}

TEST(HttpGet, RefusesPlainHttpBeyondTheLoopbackAndOtherSchemes) {
  for (const char* url : {"http://example.org/a.json", "http://127.0.0.1.example.org/", "http://localhost/a.json"})
    EXPECT_THAT(failure_of(asking(url)), HasSubstr("only https is fetched")) << url;
  EXPECT_THAT(failure_of(asking("file:///etc/passwd")), HasSubstr("refused"));
  EXPECT_THAT(failure_of(asking("no address")), HasSubstr("not an address"));
}

TEST(HttpGet, DoesNotRepeatTheQueryInItsMessage) {
  EXPECT_THAT(failure_of(asking("http://example.org/a?api_key=secret")), StartsWith("http://example.org/a: "));
}

TEST(HttpGet, ChecksTheServersCertificate) {
  const LoopbackServer server("", true);
  server.put("a.json", "{}");
  HttpRequest request = asking(server.base() + "/a.json");
  EXPECT_THAT(failure_of(request), HasSubstr("not reached"));
  EXPECT_EQ(server.log(), "");
  request.ca_file = server.ca_file();
  EXPECT_EQ(http_get(request).value().body, "{}");
}

TEST(HttpGet, TellsAServerThatIsNotThere) {
  std::string gone;
  {
    const LoopbackServer server("");
    gone = server.base();
  }
  EXPECT_THAT(failure_of(asking(gone + "/a.json")), HasSubstr("not reached"));
}

}  // namespace
}  // namespace floatwright
