#pragma once
// What is to be asked, sorted so that stations of one service that lack the same time are asked for together.
#include <string>
#include <vector>

#include "adapters/in/fetch/fetch.hpp"
#include "adapters/in/fetch/spans.hpp"

namespace floatwright {

struct FetchPiece {
  const ServiceAsked* service = nullptr;
  AskedSpan span;
  std::vector<std::string> stations;  // with their prefix
};

// Newest first. `troubles`: what could not be read of the archive's own book, and years that a service does not keep.
[[nodiscard]] std::vector<FetchPiece> pieces_to_ask(const std::vector<std::string>& stations, const ServicesAsked& services,
                                               const Archive* archive, const FetchOrder& order,
                                               std::vector<std::string>& troubles);

}  // namespace floatwright
