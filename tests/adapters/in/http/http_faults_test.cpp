// Against a server that misbehaves on purpose: each fault ends in one sentence that says what to do, or in the answer
// of a later try; never in a silent part of one.
#include <arpa/inet.h>
#include <gmock/gmock.h>
#include <unistd.h>
#include <zlib.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <cstring>

#include "adapters/in/http/http_run.hpp"
#include "tests/adapters/in/http/asking.hpp"
#include "tests/adapters/in/http/faulty_server.hpp"

namespace floatwright {
namespace {

using namespace std::chrono_literals;
using testing::AllOf;
using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;
using Then = FaultyServer::Then;
using Deed = FaultyServer::Deed;

HttpManners hasty_manners() {
  HttpManners manners = quick_manners();
  manners.stall_limit = 100ms;
  manners.size_limit = 1 << 20;
  return manners;
}

// By zlib, as a server would (RFC 1952).
std::string gzipped(const std::string& text) {
  z_stream stream{};
  deflateInit2(&stream, Z_BEST_COMPRESSION, Z_DEFLATED, 16 + MAX_WBITS, 9, Z_DEFAULT_STRATEGY);
  std::string out(deflateBound(&stream, text.size()), '\0');
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(text.data()));
  stream.avail_in = static_cast<uInt>(text.size());
  stream.next_out = reinterpret_cast<Bytef*>(out.data());
  stream.avail_out = static_cast<uInt>(out.size());
  deflate(&stream, Z_FINISH);
  out.resize(stream.total_out);
  deflateEnd(&stream);
  return out;
}

std::string packed(const std::string& bytes) { return whole_answer(bytes, "Content-Encoding: gzip\r\n"); }

std::string digits(std::size_t count) {
  std::string out;
  for (unsigned i = 1; out.size() < count; i = i * 1664525u + 1013904223u) out += std::to_string(i);
  return out;
}

struct Fault {
  std::string name;
  Deed deed;
  std::string told;
  std::size_t tries = 1;
};

const std::string kThrice = " (tried 3 times)";
const std::string kJson = "Content-Type: application/json\r\n";

const std::vector<Fault> kFaults{
    {"Silence", {"", Then::SayNothing}, "nothing came for 0.1 s; try again later"},
    {"AStallInTheBody",
     {answer_head("200 OK", kJson + "Content-Length: 90\r\n") + "{", Then::SayNothing},
     "nothing came for 0.1 s; try again later"},
    {"ABodyWithoutEnd",
     {answer_head("200 OK", kJson), Then::Flood},
     "the answer is longer than 1048576 bytes; ask for a shorter time"},
    {"ABodySaidToBeOf200Megabytes",
     {answer_head("200 OK", kJson + "Content-Length: 200000000\r\n"), Then::Flood},
     "the answer is longer than 1048576 bytes; ask for a shorter time"},
    {"ABombOfGzip",
     {packed(gzipped(std::string(10 << 20, '\0'))), Then::KeepOpen},
     "the answer is longer than 1048576 bytes; ask for a shorter time"},
    {"GzipCutShort",
     {packed(gzipped(digits(9000)).substr(0, 3000)), Then::KeepOpen},
     "the answer's gzip was cut short; try again later" + kThrice,
     3},
    {"GzipThatIsNone", {packed("{\"features\":[]}")}, "the answer's gzip can't be unpacked; try again later"},
    {"AnotherPacking",
     {whole_answer("{}", "Content-Encoding: br\r\n")},
     "the answer is packed as \"br\", which was not asked for; tell the service"},
    {"ALengthThatIsNotReached",
     {answer_head("200 OK", kJson + "Content-Length: 90\r\n") + "{}"},
     "the answer was cut short; try again later" + kThrice,
     3},
    {"ChunksCutShort",
     {answer_head("200 OK", kJson + "Transfer-Encoding: chunked\r\n") + "2\r\n{}\r\n"},
     "the answer was cut short; try again later" + kThrice,
     3},
    {"ACloseWithoutAWord", {""}, "the connection broke off; try again later" + kThrice, 3},
    {"AReset", {"", Then::Reset}, "the connection broke off; try again later" + kThrice, 3},
    {"AnotherProtocol",
     {"SSH-2.0-server\r\n"},
     "what answers there does not speak HTTP; look at the address"},
    {"APageInPlaceOfData",
     {answer_head("200 OK", "Content-Type: text/html\r\nContent-Length: 13\r\n") + "<html></html>"},
     "the service sent \"text/html\", not json; it may have moved: look at its pages"},
    {"NoTypeAtAll",
     {answer_head("200 OK", "Content-Length: 2\r\n") + "{}"},
     "the service sent \"\", not json; it may have moved: look at its pages"},
    {"NothingNewThatWasNotAskedFor",
     {answer_head("304 Not Modified", "")},
     "the service answered with status 304; the service may have moved: look at its pages"},
    {"NoContent",
     {answer_head("204 No Content", "")},
     "the service answered with status 204; try again later"},
    {"ARedirectToNowhere",
     {answer_head("302 Found")},
     "the service answered with status 302; the service may have moved: look at its pages"},
    {"ABadRequest",
     {answer_head("400 Bad Request", kJson + "Content-Length: 15\r\n") + "{\"bad\":\"limit\"}"},
     "the service answered with status 400, {\"bad\":\"limit\"}; it does not understand what was asked: look "
     "at the station in river.json"},
    {"TroubleWithoutEnd",
     {answer_head("503 Service Unavailable", "Content-Type: text/html\r\nContent-Length: 6\r\n") + "<html>"},
     "the service answered with status 503; try again later" + kThrice,
     3},
    {"ALongWait",
     {answer_head("429 Too Many Requests", "Retry-After: 3600\r\nContent-Length: 0\r\n")},
     "the service answered with status 429; asked too often: wait an hour, or name an api_key_file in "
     "settings.json (it wants to be left alone for 3600 s)"},
};

TEST(HttpFaults, AreToldInASentenceEach) {
  for (const Fault& fault : kFaults) {
    SCOPED_TRACE(fault.name);
    const FaultyServer server(fault.deed);
    const HttpRequest request{.url = server.base() + "/a?key=secret", .content_types = {"json"}};
    EXPECT_EQ(told(request, hasty_manners()), server.base() + "/a: " + fault.told);
    EXPECT_EQ(server.asked().size(), fault.tries);
  }
}

TEST(HttpFaults, GiveUpOnABodyThatComesDropByDrop) {
  const FaultyServer server(Deed{answer_head("200 OK", kJson), Then::Trickle});
  HttpManners manners = quick_manners();
  manners.total_limit = 100ms;
  EXPECT_EQ(told({.url = server.base() + "/a"}, manners),
            server.base() + "/a: no whole answer within 0.1 s; try again later");
}

TEST(HttpFaults, GiveUpAServerThatIsTooSlowThrice) {
  const FaultyServer server(Deed{"", Then::SayNothing});
  HttpManners manners = hasty_manners();
  manners.connections = 4;
  const auto all = outcomes(std::vector<HttpRequest>(20, {.url = server.base()}), manners);
  ASSERT_EQ(all.size(), 20u);
  for (const auto& [url, answer] : all) EXPECT_THAT(answer.error().what, HasSubstr("nothing came for 0.1 s"));
  EXPECT_LE(server.asked().size(), 8u);
}

TEST(HttpFaults, GiveUpOnHeadersWithoutEnd) {
  std::string head = answer_head("200 OK", kJson);
  head.resize(head.size() - 2);
  for (int i = 0; i < 20000; ++i) head += "X-Number-" + std::to_string(i) + ": " + std::string(40, '7') + "\r\n";
  const FaultyServer server(Deed{head, Then::SayNothing});
  EXPECT_THAT(told({.url = server.base()}, hasty_manners()), HasSubstr("the connection broke off; try again later"));
}

TEST(HttpFaults, TellAServerThatIsNotThereAndGiveUpWhatElseWouldGoToIt) {
  std::string gone;
  {
    const FaultyServer server(Deed{""});
    gone = server.base();
  }
  std::vector<HttpRequest> requests;
  for (int i = 0; i < 30; ++i) requests.push_back({.url = gone + "/" + std::to_string(i)});
  const auto all = outcomes(requests);
  ASSERT_EQ(all.size(), 30u);
  for (const auto& [url, answer] : all)
    EXPECT_EQ(answer.error().what, url + ": the server refuses connections; try again later");
}

// RFC 1035, 2.3.4: a label has at most 63 octets, so that this name can't exist and nobody need be asked for it.
TEST(HttpFaults, TellANameThatIsNotFound) {
  setenv("no_proxy", "*", 1);
  EXPECT_THAT(told({.url = "https://" + std::string(64, 'a') + ".example.org/"}),
              EndsWith(": no server of this name is found; look at the network, and at the address"));
}

TEST(HttpFaults, GiveUpOnAConnectionThatDoesNotComeAbout) {
  const int listener = socket(AF_INET, SOCK_STREAM, 0);  // nobody accepts, and the queue is full after two
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  socklen_t size = sizeof address;
  ASSERT_EQ(bind(listener, reinterpret_cast<sockaddr*>(&address), size), 0);
  ASSERT_EQ(getsockname(listener, reinterpret_cast<sockaddr*>(&address), &size), 0);
  ASSERT_EQ(listen(listener, 0), 0);
  const int filler = socket(AF_INET, SOCK_STREAM, 0);
  ASSERT_EQ(connect(filler, reinterpret_cast<const sockaddr*>(&address), size), 0);
  HttpManners manners = quick_manners();
  manners.connect_limit = 50ms;
  EXPECT_THAT(told({.url = "http://127.0.0.1:" + std::to_string(ntohs(address.sin_port))}, manners),
              HasSubstr("no connection within 0.05 s; look at the network"));
  close(filler);
  close(listener);
}

// The shake of hands of TLS belongs to the connection; those who wait to share it do not each wait again.
TEST(HttpFaults, GiveUpAtOnceOnAllThatWaitForAConnection) {
  const FaultyServer server(Deed{""});  // waits for a request in plain http, and says nothing until then
  const std::string base = "https" + server.base().substr(4);
  HttpManners manners = quick_manners();
  manners.connect_limit = 100ms;
  const auto all = outcomes(std::vector<HttpRequest>(20, {.url = base}), manners);
  EXPECT_LE(server.connections(), 2u);  // the second is begun as the first is given up
  ASSERT_EQ(all.size(), 20u);
  for (const auto& [url, answer] : all)
    EXPECT_EQ(answer.error().what, base + ": no connection within 0.1 s; look at the network, or try again later");
}

// A server that fails at first, and then answers.
struct Passing {
  std::string name;
  Deed first;
};

const std::vector<Passing> kPassingFaults{
    {"Trouble", {answer_head("500 Internal Server Error"), Then::KeepOpen}},
    {"TooManyRequests", {answer_head("429 Too Many Requests"), Then::KeepOpen}},
    {"TooManyRequestsForNoTime",
     {answer_head("429 Too Many Requests", "Retry-After: 0\r\nContent-Length: 0\r\n"), Then::KeepOpen}},
    {"AWaitUntilADateGoneBy",
     {answer_head("503 Service Unavailable",
                  "Date: Sun, 06 Nov 1994 08:49:37 GMT\r\nRetry-After: Sun, 06 Nov 1994 08:49:37 GMT\r\n"
                  "Content-Length: 0\r\n"),
      Then::KeepOpen}},
    {"AReset", {"", Then::Reset}},
    {"ABodyCutShort", {answer_head("200 OK", kJson + "Content-Length: 90\r\n") + "{"}},
};

TEST(HttpFaults, ThatPassAreTriedAgainPostOrNot) {
  for (const Passing& fault : kPassingFaults) {
    SCOPED_TRACE(fault.name);
    const FaultyServer server([&](const std::string&, std::size_t nth) {
      return nth % 3 < 2 ? fault.first : Deed{whole_answer("{}"), Then::KeepOpen};
    });
    EXPECT_EQ(told({.url = server.base()}), "200 {}");
    EXPECT_EQ(told({.url = server.base(), .body = "{}", .body_type = "application/json"}), "200 {}");
    EXPECT_EQ(server.asked().size(), 6u);
  }
}

TEST(HttpFaults, WaitAsLongAsTheServerAsksForWithAllThatGoesToIt) {
  const FaultyServer server([](const std::string&, std::size_t nth) {
    if (nth == 0) return Deed{answer_head("429 Too Many Requests", "Retry-After: 1\r\nContent-Length: 0\r\n")};
    return Deed{whole_answer("{}"), Then::KeepOpen};
  });
  HttpManners manners = quick_manners();
  manners.connections = 1;
  manners.longest_wait = 1s;
  std::vector<HttpRequest> requests(3);
  for (HttpRequest& request : requests) request.url = server.base();
  const auto began = std::chrono::steady_clock::now();
  std::size_t good = 0;
  http_run(requests, manners, [&](const HttpRequest&, const Result<HttpAnswer>& answer) {
    good += answer.has_value() ? 1 : 0;
    EXPECT_GE(std::chrono::steady_clock::now() - began, 1s);
    return std::vector<HttpRequest>{};
  });
  EXPECT_EQ(good, 3u);
}

TEST(HttpFaults, LeaveAServerAloneThatWantsALongRestOrSaysItThrice) {
  for (const auto& [headers, asked] : {std::pair{"Retry-After: 3600\r\n", 1u}, std::pair{"", 3u}}) {
    const FaultyServer server(
        Deed{answer_head("429 Too Many Requests", headers + std::string("Content-Length: 0\r\n")), Then::KeepOpen});
    HttpManners manners = quick_manners();
    manners.connections = 1;
    const auto all = outcomes(std::vector<HttpRequest>(9, {.url = server.base()}), manners);
    EXPECT_EQ(all.size(), 9u);
    EXPECT_EQ(server.asked().size(), asked);
    for (const auto& [url, answer] : all) EXPECT_THAT(answer.error().what, HasSubstr("status 429; asked too often"));
  }
}

TEST(HttpFaults, TakeNoByteOfOneAnswerForAnother) {
  const FaultyServer server([](const std::string& asked, std::size_t) {
    if (!asked.starts_with("GET /1 ")) return Deed{whole_answer("[]"), Then::KeepOpen};
    return Deed{answer_head("200 OK", "Content-Length: 2\r\n") + "{}" + whole_answer("stray"), Then::KeepOpen};
  });
  HttpManners manners = quick_manners();
  manners.connections = 1;
  const auto all = outcomes({{.url = server.base() + "/1"}, {.url = server.base() + "/2"}}, manners);
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(all[0].second->body, "{}");
  EXPECT_EQ(all[1].second->body, "[]");
}

TEST(HttpFaults, SurviveAServerThatClosesBetweenTwoRequests) {
  const FaultyServer server(Deed{whole_answer("{}"), Then::Close});
  HttpManners manners = quick_manners();
  manners.connections = 1;
  for (const auto& [url, answer] : outcomes(std::vector<HttpRequest>(5, {.url = server.base()}), manners))
    EXPECT_EQ(answer->body, "{}");
}

// RFC 1952, 2.2: a file may have several members.
TEST(HttpFaults, ReadGzipOfSeveralMembers) {
  const std::string text = digits(40000);
  const FaultyServer server(Deed{packed(gzipped(text) + gzipped("") + gzipped(text))});
  EXPECT_EQ(told({.url = server.base()}), "200 " + text + text);
}

// What is told is told, what is an answer is the whole one: gzip's own checksum (RFC 1952, 2.3.1) sees to the body.
TEST(HttpFaults, SurviveAnyByteChangedOnTheWay) {
  const std::string text = digits(100), good = packed(gzipped(text)), body_only = gzipped(text);
  const FaultyServer server([&](const std::string& asked, std::size_t) {
    std::string bytes = good;
    bytes.at(static_cast<std::size_t>(std::atol(asked.c_str() + std::strlen("GET /")))) ^= 0x15;
    return Deed{bytes};
  });
  std::vector<HttpRequest> requests(good.size());
  for (std::size_t at = 0; at < good.size(); ++at)
    requests[at] = {.url = server.base() + "/" + std::to_string(at), .tag = at};
  HttpManners manners = hasty_manners();
  manners.most_tries = 1;
  std::size_t ended = 0, refused = 0;
  http_run(requests, manners, [&](const HttpRequest& request, const Result<HttpAnswer>& answer) {
    ++ended;
    refused += answer ? 0 : 1;
    const bool in_body = request.tag >= good.size() - body_only.size();
    EXPECT_TRUE(!in_body || !answer || answer->body == text) << "byte " << request.tag;
    return std::vector<HttpRequest>{};
  });
  EXPECT_EQ(ended, good.size());
  EXPECT_GT(refused, body_only.size() / 2);
}

TEST(HttpFaults, NeverTellTheKey) {
  const FaultyServer server(Deed{answer_head("403 Forbidden", kJson + "Content-Length: 31\r\n") +
                                 "{\"key\":\"s3cret\",\"no\":\"access\"}\n"});
  EXPECT_THAT(told({.url = server.base() + "/?key=s3cret", .secret_header = "X-Api-Key: s3cret"}),
              AllOf(HasSubstr("status 403, {\"key\":\"(the key)\""), Not(HasSubstr("s3cret"))));
}

TEST(HttpFaults, SendNoHeaderWithALineBreakInIt) {
  const FaultyServer server(Deed{whole_answer("{}")});
  const HttpRequest request{
      .url = server.base(), .headers = {"Accept: a\r\nX-Other: b"}, .etag = "\"a\"\r\nX-Other: b"};
  EXPECT_EQ(told(request), "200 {}");
  EXPECT_THAT(server.asked().at(0), Not(HasSubstr("X-Other")));
}

TEST(HttpFaults, OfOneServerDoNotHoldUpAnother) {
  const FaultyServer slow(Deed{"", Then::SayNothing});
  const FaultyServer quick(Deed{whole_answer("{}"), Then::KeepOpen});
  std::vector<HttpRequest> requests(2, {.url = slow.base()});
  requests.resize(10, {.url = quick.base()});
  HttpManners manners = quick_manners();
  manners.stall_limit = 400ms;
  manners.connections = 2;
  const auto all = outcomes(requests, manners);
  ASSERT_EQ(all.size(), 10u);
  for (std::size_t i = 0; i < 8; ++i) EXPECT_EQ(all[i].first, quick.base()) << i;
}

TEST(HttpFaults, MeetNoMoreThanTheConnectionsAgreedOn) {
  const FaultyServer server(Deed{whole_answer("{}"), Then::KeepOpen, 2ms});
  HttpManners manners = quick_manners();
  manners.connections = 3;
  EXPECT_EQ(outcomes(std::vector<HttpRequest>(30, {.url = server.base()}), manners).size(), 30u);
  EXPECT_EQ(server.connections(), 3u);
  EXPECT_LE(server.most_at_once(), 3u);
}

}  // namespace
}  // namespace floatwright
