#pragma once
// Brings stations up to date: what the archive does not hold yet is asked of their services, in as few requests as they
// allow and all at once, and every answer that came whole goes into the archive. A lost station is told; the rest goes on.
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "adapters/in/archive/archive.hpp"
#include "adapters/in/fetch/stations.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

// Of a station that was never asked, and what a day is made from: 14 days of the same hour for the flow; for a
// temperature that was fitted means of 30 days, at the origins of the last 20 days' errors.
inline constexpr Period kFirstSpan = std::chrono::days{60};
inline constexpr Period kAskedAgain = std::chrono::hours{6};  // of what is held: late and changed readings
inline constexpr Period kPiece = std::chrono::days{90};       // asked in one request when years are filled in

struct FetchOrder {
  Instant now{};                    // up to then, and never past `clock`
  Instant clock{};                  // what the machine's clock says
  Period fresh_enough{0};           // a station asked less than this ago is left alone
  std::optional<Period> since;      // fills in that far back; none: kFirstSpan
  HttpManners manners;
  std::function<void(std::size_t done, std::size_t of)> progress = [](std::size_t, std::size_t) {};
};

struct Fetched {
  Stored rows;
  std::vector<std::string> troubles;    // sentences, each naming its station or address
  std::vector<std::string> lost;        // stations of which something that was asked did not come
  std::vector<GaugeSeries> not_kept;    // came, but the archive did not take it
  std::size_t asked = 0;                // stations that a service was asked for
};

// `archive`: null where there is none to write to; all that comes is then `not_kept`. Stations without a service are
// passed over.
[[nodiscard]] Fetched fetch(const std::vector<std::string>& stations, const ServicesAsked& services, Archive* archive,
                            const FetchOrder& order);

}  // namespace floatwright
