#include "adapters/in/http/broken.hpp"

#include <curl/curl.h>
#include <fmt/format.h>

#include <cerrno>
#include <cstring>

#include "adapters/in/text/printable.hpp"

namespace floatwright {
namespace {

using enum Broken::Next;

constexpr std::size_t kLongestDetail = 160;

std::string seconds(HttpManners::Milliseconds limit) {
  return fmt::format("{} s", static_cast<double>(limit.count()) / 1000.0);
}

// As OpenSSL's x509_vfy.h numbers them (X509_V_ERR_...). libcurl leaves the first where the signatures are good and the
// name is not the server's.
std::string why_not_trusted(long error) {
  constexpr long kUnspecified = 1, kNotYetValid = 9, kExpired = 10;
  if (error == kExpired)
    return "its certificate has expired, so nothing was sent; look at this machine's clock, else wait for the service";
  if (error == kNotYetValid)
    return "its certificate is not valid yet, so nothing was sent; look at this machine's clock";
  if (error == kUnspecified)
    return "its certificate is for another name, so nothing was sent; some networks want you to sign in with a browser "
           "first, else look at the address";
  return "its certificate is signed by nobody this machine trusts, so nothing was sent; some networks want you to sign "
         "in with a browser first, else install ca-certificates";
}

Broken not_connected(long system_error) {
  if (system_error == ECONNREFUSED) return {"the server refuses connections; try again later", GiveUpServer};
  const std::string why = system_error == 0 ? "" : fmt::format(" ({})", std::strerror(static_cast<int>(system_error)));
  return {"the server is not reached" + why + "; look at the network, or try again later", GiveUpServer};
}

Broken timed_out(bool connected, const HttpManners& manners) {
  if (!connected)
    return {fmt::format("no connection within {}; look at the network, or try again later",
                        seconds(manners.connect_limit)),
            GiveUpServer};
  return {fmt::format("no whole answer within {}; try again later", seconds(manners.total_limit)), OutOfTime};
}

}  // namespace

Broken broken(const BrokenTry& what, const HttpManners& manners) {
  const std::string detail = printable(what.detail, kLongestDetail);
  switch (what.code) {
    case CURLE_COULDNT_RESOLVE_HOST:
      return {"no server of this name is found; look at the network, and at the address", GiveUpServer};
    case CURLE_COULDNT_RESOLVE_PROXY:
      return {"the proxy is not found; look at the variable https_proxy", GiveUpServer};
    case CURLE_COULDNT_CONNECT:
      return not_connected(what.system_error);
    case CURLE_OPERATION_TIMEDOUT:
      return timed_out(what.connected, manners);
    case CURLE_PEER_FAILED_VERIFICATION:
      return {why_not_trusted(what.certificate_error), GiveUpServer};
    case CURLE_SSL_CONNECT_ERROR:
      return {"no safe connection came about, so nothing was sent (" + detail + "); try again later", GiveUp};
    case CURLE_SSL_CACERT_BADFILE:
      return {fmt::format("the authorities' certificates can't be read ({}); install ca-certificates",
                          manners.ca_file.empty() ? "the system's" : manners.ca_file),
              GiveUpServer};
    case CURLE_PARTIAL_FILE:
      return {"the answer was cut short; try again later", TryAgain};
    case CURLE_GOT_NOTHING:
    case CURLE_RECV_ERROR:
    case CURLE_SEND_ERROR:
    case CURLE_HTTP2:
    case CURLE_HTTP2_STREAM:
      return {"the connection broke off; try again later", TryAgain};
    case CURLE_WEIRD_SERVER_REPLY:
    case CURLE_UNSUPPORTED_PROTOCOL:
      return {"what answers there does not speak HTTP; look at the address", GiveUp};
    case CURLE_FILESIZE_EXCEEDED:
      return {too_long(manners), GiveUp};
    default:
      return {"not reached (" + detail + "); try again later", GiveUp};
  }
}

Broken stalled(const HttpManners& manners) {
  return {fmt::format("nothing came for {}; try again later", seconds(manners.stall_limit)), OutOfTime};
}

std::string too_long(const HttpManners& manners) {
  return fmt::format("the answer is longer than {} bytes; ask for a shorter time", manners.size_limit);
}

}  // namespace floatwright
