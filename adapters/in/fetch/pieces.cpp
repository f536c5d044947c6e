#include "adapters/in/fetch/pieces.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace floatwright {
namespace {

constexpr Period kClocksDiffer = std::chrono::minutes{2};

// What is held for good. A span asked by a clock that was ahead of this one says nothing of the hours to come.
std::vector<AskedSpan> held(const std::vector<Asked>& book, const std::string& service, const FetchOrder& order) {
  std::vector<AskedSpan> out;
  for (const Asked& asked : book) {
    if (asked.service != service) continue;
    const Instant to = asked.at > order.clock + kClocksDiffer ? std::min(asked.to, order.clock - kFirstSpan) : asked.to;
    if (to > asked.from) out.push_back({asked.from, to});
  }
  return out;
}

Instant newest_end(const std::vector<AskedSpan>& spans) {
  return spans.empty() ? Instant{} : std::ranges::max(spans, {}, &AskedSpan::to).to;
}

// What the service may have changed or added since is asked again; each station's first piece begins at a whole hour, so
// that stations asked a little apart are asked together.
std::vector<AskedSpan> spans_to_ask(const std::vector<AskedSpan>& spans, const FetchOrder& order, Instant oldest) {
  const Instant end = std::min(order.now, order.clock);
  const Instant newest = newest_end(spans);
  const bool is_fresh = newest > end - order.fresh_enough;
  std::vector<AskedSpan> settled = spans;
  for (AskedSpan& span : settled)
    if (span.to == newest && !is_fresh) span.to = std::chrono::floor<std::chrono::hours>(span.to - kAskedAgain);
  const AskedSpan wanted{std::chrono::floor<std::chrono::hours>(end - order.since.value_or(kFirstSpan)),
                         is_fresh ? std::min(end, newest) : end};
  return not_held({std::max(wanted.from, oldest), wanted.to}, settled);
}

// What the service still has; told where more was wanted.
Instant oldest_kept(const GaugeService& service, const FetchOrder& order, std::set<std::string>& told) {
  if (service.keeps == Period{0}) return Instant::min();
  const Instant oldest = std::chrono::floor<std::chrono::hours>(order.clock - service.keeps) + std::chrono::hours{1};
  if (order.since && *order.since > service.keeps)
    told.insert(fmt::format("{} keeps {} days; nothing older was asked of it", service.name,
                            std::chrono::floor<std::chrono::days>(service.keeps).count()));
  return oldest;
}

}  // namespace

std::vector<FetchPiece> pieces_to_ask(const std::vector<std::string>& stations, const ServicesAsked& services,
                                 const Archive* archive, const FetchOrder& order, std::vector<std::string>& troubles) {
  using Key = std::tuple<Instant, Instant, const ServiceAsked*>;
  std::map<Key, FetchPiece, std::greater<>> pieces;
  std::set<std::string> told;
  for (const std::string& station : stations) {
    const ServiceAsked* const service = services.of(station);
    if (service == nullptr) continue;
    const auto book = archive == nullptr ? Result<std::vector<Asked>>{} : archive->asked(station);
    if (!book) told.insert(book.error().what);
    const auto spans = held(book.value_or(std::vector<Asked>{}), service->service->name, order);
    const Period longest = service->service->longest == Period{0} ? kPiece : std::min(kPiece, service->service->longest);
    for (const AskedSpan& span :
         in_pieces(spans_to_ask(spans, order, oldest_kept(*service->service, order, told)), longest)) {
      FetchPiece& piece = pieces[{span.to, span.from, service}];
      piece.service = service;
      piece.span = span;
      piece.stations.push_back(station);
    }
  }
  troubles.insert(troubles.end(), told.begin(), told.end());
  std::vector<FetchPiece> out;
  for (auto& [key, piece] : pieces) out.push_back(std::move(piece));
  return out;
}

}  // namespace floatwright
