#include "adapters/in/fetch/fetch.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "adapters/in/fetch/next_page.hpp"
#include "adapters/in/fetch/pieces.hpp"
#include "adapters/in/http/web_address.hpp"

namespace floatwright {
namespace {

// One request of a piece and the pages that follow it. It counts when its last page has come.
struct Walk {
  const FetchPiece* piece = nullptr;
  std::vector<std::string> stations;  // of the piece's, those that this request is for
  std::set<std::string> pages;        // addresses that have come
  std::vector<GaugeSeries> series;
  Validator validator;  // of an answer of one page
};

// How far a piece is: a station of it has been asked whole when all its requests have ended and none was for nothing.
struct UnderWay {
  std::size_t requests = 0;
  std::set<std::string> lost;
};

class Fetching {
 public:
  Fetching(Archive* archive, const FetchOrder& order) : archive_(archive), order_(order) {}

  std::vector<HttpRequest> requests_of(const std::vector<FetchPiece>& pieces) {
    std::vector<HttpRequest> out;
    for (const FetchPiece& piece : pieces) {
      Wanted wanted{.stations = {}, .from = piece.span.from, .to = piece.span.to};
      for (const std::string& station : piece.stations) wanted.stations.push_back(number_of(station));
      for (HttpRequest& request : piece.service->service->ask(wanted, piece.service->access)) {
        const bool many = request.tag == kManyStations;
        walks_.push_back({&piece, many ? piece.stations : std::vector{piece.stations.at(request.tag)}, {}, {}, {}});
        request.tag = walks_.size() - 1;
        ++under_way_[&piece].requests;
        out.push_back(conditional(std::move(request)));
      }
    }
    return out;
  }

  std::vector<HttpRequest> took(const HttpRequest& request, Result<HttpAnswer> answer) {
    Walk& walk = walks_[request.tag];
    auto next = answer ? page(walk, request, *answer) : tl::unexpected(answer.error());
    if (next && *next) return {std::move(**next)};
    if (next)
      keep(walk, request.url);
    else
      give_up(walk, next.error().what);
    note(walk);
    order_.progress(++done_, walks_.size());
    return {};
  }

  Fetched result() {
    out_.lost.assign(lost_.begin(), lost_.end());
    return std::move(out_);
  }

 private:
  // What the archive took from this address before need not come again.
  HttpRequest conditional(HttpRequest request) const {
    if (archive_ == nullptr || !request.body.empty()) return request;
    const auto held = archive_->validator(request.url);
    if (!held) return request;
    request.etag = held->etag;
    request.last_modified = held->last_modified;
    return request;
  }

  // None: that was the last page.
  Result<std::optional<HttpRequest>> page(Walk& walk, const HttpRequest& request, const HttpAnswer& answer) {
    const std::string where = without_query(request.url);
    if (answer.status == 304) return std::nullopt;
    if (answer.status == 404)
      return tl::unexpected(Failure{where + ": the service has nothing there; look at the station's number", kExitNothingMade});
    auto read = walk.piece->service->service->read(answer.body, where);
    if (!read) return tl::unexpected(read.error());
    for (GaugeSeries& series : read->series) {
      if (!walk.piece->service->service->names_its_station && walk.stations.size() == 1) series.station = walk.stations.front();
      walk.series.push_back(std::move(series));
    }
    for (std::string& doubt : read->doubts) out_.troubles.push_back(where + ": " + doubt);
    if (!read->next) {
      if (walk.pages.empty() && request.body.empty()) walk.validator = {answer.etag, answer.last_modified};
      return std::nullopt;
    }
    walk.pages.insert(request.url);
    auto next = next_page(request, *read->next);
    if (next && walk.pages.contains(next->url))
      return tl::unexpected(Failure{where + ": the pages have no end: one came twice", kExitNothingMade});
    return next;
  }

  void give_up(const Walk& walk, const std::string& why) {
    std::string names;
    for (const std::string& station : walk.stations) names += (names.empty() ? "" : ", ") + station;
    const std::string pages =
        walk.pages.empty()
            ? ""
            : fmt::format(" (after {} pages, which were not kept: they are not the whole answer)", walk.pages.size());
    out_.troubles.push_back(fmt::format("station{} {}: {}{}", walk.stations.size() == 1 ? "" : "s", names, why, pages));
    lost_.insert(walk.stations.begin(), walk.stations.end());
    under_way_[walk.piece].lost.insert(walk.stations.begin(), walk.stations.end());
  }

  void keep(Walk& walk, const std::string& url) {
    if (const auto why_not = stored(walk, url)) {
      if (out_.not_kept.empty() && archive_ != nullptr) out_.troubles.push_back(*why_not);
      std::ranges::move(walk.series, std::back_inserter(out_.not_kept));
      under_way_[walk.piece].lost.insert(walk.stations.begin(), walk.stations.end());
    }
    walk.series.clear();
  }

  std::optional<std::string> stored(const Walk& walk, const std::string& url) {
    if (archive_ == nullptr) return "there is no archive";
    const auto rows = archive_->store(walk.series, order_.clock);
    if (!rows) return rows.error().what;
    out_.rows.added += rows->added;
    out_.rows.changed += rows->changed;
    out_.rows.same += rows->same;
    if (!walk.validator.etag.empty() || !walk.validator.last_modified.empty()) {
      const auto validated = archive_->keep_validator(url, walk.validator);
      if (!validated) return validated.error().what;
    }
    return std::nullopt;
  }

  void note(const Walk& walk) {
    UnderWay& piece = under_way_[walk.piece];
    if (--piece.requests > 0 || archive_ == nullptr) return;
    for (const std::string& station : walk.piece->stations) {
      if (piece.lost.contains(station)) continue;
      const auto noted = archive_->note_asked({.station = station,
                                               .service = walk.piece->service->service->name,
                                               .from = walk.piece->span.from,
                                               .to = walk.piece->span.to,
                                               .at = order_.clock});
      if (!noted) out_.troubles.push_back(noted.error().what);
    }
  }

  Archive* archive_;
  const FetchOrder& order_;
  std::vector<Walk> walks_;
  std::map<const FetchPiece*, UnderWay> under_way_;
  std::set<std::string> lost_;
  std::size_t done_ = 0;
  Fetched out_;
};

}  // namespace

Fetched fetch(const std::vector<std::string>& stations, const ServicesAsked& services, Archive* archive,
              const FetchOrder& order) {
  std::vector<std::string> troubles;
  const std::vector<FetchPiece> pieces = pieces_to_ask(stations, services, archive, order, troubles);
  std::set<std::string> asked;
  for (const FetchPiece& piece : pieces) asked.insert(piece.stations.begin(), piece.stations.end());

  Fetching fetching(archive, order);
  http_run(fetching.requests_of(pieces), order.manners,
           [&](const HttpRequest& request, Result<HttpAnswer> answer) { return fetching.took(request, std::move(answer)); });
  Fetched out = fetching.result();
  out.asked = asked.size();
  out.troubles.insert(out.troubles.begin(), troubles.begin(), troubles.end());
  return out;
}

}  // namespace floatwright
